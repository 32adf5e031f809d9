/**
 * 64 bits of a text as 16 hexadecimal digits, to see whether it is the same text again: FNV-1a (Fowler, Noll & Vo) over
 * UTF-16 units, twice, with different offsets. No protection against anyone who wants two texts to agree.
 */
export function fingerprintOf(text: string): string {
  let a = 0x811c9dc5;
  let b = 0x050c5d1f;
  for (let i = 0; i < text.length; i++) {
    const unit = text.charCodeAt(i);
    a = Math.imul(a ^ unit, 0x01000193);
    b = Math.imul(b ^ unit, 0x01000193) ^ (b >>> 15);
  }
  const hex = (n: number) => (n >>> 0).toString(16).padStart(8, '0');
  return hex(a) + hex(b);
}

/** A number from 0 to 2³¹ − 1 that depends on every character (FNV-1a, Fowler, Noll and Vo 1991, 32 bits, folded by one). */
export function hashText(text: string): number {
  let hash = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193);
  return hash >>> 1;
}

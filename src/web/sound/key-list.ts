/** Semitones for each chorus, from -11 to 11, with spaces or commas between: `0, 5 -2`; null when it is none. */
export function readKeyList(text: string): readonly number[] | null {
  const list = text
    .replaceAll('−', '-')
    .split(/[\s,;]+/)
    .filter((word) => word !== '')
    .map(Number);
  const isFit = list.length > 0 && list.length <= 64;
  return isFit && list.every((one) => Number.isInteger(one) && Math.abs(one) <= 11) ? list : null;
}

/**
 * What takes the place of `gone` among those that are there now: what has come between its old neighbours, else the next of
 * them that stays, else the one before. Null when none `fits`.
 *
 * @example nearestStaying(['a', 'b', 'c'], 'b', ['a', 'c'], () => true) // 'c'
 */
export function nearestStaying<One>(
  before: readonly One[],
  gone: One,
  now: readonly One[],
  fits: (one: One) => boolean,
): One | null {
  const at = before.indexOf(gone);
  const old = new Set(before);
  const stays = (one: One) => now.includes(one);
  const left = before.slice(0, Math.max(0, at)).findLast(stays);
  const right = before.slice(at + 1).find(stays);
  const from = left === undefined ? 0 : now.indexOf(left) + 1;
  const come = now.slice(from, right === undefined ? undefined : now.indexOf(right));
  const after = before.slice(at + 1).filter(stays);
  const ahead = before.slice(0, Math.max(0, at)).filter(stays).toReversed();
  return [...come.filter((one) => !old.has(one)), ...after, ...ahead].find(fits) ?? null;
}

// Note transcription scores as mir_eval 0.8 defines them (Raffel et al. 2014, ISMIR; transcription.match_notes): a note is
// found when its onset lies within 50 ms and its pitch within 50 cents of a true one, one to one, as many as can be; with
// offsets also when it ends within 20 % of the true length or 50 ms, whichever is more. Distances are rounded to 0.1 ms.

export interface ScoredNote {
  readonly onset: number;
  readonly offset: number;
  readonly hz: number;
}

export interface NoteScore {
  readonly precision: number;
  readonly recall: number;
  readonly f1: number;
  /** Mean overlap of the matched pairs, shared time over joint time; 0 without pairs. */
  readonly overlap: number;
  readonly pairs: readonly (readonly [truth: number, heard: number])[];
}

export interface MatchRule {
  readonly offsets: boolean;
  readonly pitch?: boolean;
}

/** Scores heard notes against true ones. */
export function scoreNotes(
  truth: readonly ScoredNote[],
  heard: readonly ScoredNote[],
  rule: MatchRule,
): NoteScore {
  const pairs = matchMost(
    truth.map((t) => heard.flatMap((h, j) => (isHit(t, h, rule) ? [j] : []))),
    heard.length,
  );
  const precision = heard.length === 0 ? 0 : pairs.length / heard.length;
  const recall = truth.length === 0 ? 0 : pairs.length / truth.length;
  let overlap = 0;
  for (const [i, j] of pairs) {
    const [t, h] = [truth[i], heard[j]];
    if (t === undefined || h === undefined) continue;
    overlap +=
      (Math.min(t.offset, h.offset) - Math.max(t.onset, h.onset)) /
      (Math.max(t.offset, h.offset) - Math.min(t.onset, h.onset));
  }
  return {
    precision,
    recall,
    f1: precision + recall === 0 ? 0 : (2 * precision * recall) / (precision + recall),
    overlap: pairs.length === 0 ? 0 : overlap / pairs.length,
    pairs,
  };
}

const tenth = (seconds: number) => Math.round(seconds * 1e4) / 1e4;

function isHit(t: ScoredNote, h: ScoredNote, rule: MatchRule): boolean {
  if (tenth(Math.abs(t.onset - h.onset)) > 0.05) return false;
  if (rule.pitch !== false && Math.abs(1200 * Math.log2(h.hz / t.hz)) > 50) return false;
  return !rule.offsets || tenth(Math.abs(t.offset - h.offset)) <= Math.max(0.05, 0.2 * (t.offset - t.onset));
}

/** The largest one-to-one matching of a bipartite graph, by augmenting paths (Berge 1957). */
function matchMost(choices: readonly (readonly number[])[], size: number): (readonly [number, number])[] {
  const owner: number[] = new Array(size).fill(-1);
  const tryFor = (i: number, seen: Set<number>): boolean => {
    for (const j of choices[i] ?? []) {
      if (seen.has(j)) continue;
      seen.add(j);
      const other = owner[j] ?? -1;
      if (other < 0 || tryFor(other, seen)) {
        owner[j] = i;
        return true;
      }
    }
    return false;
  };
  for (let i = 0; i < choices.length; i++) tryFor(i, new Set());
  return owner.flatMap((i, j) => (i < 0 ? [] : [[i, j] as const]));
}

/**
 * Raw pitch accuracy (mir_eval.melody): the share of the frames that have a true pitch whose heard pitch lies within 50
 * cents. Both are MIDI numbers or null, `truth` every `hop` seconds, `heardAt` at any time.
 */
export function rawPitch(
  truth: readonly (number | null)[],
  hop: number,
  heardAt: (seconds: number) => number | null,
): { readonly hits: number; readonly frames: number } {
  let hits = 0;
  let frames = 0;
  for (const [k, pitch] of truth.entries()) {
    if (pitch === null) continue;
    frames++;
    const heard = heardAt(k * hop);
    if (heard !== null && Math.abs(heard - pitch) * 100 <= 50) hits++;
  }
  return { hits, frames };
}

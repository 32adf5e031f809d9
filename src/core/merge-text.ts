// Text that was typed in two places at once: both are made in one text, each once, and nothing that was typed is lost.
// It is never refused, because it may come from a queue that was cut off for hours. The text that both began from tells
// what each of them did to it.

import { applyEdit, type Edit, editBetween, isInWord, pushSplice, type Splice } from './text-edit.ts';

export interface MergedText {
  readonly text: string;
  /** What the others did, as an edit of the text that was typed here: it leads to `text`. */
  readonly overMine: Edit;
  /** What was typed here, as an edit of the others' text: it leads to `text`. */
  readonly overTheirs: Edit;
  /** Whether both wrote at the very same place, so that one stands above or beside the other. */
  readonly bothKept: boolean;
}

const gap = '\n\n';

/** More words in a row than two hands begin with alike by chance. */
const enoughWords = /(\S+\s+){3}\S/;

/**
 * The text with what both did to `base`: `theirs` is what the studio has, `mine` what was typed here.
 * `mergeTexts({ base: 'a', theirs: 'a\n\nx', mine: 'a b' }).text` → `a b`, an empty line, `x`. Where both wrote other
 * words at the same place, theirs come first, then an empty line, then mine.
 */
export function mergeTexts(of: {
  readonly base: string;
  readonly theirs: string;
  readonly mine: string;
}): MergedText {
  const { base, theirs, mine } = of;
  return mergeEdits(base, editBetween(base, theirs), editBetween(base, mine));
}

/**
 * As `mergeTexts`, of two edits of `base`. With `goesOn`, lines typed here stay above those that others had put below what
 * was typed here before; else who comes later stands below.
 */
export function mergeEdits(base: string, theirs: Edit, mine: Edit, goesOn = false): MergedText {
  const overMine: Splice[] = [];
  const overTheirs: Splice[] = [];
  let bothKept = false;
  // How far a place of the base has moved in either text.
  let movedTheirs = 0;
  let movedMine = 0;
  let [t, m] = [0, 0];
  for (let [a, b] = [theirs[t], mine[m]]; a || b; [a, b] = [theirs[t], mine[m]]) {
    if (a && (!b || (!isInTheWay(a, b) && endOf(a) <= b.at))) {
      pushSplice(overMine, { ...a, at: a.at + movedMine });
      movedTheirs += growthOf(a);
      t++;
    } else if (b && (!a || !isInTheWay(a, b))) {
      pushSplice(overTheirs, { ...b, at: b.at + movedTheirs });
      movedMine += growthOf(b);
      m++;
    } else if (a && b) {
      const place = placeOf(base, theirs, t, mine, m);
      const solved = solve(base, place, goesOn);
      for (const s of solved.overMine) pushSplice(overMine, { ...s, at: s.at + place.from + movedMine });
      for (const s of solved.overTheirs)
        pushSplice(overTheirs, { ...s, at: s.at + place.from + movedTheirs });
      bothKept ||= solved.bothKept;
      movedTheirs += place.theirs.length - (place.to - place.from);
      movedMine += place.mine.length - (place.to - place.from);
      t += place.theirSplices.length;
      m += place.mySplices.length;
    }
  }
  return { text: applyEdit(applyEdit(base, mine), overMine), overMine, overTheirs, bothKept };
}

const endOf = ({ at, cut }: Splice): number => at + cut;
const growthOf = ({ cut, put }: Splice): number => put.length - cut;

/** Whether two changes are to the same words, or put words at the same place. Side by side they are not, if words stay apart. */
function isInTheWay(a: Splice, b: Splice): boolean {
  if (a.cut === 0 && b.cut === 0) return a.at === b.at;
  if (endOf(a) === b.at) return isInWord(a.put.at(-1)) && isInWord(b.put[0]);
  if (endOf(b) === a.at) return isInWord(b.put.at(-1)) && isInWord(a.put[0]);
  return a.at < endOf(b) && b.at < endOf(a);
}

/** A part of the base that both changed, and what each made of it. */
interface Place {
  readonly from: number;
  readonly to: number;
  readonly theirs: string;
  readonly mine: string;
  readonly theirSplices: readonly Splice[];
  readonly mySplices: readonly Splice[];
}

/** The place that begins with these two splices, with all that follows in the way of it. */
function placeOf(base: string, theirs: Edit, t: number, mine: Edit, m: number): Place {
  let [lastT, lastM] = [t, m];
  const reach = (): Splice => {
    const all = [...theirs.slice(t, lastT + 1), ...mine.slice(m, lastM + 1)];
    const at = Math.min(...all.map((s) => s.at));
    return { at, cut: Math.max(...all.map(endOf)) - at, put: '' };
  };
  for (let grown = true; grown; ) {
    const [nextT, nextM] = [theirs[lastT + 1], mine[lastM + 1]];
    const [moreT, moreM] = [nextT && isInTheWay(nextT, reach()), nextM && isInTheWay(nextM, reach())];
    if (moreT) lastT++;
    if (moreM) lastM++;
    grown = Boolean(moreT || moreM);
  }
  const { at: from, cut } = reach();
  const part = (splices: readonly Splice[]) =>
    applyEdit(
      base.slice(from, from + cut),
      splices.map((s) => ({ ...s, at: s.at - from })),
    );
  const theirSplices = theirs.slice(t, lastT + 1);
  const mySplices = mine.slice(m, lastM + 1);
  return {
    from,
    to: from + cut,
    theirs: part(theirSplices),
    mine: part(mySplices),
    theirSplices,
    mySplices,
  };
}

type Solved = Omit<MergedText, 'text'>;

/** What becomes of a place that both changed; the edits' places are those within `place.theirs` and `place.mine`. */
function solve(base: string, place: Place, goesOn: boolean): Solved {
  const { theirs, mine } = place;
  const isNewInBoth = place.from === place.to;
  // The same words from both are one change; the same few new words may be the beginning of two sentences.
  const isOne = !isNewInBoth || enoughWords.test(mine);
  if (theirs === mine && isOne) return { overMine: [], overTheirs: [], bothKept: false };
  const found = isOne && mine !== '' ? (gap + theirs + gap).indexOf(gap + mine + gap) : -1;
  if (found >= 0)
    return {
      overMine: around(mine, theirs.slice(0, found), theirs.slice(found + mine.length)),
      overTheirs: [],
      bothKept: false,
    };
  // Words that one took away stay where the other changed them.
  if (place.theirSplices.every(({ put }) => put === ''))
    return { overMine: [], overTheirs: replace(theirs, mine), bothKept: false };
  if (place.mySplices.every(({ put }) => put === ''))
    return { overMine: replace(mine, theirs), overTheirs: [], bothKept: false };
  if (isNewInBoth && theirs.startsWith('\n') && (goesOn || !mine.startsWith('\n')))
    return {
      overMine: around(mine, '', theirs),
      overTheirs: around(theirs, mine, ''),
      bothKept: false,
    };
  const between = isNewInBoth ? separator(base, place) : gap;
  const blank = between === gap ? mine.length - mine.trimStart().length : 0;
  return {
    overMine: [{ at: 0, cut: blank, put: theirs + between }],
    overTheirs: around(theirs, '', between + mine.slice(blank)),
    bothKept: between === gap,
  };
}

const replace = (old: string, put: string): Edit => [{ at: 0, cut: old.length, put }];

const around = (text: string, before: string, after: string): Edit => [
  { at: 0, cut: 0, put: before },
  { at: text.length, cut: 0, put: after },
];

/** What parts new words of theirs from mine after them: an empty line at the end of a line, else a space. */
function separator(base: string, { from, theirs, mine }: Place): string {
  if (theirs.endsWith('\n') || mine.startsWith('\n')) return '';
  if (from === base.length || base[from] === '\n') return gap;
  return theirs.endsWith(' ') || mine.startsWith(' ') ? '' : ' ';
}

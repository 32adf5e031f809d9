// Where everything on the course score stands, in pixels: pure, so that its laws can be tested (bars fill the systems,
// blocks lie inside their bars in order and apart, nothing is lost). Each system is a drawing of its own with its
// origin at the top left, so that no page break can cut one.

import type { BarView, CourseView, LessonBarView, SegmentView } from '#contract';
import { type Id, type PlainDate, present } from '#core';
import { sentenceCase } from '../app/sentence-case.ts';
import { type BarWidth, breakSystems, type SystemBreak } from './break-systems.ts';
import { type FittedTitle, fitTitle, type Measure } from './fit-title.ts';
import {
  barId,
  barStarts,
  barToTimes,
  boundaryAfter,
  type CourseEvent,
  courseToTimeline,
  isGiven,
  type Timeline,
} from './timeline.ts';

/** What is asked of a page. */
export interface ScorePage {
  /** Pixels, names included. */
  readonly width: number;
  /** Room for the names of the strands at the left. */
  readonly names: number;
  /** About how many bars of a usual lesson go on a system, 1 to 12. */
  readonly barsPerSystem: number;
  readonly measure: Measure;
  /** A day in words, longest first; the first that fits is set. */
  readonly dateWords: (date: PlainDate) => readonly string[];
}

export interface ScoreLayout {
  readonly systems: readonly ScoreSystem[];
}

export interface ScoreSystem {
  readonly index: number;
  readonly width: number;
  readonly height: number;
  /** Where the staff begins and ends. */
  readonly left: number;
  readonly right: number;
  readonly rows: readonly ScoreRow[];
  readonly bars: readonly ScoreBar[];
  readonly barlines: readonly ScoreBarline[];
  readonly deadlines: readonly ScoreDeadline[];
  /** x of *now*, where it falls in this system. */
  readonly now: number | null;
  /** Baselines of the bar numbers and of the dates. */
  readonly numbersAt: number;
  readonly datesAt: number;
}

export interface ScoreRow {
  /** Null for the thin shared line of what belongs to no strand. */
  readonly strand: Id<'strand'> | null;
  readonly name: string;
  readonly ink: 0 | 1 | 2 | 3 | null;
  /** Of the line itself. */
  readonly y: number;
  readonly top: number;
  readonly bottom: number;
}

export interface ScoreBar {
  readonly id: string;
  readonly index: number;
  readonly source: BarView;
  readonly x: number;
  readonly width: number;
  readonly dateText: string;
  readonly blocks: readonly ScoreBlock[];
  /** Planned and passed over. */
  readonly skipped: readonly SegmentView[];
}

export interface ScoreBlock {
  readonly segment: SegmentView;
  readonly lesson: LessonBarView;
  readonly row: number;
  readonly x: number;
  readonly width: number;
  /** On the clock: what it took where it was taught. */
  readonly minutes: number;
  readonly taught: boolean;
  readonly label: (FittedTitle & { readonly x: number; readonly anchor: 'start' | 'end' }) | null;
}

export interface ScoreBarline {
  readonly x: number;
  readonly kind: 'single' | 'event' | 'final';
  readonly events: readonly CourseEvent[];
}

/** The day by which a strand is to be ready, on its own line. */
export interface ScoreDeadline {
  readonly row: number;
  readonly x: number;
  readonly date: PlainDate;
}

export const metrics = {
  strandRow: 52,
  sharedRow: 24,
  header: 24,
  /** A tier above the header for the titles of events and the word *now*. */
  tier: 18,
  footer: 22,
  labelSize: 12,
  labelLine: 14,
  sharedSize: 10.5,
  beam: 12,
  sharedBeam: 5,
  padLeft: 7,
  padRight: 8,
  gone: 44,
} as const;

/** Draws up the score of a course for a page. */
export function layoutScore(course: CourseView, page: ScorePage): ScoreLayout {
  const timeline = courseToTimeline(course);
  const line = Math.max(120, page.width - page.names - 2);
  const usual = usualMinutes(course);
  const widths = timeline.bars.map((bar) => barToWidth(bar, page));
  const pads = metrics.padLeft + metrics.padRight;
  const wanted = Math.max(1, (line / page.barsPerSystem - pads) / usual);
  const breaks = breakSystems(widths, line, wanted);
  return {
    systems: breaks.map((part, index) =>
      layoutSystem(course, timeline, widths, part, index, breaks.length, page, line),
    ),
  };
}

/** How many bars go on a system at a width when nobody has chosen: a minute comes out about eight pixels wide. */
export function suggestBarsPerSystem(course: Pick<CourseView, 'bars'>, width: number, names: number): number {
  return Math.min(12, Math.max(1, Math.round((width - names) / (usualMinutes(course) * 7.4))));
}

/**
 * The row that a segment is drawn on: its strand's, or for a revisit that of the unit that checks its skill; what
 * belongs to no strand goes on the shared line, the last.
 */
export function rowOf(course: Pick<CourseView, 'strands' | 'units'>, segment: SegmentView): number {
  const { strands, units } = course;
  const checking = (unit: CourseView['units'][number]) => unit.checks.some((c) => c.skill === segment.skill);
  const strand =
    segment.strand ?? (segment.kind === 'revisit' ? units.find(checking)?.strand : undefined) ?? null;
  const found = strands.findIndex((one) => one.id === strand);
  return found === -1 ? strands.length : found;
}

function usualMinutes(course: Pick<CourseView, 'bars'>): number {
  const given = course.bars.flatMap((bar) => (bar.kind === 'lesson' && isGiven(bar) ? [bar.minutes] : []));
  given.sort((a, b) => a - b);
  return given[Math.floor(given.length / 2)] ?? 45;
}

function barToWidth(bar: BarView, page: ScorePage): BarWidth {
  if (bar.kind === 'rest') {
    const longest = Math.max(
      0,
      ...bar.name.split(/\s+/).map((word) => page.measure(word, metrics.labelSize)),
    );
    return { fixed: Math.min(120, Math.max(72, longest + 20)), minutes: 0 };
  }
  if (!isGiven(bar)) return { fixed: metrics.gone, minutes: 0 };
  return { fixed: metrics.padLeft + metrics.padRight, minutes: barToTimes(bar).span };
}

function layoutSystem(
  course: CourseView,
  timeline: Timeline,
  widths: readonly BarWidth[],
  part: SystemBreak,
  index: number,
  count: number,
  page: ScorePage,
  line: number,
): ScoreSystem {
  const left = page.names;
  let x = left;
  const bars: ScoreBar[] = [];
  for (let at = part.from; at < part.to; at++) {
    const source = present(timeline.bars[at], 'a bar of this system');
    const held = present(widths[at], 'its width');
    const width = held.fixed * part.stretch + held.minutes * part.perMinute;
    bars.push(layoutBar(course, source, at, x, width, page));
    x += width;
  }
  const barlines = layoutBarlines(timeline, bars, part, left, index === count - 1);
  const now = findNowX(timeline, bars, part);
  const tiered = now !== null || barlines.some((barline) => barline.events.length > 0);
  const header = metrics.header + (tiered ? metrics.tier : 0);
  const rows = layoutRows(course, header);
  const bottom = present(rows.at(-1), 'the shared line').bottom;
  return {
    index,
    width: left + line + 2,
    height: bottom + metrics.footer,
    left,
    right: x,
    rows,
    bars,
    barlines,
    deadlines: layoutDeadlines(course, bars, part),
    now,
    numbersAt: header - 9,
    datesAt: bottom + 14,
  };
}

function layoutRows(course: CourseView, top: number): ScoreRow[] {
  const rows: ScoreRow[] = course.strands.map((strand, index) => ({
    strand: strand.id,
    name: strand.name,
    ink: strand.ink,
    top: top + index * metrics.strandRow,
    bottom: top + (index + 1) * metrics.strandRow,
    y: top + index * metrics.strandRow + 2 * metrics.labelLine + 9,
  }));
  const from = top + course.strands.length * metrics.strandRow;
  rows.push({
    strand: null,
    name: '',
    ink: null,
    top: from,
    bottom: from + metrics.sharedRow,
    y: from + metrics.sharedRow - 7,
  });
  return rows;
}

function layoutBar(
  course: CourseView,
  source: BarView,
  index: number,
  x: number,
  width: number,
  page: ScorePage,
): ScoreBar {
  const words = page.dateWords(barStarts(source));
  const dateText = words.find((text) => page.measure(text, 11) <= width - 8) ?? words.at(-1) ?? '';
  const shared = { id: barId(source), index, source, x, width, dateText };
  if (source.kind === 'rest') return { ...shared, blocks: [], skipped: [] };
  const { span, timed, skipped } = barToTimes(source);
  const from = x + metrics.padLeft;
  const perMinute = Math.max(0, width - metrics.padLeft - metrics.padRight) / Math.max(1, span);
  const bare = timed.map(({ segment, start, minutes }) => {
    const wide = minutes * perMinute;
    return {
      segment,
      lesson: source,
      row: rowOf(course, segment),
      x: from + start * perMinute,
      width: wide - Math.min(2, wide / 4),
      minutes,
      taught: source.status === 'taught',
    };
  });
  return { ...shared, blocks: labelBlocks(bare, x, x + width, course.strands.length, page), skipped };
}

/** A title may run on over empty line until the next block of its row, as a tempo word does. */
function labelBlocks(
  bare: readonly Omit<ScoreBlock, 'label'>[],
  left: number,
  right: number,
  sharedRow: number,
  page: ScorePage,
): ScoreBlock[] {
  const takenUntil = new Map<number, number>();
  return bare.map((block, index) => {
    const next = bare.slice(index + 1).find((other) => other.row === block.row);
    const isShared = block.row === sharedRow;
    const size = isShared ? metrics.sharedSize : metrics.labelSize;
    const lines = isShared ? 1 : 2;
    const end = next ? next.x - 5 : right - metrics.padRight;
    const title = sentenceCase(block.segment.title);
    const from = takenUntil.get(block.row) ?? left + 4;
    const ahead = fitTitle(title, end - block.x, lines, size, page.measure);
    const edge = block.x + block.width;
    const back =
      next || ahead?.whole
        ? null
        : fitTitle(title, edge - Math.max(from, left + 4), lines, size, page.measure);
    if (isShared && !ahead?.whole) return { ...block, label: null };
    if (back && (back.whole || back.lines.join(' ').length > (ahead?.lines.join(' ').length ?? 0) + 4)) {
      takenUntil.set(block.row, edge + 5);
      return { ...block, label: { ...back, x: edge, anchor: 'end' as const } };
    }
    if (ahead) takenUntil.set(block.row, block.x + ahead.width + 6);
    return { ...block, label: ahead && { ...ahead, x: block.x, anchor: 'start' as const } };
  });
}

function layoutBarlines(
  timeline: Timeline,
  bars: readonly ScoreBar[],
  part: SystemBreak,
  left: number,
  last: boolean,
): ScoreBarline[] {
  const barlines: ScoreBarline[] = [];
  const opening = part.from === 0 ? (timeline.eventsByBoundary.get(0) ?? []) : [];
  if (opening.length > 0) barlines.push({ x: left, kind: 'event', events: opening });
  for (const bar of bars) {
    const boundary = bar.index + 1;
    const events = timeline.eventsByBoundary.get(boundary) ?? [];
    const isLast = last && boundary === part.to;
    const kind = events.length > 0 ? 'event' : isLast ? 'final' : 'single';
    barlines.push({ x: bar.x + bar.width, kind, events });
  }
  return barlines;
}

/** At the barline before the first lesson that comes too late for it; one before the first bar is not drawn. */
function layoutDeadlines(course: CourseView, bars: readonly ScoreBar[], part: SystemBreak): ScoreDeadline[] {
  return course.strands.flatMap(({ deadline }, row) => {
    if (deadline === null) return [];
    const before = boundaryAfter(course.bars, deadline) - 1;
    const bar = part.from <= before && before < part.to ? bars[before - part.from] : undefined;
    return bar ? [{ row, x: bar.x + bar.width, date: deadline }] : [];
  });
}

function findNowX({ now, bars: all }: Timeline, bars: readonly ScoreBar[], part: SystemBreak): number | null {
  const at = now.kind === 'inside' ? now.bar : now.before;
  const bar = bars.find((b) => b.index === at);
  if (bar) return now.kind === 'inside' ? bar.x + bar.width * now.share : bar.x;
  const final = bars.at(-1);
  return now.kind === 'boundary' && at === all.length && part.to === all.length && final
    ? final.x + final.width
    : null;
}

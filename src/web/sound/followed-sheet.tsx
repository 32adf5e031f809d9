// A sheet that follows the band: the bar that sounds is lit behind its notes, and dragging over bars makes the band go
// round them. Over each bar of the drawing lies a button, so that mouse, finger, keyboard and screen reader all reach it.

import { Fragment, type ReactNode, useEffect, useRef, useState } from 'react';
import type { EngravedPage } from '#engraving';
import type { SheetPlaces } from '#music';
import { Notation } from '../components/notation.tsx';
import { words } from '../words/index.ts';
import type { BarRange } from './choose-bars.ts';
import { useBarChoice } from './use-bar-choice.ts';
import type { Following } from './use-following.ts';
import './followed-sheet.css';

const says = words.player;

export interface FollowedSheetProps {
  readonly pages: readonly Pick<EngravedPage, 'page' | 'svg'>[];
  readonly places: SheetPlaces;
  readonly following: Following;
  readonly frame?: PageFrame;
}

/** What stands around the drawing of a page, by its number. */
export type PageFrame = (page: number, drawing: ReactNode) => ReactNode;

/** Where a bar lies on its page, in per cent. */
interface Place {
  readonly bar: number;
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

export function FollowedSheet({
  pages,
  places,
  following,
  frame = (_, drawing) => drawing,
}: FollowedSheetProps) {
  const { place, loop, goRound } = following;
  const sounding = place === null ? null : places.sounding(place.bar, place.nth, loop);
  const from = loop === null ? null : (loop.onSheet ?? places.upbeat + loop.first);
  const range = loop === null || from === null ? null : { first: from, last: from + loop.last - loop.first };
  const onRange = (next: BarRange | null) =>
    goRound(next === null ? null : places.toChart(next.first, next.last));
  const choice = useBarChoice(range, onRange, places.count);
  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset would bring a frame and a legend of its own
    <div className="followed-sheet" role="group" aria-label={says.sheet} {...choice.frame}>
      {pages.map(({ page, svg }) => (
        <Fragment key={page}>
          {frame(page, <FollowedPage svg={svg} sounding={sounding} button={choice.button} />)}
        </Fragment>
      ))}
    </div>
  );
}

interface FollowedPageProps {
  readonly svg: string;
  readonly sounding: number | null;
  readonly button: ReturnType<typeof useBarChoice>['button'];
}

function FollowedPage({ svg, sounding, button }: FollowedPageProps) {
  const place = useRef<HTMLDivElement>(null);
  const [bars, setBars] = useState<readonly Place[]>([]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: another drawing has its bars elsewhere
  useEffect(() => {
    const page = place.current;
    if (page === null) return;
    // A page that is not shown has no size yet.
    const watch = new ResizeObserver(() => setBars(placesOn(page)));
    watch.observe(page);
    return () => watch.disconnect();
  }, [svg]);
  return (
    <div className="followed-page" ref={place}>
      <div className="followed-bars no-print">
        {bars.map(({ bar, left, top, width, height }) => (
          <button
            key={bar}
            type="button"
            className={sounding === bar ? 'followed-bar followed-bar-now' : 'followed-bar'}
            aria-label={says.sheetBar(bar)}
            aria-current={sounding === bar ? 'true' : undefined}
            style={{ left: `${left}%`, top: `${top}%`, width: `${width}%`, height: `${height}%` }}
            {...button(bar)}
          />
        ))}
      </div>
      <Notation svg={svg} />
    </div>
  );
}

/** How far a bar's button reaches over and under its staves, in their heights: symbols and ledger lines. */
const reach = 0.55;

function placesOn(page: HTMLElement): readonly Place[] {
  const all = page.getBoundingClientRect();
  if (all.width === 0 || all.height === 0) return [];
  return [...page.querySelectorAll('.measure[data-bar]')].flatMap((measure) => {
    const lines = [...measure.querySelectorAll(':scope > .staff > path')].map((line) =>
      line.getBoundingClientRect(),
    );
    if (lines.length === 0) return [];
    const left = Math.min(...lines.map((line) => line.left));
    const right = Math.max(...lines.map((line) => line.right));
    const top = Math.min(...lines.map((line) => line.top));
    const bottom = Math.max(...lines.map((line) => line.bottom));
    const more = Math.max(12, reach * Math.min(bottom - top, 60));
    return {
      bar: Number(measure.getAttribute('data-bar')),
      left: (100 * (left - all.left)) / all.width,
      top: (100 * (top - more - all.top)) / all.height,
      width: (100 * (right - left)) / all.width,
      height: (100 * (bottom - top + 2 * more)) / all.height,
    };
  });
}

// The course score: the plan of a course drawn as what a musician reads best. Keys, pointer and menu do the same things; a
// table with the same content can take its place.

import {
  type FocusEvent,
  type KeyboardEvent,
  useCallback,
  useId,
  useLayoutEffect,
  useMemo,
  useRef,
  useState,
} from 'react';
import type { CourseView } from '#contract';
import { sentenceCase } from '../app/sentence-case.ts';
import { useFormat } from '../hooks/use-format.ts';
import { useStudio } from '../hooks/use-view.ts';
import { words } from '../words/index.ts';
import { descriptionToText, isMovable, type Writing } from './describe.ts';
import { isOver } from './is-over.ts';
import { layoutScore, type ScorePage, suggestBarsPerSystem } from './layout.ts';
import { moveFocus } from './move-focus.ts';
import { ScoreCaption } from './score-caption.tsx';
import { courseToItems, type FocusPlace, landingBars, refindFocus, type ScoreItem } from './score-items.ts';
import { type KeyIntent, keyToIntent } from './score-keys.ts';
import { ScoreLegend } from './score-legend.tsx';
import { type Landing, System } from './score-system.tsx';
import { ScoreTable } from './score-table.tsx';
import { ScoreTools } from './score-tools.tsx';
import { useGlide } from './use-glide.ts';
import { keepChosenBars, readChosenBars, useMeasure, usePrinting, useWidth } from './use-page.ts';
import { useScoreActions } from './use-score-actions.tsx';
import { useScoreDrag } from './use-score-drag.ts';
import './score.css';

const say = words.score;

export interface CourseScoreProps {
  readonly course: CourseView;
  /** A `preview` (what-if) can be read and walked through, but not changed. */
  readonly mode?: 'live' | 'preview';
}

/** Widths in px of a landscape page between its margins, at 96 px to the inch. */
const paperWidth = { A4: 1018, Letter: 950 } as const;

/** Type may be smaller on paper than on a screen: a title's 12 px come out as 7.8 points, and three systems on a page. */
const paperScale = 1.15;

export function CourseScore({ course, mode = 'live' }: CourseScoreProps) {
  const format = useFormat();
  const paper = useStudio().data?.paper ?? 'A4';
  const writing: Writing = useMemo(
    () => ({ day: (d) => format.day(d, 'short'), time: format.time, share: format.share }),
    [format],
  );
  const place = useRef<HTMLDivElement>(null);
  const screenWidth = useWidth(place);
  const printing = usePrinting();
  const measure = useMeasure();
  const [chosenBars, setChosenBars] = useState(readChosenBars);
  const [form, setForm] = useState<'score' | 'table'>('score');
  const width = printing ? Math.round(paperWidth[paper] * paperScale) : screenWidth;
  const names = width < 560 ? 70 : 128;
  const suggested = suggestBarsPerSystem(course, width, names);
  const barsPerSystem = (printing ? null : chosenBars) ?? suggested;

  const page: ScorePage = useMemo(
    () => ({
      width,
      names,
      barsPerSystem,
      measure,
      dateWords: (date) => [
        format.day(date, 'short'),
        format.day(date, 'day'),
        String(Number(date.slice(8))),
      ],
    }),
    [width, names, barsPerSystem, measure, format],
  );
  const layout = useMemo(() => layoutScore(course, page), [course, page]);
  const items = useMemo(() => courseToItems(course, writing), [course, writing]);
  useGlide(place, course.revision, layout);

  const lineOf = (id: string) =>
    place.current?.parentElement?.querySelector<HTMLElement>(`[data-do="${CSS.escape(id)}"]`);
  const next = nowId(course);
  const refocus = (id: string) => {
    const row = lineOf(id);
    if (row) row.focus();
    else go(refindFocus(layout, focused?.id === id ? focused : { id, key: focused?.key ?? null, bar: id }));
  };
  const actions = useScoreActions(course, writing, refocus);
  const [focused, setFocused] = useState<FocusPlace | null>(null);
  const [hovered, setHovered] = useState<string | null>(null);
  const [within, setWithin] = useState(false);
  const holdsFocus = useRef(false);
  const [moving, setMoving] = useState<{ id: string; bar: string } | null>(null);
  /** Let go over another lesson, and not answered yet. */
  const [landed, setLanded] = useState<typeof moving>(null);
  const [told, setTold] = useState('');
  const keysId = useId();
  const live = mode === 'live';
  const landings = useMemo(() => landingBars(course), [course]);

  const focusId = refindFocus(layout, focused) ?? moveFocus(layout, null, 'first');
  const tabStop = useMemo(() => focusId ?? next, [focusId, next]);
  const itemOf = (element: Element | null): ScoreItem | null =>
    items.get(element?.closest('[data-id]')?.getAttribute('data-id') ?? '') ?? null;
  const elementOf = (id: string) => place.current?.querySelector<SVGElement>(`[data-id="${CSS.escape(id)}"]`);
  const go = (id: string | null) => {
    const element = id === null ? null : elementOf(id);
    element?.focus({ preventScroll: true });
    element?.scrollIntoView({ block: 'nearest', inline: 'nearest' });
  };

  // biome-ignore lint/correctness/useExhaustiveDependencies: only a new layout can have taken the focused element away
  useLayoutEffect(() => {
    if (holdsFocus.current && document.activeElement === document.body) go(focusId);
  }, [layout]);

  const { drag, onPointerDown, tookClick } = useScoreDrag({
    itemOf,
    canLift: (item) => live && item.kind === 'segment' && isMovable(item.segment, item.bar),
    canLand: (bar) => landings.some((one) => one.lesson === bar),
    onDrop: (item, bar) => void land(item, bar),
    onLongPress: (item, element) => {
      if (live) actions.open(item, element);
    },
  });

  const underWay = moving ?? landed;
  const movingItem = drag?.item ?? items.get(underWay?.id ?? '');
  const landingBar = drag ? drag.over : (underWay?.bar ?? null);
  const landing: Landing | null =
    movingItem?.kind === 'segment' && landingBar !== null
      ? {
          bar: landingBar,
          row: movingItem.row,
          minutes: movingItem.segment.minutes,
          segment: movingItem.id,
          stays: landingBar === movingItem.bar.lesson,
        }
      : null;

  /** It stands marked in its new place until the plan says where it stands. */
  const land = async (item: ScoreItem, bar: string) => {
    setMoving(null);
    setLanded({ id: item.id, bar });
    await actions.moveSegment(item, bar);
    setLanded(null);
  };
  const startMoving = (item: ScoreItem) => {
    if (item.kind !== 'segment' || !isMovable(item.segment, item.bar)) return setTold(say.cannotMove);
    setMoving({ id: item.id, bar: item.bar.lesson });
    setTold(say.moving(item.segment.title));
  };
  const step = (by: 1 | -1, title: string) => {
    if (!moving) return;
    const at = landings.findIndex((bar) => bar.lesson === moving.bar);
    const next = landings[Math.min(landings.length - 1, Math.max(0, at + by))];
    if (!next) return;
    setMoving({ ...moving, bar: next.lesson });
    setTold(say.movingTo(title, `${say.lesson(next.number)}, ${writing.day(next.date)}`));
    elementOf(next.lesson)?.scrollIntoView({ block: 'nearest' });
  };
  const carryOut = (intent: KeyIntent, item: ScoreItem, element: Element) => {
    switch (intent.kind) {
      case 'go':
        return go(moveFocus(layout, item.id, intent.direction));
      case 'open':
        return actions.open(item, element);
      case 'pin':
        return setTold(actions.togglePin(item) ?? '');
      case 'setAside':
        return setTold(actions.setAside(item) ?? '');
      case 'move':
        return startMoving(item);
      case 'step':
        return step(intent.by, item.description.title);
      case 'land':
        return moving ? void land(item, moving.bar) : undefined;
      case 'giveUp':
        setMoving(null);
        return setTold(say.moveCancelled(item.description.title));
    }
  };
  const onKeyDown = (event: KeyboardEvent) => {
    const element = event.target instanceof Element ? event.target : null;
    const item = itemOf(element);
    const intent = keyToIntent(event, moving !== null);
    if (!element || !item || !intent || !(live || intent.kind === 'go')) return;
    event.preventDefault();
    carryOut(intent, item, element);
  };
  const onFocus = (event: FocusEvent) => {
    const item = itemOf(event.target);
    setWithin(true);
    holdsFocus.current = true;
    setTold('');
    if (item?.kind === 'segment') setFocused({ id: item.id, key: item.segment.key, bar: item.bar.lesson });
    else if (item) setFocused({ id: item.id, key: null, bar: item.id });
  };

  const shown = items.get(hovered ?? '') ?? (within ? items.get(focusId ?? '') : undefined);
  const nameOf = useCallback(
    (id: string) => {
      const item = items.get(id);
      return item ? descriptionToText(item.description) : '';
    },
    [items],
  );

  return (
    <section className={`score score-${paper.toLowerCase()}`} aria-label={say.name(course.learner.name)}>
      {course.bars.length > 0 && (
        <ScoreTools
          form={form}
          onForm={setForm}
          bars={barsPerSystem}
          onBars={(bars) => {
            setChosenBars(bars);
            keepChosenBars(bars);
          }}
          onNow={
            next === null
              ? null
              : () => {
                  const there = form === 'table' ? lineOf(next) : elementOf(next);
                  there?.focus({ preventScroll: true });
                  there?.scrollIntoView({ block: 'center' });
                }
          }
          plain={mode === 'preview'}
        />
      )}
      {form === 'table' ? (
        <ScoreTable course={course} writing={writing} onOpen={live ? actions.open : null} items={items} />
      ) : course.bars.length === 0 ? (
        <p className="soft">{isOver(course) ? say.noBarsEver : say.noBars}</p>
      ) : null}
      <div
        ref={place}
        hidden={form === 'table' || course.bars.length === 0}
        className={drag ? 'score-systems dragging' : 'score-systems'}
        role="application"
        aria-roledescription={say.role}
        aria-label={say.name(course.learner.name)}
        aria-describedby={course.bars.length > 0 ? keysId : undefined}
        onKeyDown={onKeyDown}
        onFocus={onFocus}
        onBlur={(event) => {
          if (event.currentTarget.contains(event.relatedTarget)) return;
          setWithin(false);
          setMoving(null);
          // An element that a replanning took away loses the focus to nothing; its twin will take it up.
          if (event.relatedTarget !== null || event.target.isConnected) holdsFocus.current = false;
        }}
        onPointerDown={onPointerDown}
        onPointerOver={(event) => setHovered(itemOf(event.target as Element)?.id ?? null)}
        onPointerLeave={() => setHovered(null)}
        onClick={(event) => {
          const element = (event.target as Element).closest('[data-id]');
          const item = itemOf(element);
          if (tookClick() || !item || !element) return;
          go(item.id);
          if (live) actions.open(item, element);
        }}
        onContextMenu={(event) => {
          const element = (event.target as Element).closest('[data-id]');
          const item = itemOf(element);
          if (!live || !item || !element || item.kind === 'rest') return;
          event.preventDefault();
          actions.open(item, element);
        }}
      >
        {width > 0 &&
          layout.systems.map((system) => (
            <System
              key={system.bars[0]?.id ?? system.index}
              system={system}
              measure={measure}
              nameOf={nameOf}
              focusId={tabStop}
              landing={landing}
              today={course.today}
            />
          ))}
      </div>
      {form === 'score' && course.bars.length > 0 && (
        <>
          <ScoreCaption item={shown ?? null} told={told} />
          <p id={keysId} className="only-heard">
            {say.keys}
          </p>
          <ScoreLegend />
        </>
      )}
      <p className="only-heard" aria-live="assertive">
        {told}
      </p>
      {drag && (
        <p className="score-ghost" style={{ left: drag.x, top: drag.y }} aria-hidden="true">
          {sentenceCase(drag.item.segment.title)}
        </p>
      )}
      {actions.layer}
    </section>
  );
}

/** Where Tab enters a score that has not been visited: the next lesson to be taught. */
function nowId(course: CourseView): string | null {
  const next = course.bars.find((bar) => bar.kind === 'lesson' && bar.status === 'planned');
  return next?.kind === 'lesson' ? next.lesson : null;
}

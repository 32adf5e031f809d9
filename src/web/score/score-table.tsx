import type { CourseView, LessonBarView } from '#contract';
import { sentenceCase } from '../app/sentence-case.ts';
import { Button } from '../components/button.tsx';
import { words } from '../words/index.ts';
import { joinSentences, type Writing } from './describe.ts';
import { rowOf } from './layout.ts';
import type { ScoreItem } from './score-items.ts';
import { barId, barToTimes, boundaryAfter, courseToTimeline, isGiven } from './timeline.ts';

const say = words.score;

interface Props {
  readonly course: CourseView;
  readonly writing: Writing;
  readonly items: ReadonlyMap<string, ScoreItem>;
  /** Opens the menu of an item; null in a preview. */
  readonly onOpen: ((item: ScoreItem, anchor: Element) => void) | null;
}

/** The score's twin: the same lessons, segments, events and rests as a table. */
export function ScoreTable({ course, writing, items, onOpen }: Props) {
  const { bars, eventsByBoundary } = courseToTimeline(course);
  const columns = onOpen ? 6 : 5;
  const remarkRow = (key: string, text: string) => (
    <tbody key={key} className="score-table-event">
      <tr>
        <th scope="row" colSpan={columns}>
          {text}
        </th>
      </tr>
    </tbody>
  );
  const remarksAt = (boundary: number) => [
    ...course.strands.flatMap(({ id, name, deadline }) =>
      deadline !== null && boundaryAfter(bars, deadline) === boundary
        ? [remarkRow(id, say.table.readyBy(name, writing.day(deadline)))]
        : [],
    ),
    ...(eventsByBoundary.get(boundary) ?? []).map((event) =>
      remarkRow(event.id, say.event(event.title, writing.day(event.date))),
    ),
  ];
  return (
    <div className="score-table-place">
      <table className="score-table">
        <caption className="only-heard">{say.table.caption(course.learner.name)}</caption>
        <thead>
          <tr>
            <th scope="col">{say.table.when}</th>
            <th scope="col">{say.table.what}</th>
            <th scope="col">{say.table.strand}</th>
            <th scope="col">{say.table.minutes}</th>
            <th scope="col">{say.table.remarks}</th>
            {onOpen && (
              <th scope="col" className="no-print">
                {say.table.actions}
              </th>
            )}
          </tr>
        </thead>
        {remarksAt(0)}
        {bars.map((bar, index) => {
          const item = items.get(barId(bar));
          return [
            <tbody
              key={barId(bar)}
              className={bar.kind === 'rest' ? 'rest' : isGiven(bar) ? bar.status : 'gone'}
            >
              <tr className="score-table-lesson">
                <th scope="rowgroup" colSpan={5}>
                  <span className="score-table-number">{item?.description.title}</span>
                  {item?.description.facts.join(' · ')}
                </th>
                {onOpen && (
                  <td className="no-print">
                    {item && bar.kind !== 'rest' && <Do item={item} onOpen={onOpen} />}
                  </td>
                )}
              </tr>
              {bar.kind === 'lesson' && <Segments bar={bar} course={course} items={items} onOpen={onOpen} />}
            </tbody>,
            ...remarksAt(index + 1),
          ];
        })}
      </table>
    </div>
  );
}

function Segments({
  bar,
  course,
  items,
  onOpen,
}: Pick<Props, 'course' | 'items' | 'onOpen'> & { readonly bar: LessonBarView }) {
  const { timed } = barToTimes(bar);
  return timed.map(({ segment, start, minutes }) => {
    const item = items.get(segment.id);
    const strand = course.strands[rowOf(course, segment)];
    return (
      <tr key={segment.id}>
        <td>{Math.round(start)}</td>
        <td>{sentenceCase(segment.title)}</td>
        <td>{strand?.name ?? ''}</td>
        <td data-unit={say.table.unit}>{Math.round(minutes)}</td>
        <td>{joinSentences([remarksOf(segment).join(' · '), ...segment.reasons])}</td>
        {onOpen && <td className="no-print">{item && <Do item={item} onOpen={onOpen} />}</td>}
      </tr>
    );
  });
}

function remarksOf(segment: LessonBarView['segments'][number]): string[] {
  const remarks: string[] = [];
  if (segment.kind === 'revisit' || segment.kind === 'extension') remarks.push(say.kind[segment.kind]);
  if (segment.outcome) remarks.push(say.outcome[segment.outcome]);
  if (segment.endsUnit) remarks.push(say.checkHere);
  else if (segment.completes) remarks.push(say.completes);
  if (segment.pinned) remarks.push(say.pinned);
  if (segment.moved) remarks.push(say.moved);
  return remarks;
}

function Do({
  item,
  onOpen,
}: {
  readonly item: ScoreItem;
  readonly onOpen: (item: ScoreItem, anchor: Element) => void;
}) {
  return (
    <Button
      kind="plain"
      data-do={item.id}
      aria-label={say.menu.actions(item.description.title)}
      onPress={(event) => onOpen(item, event.target)}
    >
      …
    </Button>
  );
}

// Two takes side by side: the same figures, the difference, and whether it is larger than the measurement's own doubt.

import { compareTakes, type FigureChange } from '#listening';
import { Dialog } from '../components/dialog.tsx';
import { Loaded } from '../components/loading.tsx';
import { useFormat } from '../hooks/use-format.ts';
import { useTake } from '../hooks/use-view.ts';
import { words } from '../words/index.ts';
import { formatFigure } from './format-figure.ts';
import './compare-takes.css';

const say = words.takes.side;

export interface CompareTakesProps {
  /** The earlier and the later. */
  readonly ids: readonly [string, string];
  readonly onClose: () => void;
}

export function CompareTakes({ ids, onClose }: CompareTakesProps) {
  const before = useTake(ids[0]);
  const after = useTake(ids[1]);
  const format = useFormat();
  return (
    <Dialog title={say.title} open onClose={onClose} width="wide">
      <Loaded view={before}>
        {(first) => (
          <Loaded view={after}>
            {(second) => {
              const name = (take: typeof first) => words.takes.row(take.title, format.day(take.date, 'day'));
              return (
                <ComparisonTable
                  names={[name(first), name(second)]}
                  changes={compareTakes(first.evidence, second.evidence)}
                />
              );
            }}
          </Loaded>
        )}
      </Loaded>
    </Dialog>
  );
}

function ComparisonTable({
  names,
  changes,
}: {
  readonly names: readonly [string, string];
  readonly changes: readonly FigureChange[];
}) {
  const { locale } = useFormat();
  if (changes.length === 0) return <p className="soft">{say.none}</p>;
  return (
    /* biome-ignore lint/a11y/noNoninteractiveTabindex: a table that scrolls must be reachable by keyboard */
    <section className="compare-frame" tabIndex={0} aria-label={say.title}>
      <table className="compare">
        <thead>
          <tr>
            <th scope="col">{say.figure}</th>
            <th scope="col">{names[0]}</th>
            <th scope="col">{names[1]}</th>
            <th scope="col">{say.difference}</th>
          </tr>
        </thead>
        <tbody>
          {changes.map((change) => (
            <tr key={`${change.row} ${change.name}`}>
              <th scope="row">
                <span className="compare-row">{words.takes.rows[change.row]}</span>{' '}
                {words.takes.figure(change.row, change.name)}
              </th>
              <td>{change.before === null ? say.notHeard : formatFigure(change.before, locale)}</td>
              <td>{change.after === null ? say.notHeard : formatFigure(change.after, locale)}</td>
              <td className={change.isLarger ? 'compare-larger' : 'soft'}>
                {change.difference !== null && (
                  <>
                    {formatFigure(change.difference, locale, true)}{' '}
                    <span className="compare-said">{change.isLarger ? say.larger : say.within}</span>
                  </>
                )}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

// Two takes side by side: heard one after the other, what each shows of the checks, the same figures, the difference, and whether
// it is larger than the measurement's own doubt.

import type { ListenableCheckView, TakeView } from '#contract';
import { compareTakes, judgeCheck } from '#listening';
import { sentenceCase } from '../app/sentence-case.ts';
import { Dialog } from '../components/dialog.tsx';
import { Loaded } from '../components/loading.tsx';
import { useDescribeCheck } from '../hooks/use-describe-check.ts';
import { useFormat } from '../hooks/use-format.ts';
import { useTake } from '../hooks/use-view.ts';
import { words } from '../words/index.ts';
import { formatFigure } from './format-figure.ts';
import { HearTake } from './hear-take.tsx';
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
  return (
    <Dialog title={say.title} open onClose={onClose} width="wide">
      <Loaded view={before}>
        {(first) => <Loaded view={after}>{(second) => <Comparison before={first} after={second} />}</Loaded>}
      </Loaded>
    </Dialog>
  );
}

interface ComparisonProps {
  readonly before: TakeView;
  readonly after: TakeView;
}

function Comparison({ before, after }: ComparisonProps) {
  const { locale, day } = useFormat();
  const describe = useDescribeCheck();
  const changes = compareTakes(before.evidence, after.evidence);
  const checks = checksOf(before, after);
  if (changes.length === 0 && checks.length === 0) return <p className="soft">{say.none}</p>;
  return (
    /* biome-ignore lint/a11y/noNoninteractiveTabindex: a table that scrolls must be reachable by keyboard */
    <section className="compare-frame" tabIndex={0} aria-label={say.title}>
      <table className="compare">
        <thead>
          <tr>
            <th scope="col">{say.figure}</th>
            {[before, after].map((take) => (
              <th key={take.id} scope="col">
                {words.takes.row(take.title, day(take.date, 'day'))}
                <HearTake take={take} name={words.takes.row(take.title, day(take.date, 'day'))} />
              </th>
            ))}
            <th scope="col">{say.difference}</th>
          </tr>
        </thead>
        <tbody>
          {checks.flatMap((check) =>
            check.listenFor.map((spec) => (
              <tr key={check.skill + JSON.stringify(spec)}>
                <th scope="row">
                  {sentenceCase(describe(spec))}{' '}
                  <span className="compare-said soft">{sentenceCase(check.title)}</span>
                </th>
                {[before, after].map(({ id, evidence, heard }) => (
                  <td key={id}>{words.listenFor.answers[judgeCheck(spec, evidence, heard.notes).answer]}</td>
                ))}
                <td />
              </tr>
            )),
          )}
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

/** The checks of both takes, each once. */
function checksOf(before: TakeView, after: TakeView): readonly ListenableCheckView[] {
  const byText = new Map(
    [...after.checks, ...before.checks].map((check) => [check.skill + check.lookFor, check] as const),
  );
  return [...byText.values()];
}

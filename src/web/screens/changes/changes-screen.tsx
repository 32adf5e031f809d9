// Every change, newest first, each to be taken back; what was taken back can be done again.

import { useState } from 'react';
import type { ChangesView } from '#contract';
import { undoChange } from '../../app/send.ts';
import { Button } from '../../components/button.tsx';
import { Empty } from '../../components/empty.tsx';
import { Loaded } from '../../components/loading.tsx';
import { Page } from '../../components/page.tsx';
import { useFormat } from '../../hooks/use-format.ts';
import { useChanges } from '../../hooks/use-view.ts';
import { words } from '../../words/index.ts';
import './changes.css';

const says = words.changes;
/** Rows shown at first, and added at each asking. */
const step = 60;

function ChangeList({ changes }: ChangesView) {
  const format = useFormat();
  const [shown, setShown] = useState(step);
  if (changes.length === 0) return <Empty sentence={says.none} />;
  return (
    <>
      <table className="changes-table" aria-label={says.title}>
        <thead>
          <tr>
            <th scope="col">{says.columns.when}</th>
            <th scope="col">{says.columns.what}</th>
            <th scope="col">
              <span className="only-heard">{says.columns.act}</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {changes.slice(0, shown).map((change) => (
            <tr key={change.id} className={change.undone ? 'changes-undone' : undefined}>
              <td className="changes-when">
                <time dateTime={change.at}>{format.moment(change.at)}</time>
              </td>
              <td>
                {change.undone ? <s>{change.label}</s> : change.label}
                {change.undone && <span className="faint"> {says.undone}</span>}
              </td>
              <td className="changes-act no-print">
                {!change.undone && !change.forGood && (
                  <Button
                    kind="plain"
                    aria-label={says.named(change.label)}
                    onPress={() => void undoChange(change.id)}
                  >
                    {says.undo}
                  </Button>
                )}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      {changes.length > shown && (
        <p className="changes-more no-print">
          <Button onPress={() => setShown(shown + step)}>{says.older}</Button>
        </p>
      )}
    </>
  );
}

export function ChangesScreen() {
  const view = useChanges();
  return (
    <Page title={says.title} lead={says.lead}>
      <Loaded view={view}>
        {(data) => <ChangeList changes={data.changes.filter((change) => !change.clockOnly)} />}
      </Loaded>
    </Page>
  );
}

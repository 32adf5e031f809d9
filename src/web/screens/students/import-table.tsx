// The previewed rows: what each column is, what is wrong in which row, mended in place.

import { useState } from 'react';
import type { StudentColumn, StudentImportPreview } from '#contract';
import { SelectField } from '../../components/field.tsx';
import { Tick } from '../../components/tick.tsx';
import { words } from '../../words/index.ts';
import { isReady, opensCourse, type PreviewRow } from './import-draft.ts';

const says = words.studentsImport;
type Choice = StudentColumn | '';

const choices: readonly { value: Choice; label: string }[] = [
  { value: '', label: says.leaveOut },
  ...says.columnNames.map((column) => ({ value: column, label: says.columns[column] })),
];

interface CellProps {
  readonly text: string;
  readonly label: string;
  readonly faulty: boolean;
  readonly describedBy: string | undefined;
  readonly onMend: (text: string) => void;
}

function Cell({ text, label, faulty, describedBy, onMend }: CellProps) {
  /** Null until something is typed; stands until the next preview says the same. */
  const [typed, setTyped] = useState<string | null>(null);
  const shown = typed ?? text;
  const mend = () => {
    if (shown !== text) onMend(shown);
  };
  return (
    <input
      className={`import-cell${faulty ? ' import-cell-faulty' : ''}`}
      aria-label={label}
      aria-invalid={faulty || undefined}
      aria-describedby={faulty ? describedBy : undefined}
      value={shown}
      size={Math.max(3, Math.min(24, shown.length))}
      onChange={(event) => setTyped(event.target.value)}
      onBlur={mend}
      onKeyDown={(event) => {
        if (event.key === 'Enter') mend();
        if (event.key === 'Escape') setTyped(null);
      }}
    />
  );
}

export interface ImportTableProps {
  readonly preview: StudentImportPreview;
  readonly isTaken: (row: PreviewRow) => boolean;
  readonly onTake: (row: PreviewRow, taken: boolean) => void;
  readonly onMapping: (mapping: readonly (StudentColumn | null)[]) => void;
  readonly onMend: (row: number, column: number, text: string) => void;
}

export function ImportTable({ preview, isTaken, onTake, onMapping, onMend }: ImportTableProps) {
  const columnOf = (column: number) => preview.mapping[column] ?? null;
  const isFaulty = (row: PreviewRow, column: number) =>
    row.faults.some((f) => f.column === columnOf(column) || f.column === preview.header[column]);
  return (
    // A wide file scrolls inside its own box, which the keyboard can reach.
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable without a mouse
    <section className="import-scroll" tabIndex={0} aria-label={says.title}>
      <table className="import-table">
        <thead>
          <tr>
            <th scope="col">{says.take}</th>
            <th scope="col">{says.line}</th>
            <th scope="col">{says.faults}</th>
            {preview.header.map((heading, column) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: columns are told apart by their place; headings may repeat
              <th scope="col" key={column}>
                <SelectField
                  label={heading || says.columnFor(String(column + 1))}
                  value={columnOf(column) ?? ''}
                  options={choices}
                  onValue={(chosen) =>
                    onMapping(preview.header.map((_, at) => (at === column ? chosen || null : columnOf(at))))
                  }
                />
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {preview.rows.map((row, at) => {
            const name = row.student?.name ?? row.cells[0] ?? '';
            const faultId = `import-fault-${row.line}`;
            return (
              <tr key={row.line} className={isTaken(row) ? undefined : 'import-out'}>
                <td>
                  <Tick
                    ticked={isTaken(row)}
                    disabled={!isReady(row)}
                    onTick={(taken) => onTake(row, taken)}
                    label={says.takeRow(name)}
                  />
                </td>
                <td className="faint">{row.line}</td>
                <td className="import-faults" id={faultId}>
                  {row.faults.map((fault) => (
                    <p className="fault" key={`${fault.column} ${fault.message}`}>
                      {fault.message}
                    </p>
                  ))}
                  {row.twin !== null && <p className="soft">{says.twin}</p>}
                  {isReady(row) && row.twin === null && (
                    <p className="faint">{opensCourse(row) ? `${says.good}, ${says.opens}` : says.good}</p>
                  )}
                </td>
                {preview.header.map((heading, column) => (
                  // biome-ignore lint/suspicious/noArrayIndexKey: columns are told apart by their place; headings may repeat
                  <td key={column} className={columnOf(column) === null ? 'import-unused' : undefined}>
                    <Cell
                      text={row.cells[column] ?? ''}
                      label={says.cell(heading, row.line)}
                      faulty={isFaulty(row, column)}
                      describedBy={faultId}
                      onMend={(text) => onMend(at, column, text)}
                    />
                  </td>
                ))}
              </tr>
            );
          })}
        </tbody>
      </table>
    </section>
  );
}

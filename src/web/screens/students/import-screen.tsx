import '../../components/form.css';
// Students from a spreadsheet: choose or paste, match the columns, mend, and only then import.

import { useState } from 'react';
import { useLocation } from 'wouter';
import type { PreviewStudents, StudentColumn, StudentImportPreview } from '#contract';
import { postJson } from '../../app/api.ts';
import { sendTogether, showFault } from '../../app/send.ts';
import { Button } from '../../components/button.tsx';
import { ChooseFile } from '../../components/choose-file.tsx';
import { TextField } from '../../components/field.tsx';
import { Page } from '../../components/page.tsx';
import { Tick } from '../../components/tick.tsx';
import { useStudio } from '../../hooks/use-view.ts';
import { newId } from '../../new-id.ts';
import { words } from '../../words/index.ts';
import {
  findTurnedNames,
  isReady,
  isSiblingsAtFirst,
  isTakenAtFirst,
  listSiblings,
  mendCell,
  type PreviewRow,
  rowsToCommands,
  type TurnedNames,
  turnNames,
} from './import-draft.ts';
import { ImportSiblings } from './import-siblings.tsx';
import { ImportTable } from './import-table.tsx';
import './students.css';
import './import.css';

const says = words.studentsImport;

type Mapping = readonly (StudentColumn | null)[];
interface Turning {
  readonly names: TurnedNames;
  readonly isTurned: boolean;
}

export function ImportScreen() {
  const studio = useStudio().data;
  const [, navigate] = useLocation();
  const [pasted, setPasted] = useState('');
  const [preview, setPreview] = useState<StudentImportPreview | null>(null);
  /** What the teacher ticked otherwise than at first, by line. */
  const [ticked, setTicked] = useState<ReadonlyMap<number, boolean>>(new Map());
  /** Which siblings the teacher ticked otherwise than at first, by their key. */
  const [tickedSiblings, setTickedSiblings] = useState<ReadonlyMap<string, boolean>>(new Map());
  const [text, setText] = useState('');
  /** Counts the files read, so that a new one starts with a fresh table. */
  const [reading, setReading] = useState(0);
  const [busy, setBusy] = useState(false);
  /** The names that stood family name first, and whether they are turned; null when they did not. */
  const [turning, setTurning] = useState<Turning | null>(null);

  async function readRows(next: string, mapping?: Mapping): Promise<StudentImportPreview | null> {
    const asked: PreviewStudents = { text: next, ...(mapping ? { mapping: [...mapping] } : {}) };
    const reply = await postJson<StudentImportPreview>('/api/preview/students', asked);
    if (reply.ok) return reply.value;
    showFault(reply.error);
    return null;
  }
  async function look(next: string, mapping?: Mapping, known: Turning | null = turning) {
    setBusy(true);
    let shown = await readRows(next, mapping);
    let shownText = next;
    const names = shown && known === null ? findTurnedNames(shown) : null;
    if (shown && names) {
      shownText = turnNames(shown, names, 'turned');
      shown = await readRows(shownText, shown.mapping);
    }
    setBusy(false);
    if (!shown) return;
    setText(shownText);
    setPreview(shown);
    setTurning(names ? { names, isTurned: true } : known);
  }
  const start = (next: string) => {
    setTicked(new Map());
    setTickedSiblings(new Map());
    setReading((n) => n + 1);
    void look(next, undefined, null);
  };
  const turn = (isTurned: boolean) => {
    if (!preview || !turning) return;
    const next = turnNames(preview, turning.names, isTurned ? 'turned' : 'as');
    void look(next, preview.mapping, { ...turning, isTurned });
  };
  const map = (mapping: Mapping) => {
    // Of a column that holds no names, nothing is turned.
    const isLeft = preview && turning && mapping[turning.names.column] !== 'name';
    void look(isLeft ? turnNames(preview, turning.names, 'as') : text, mapping, isLeft ? null : turning);
  };
  const example = turning?.names.names.find(({ as, turned }) => as !== turned);
  const isTaken = (row: PreviewRow) => isReady(row) && (ticked.get(row.line) ?? isTakenAtFirst(row));
  const taken = preview?.rows.filter(isTaken) ?? [];
  const faulty = preview?.rows.filter((row) => !isReady(row)).length ?? 0;

  const leftOut =
    preview?.header.filter(
      (heading, at) =>
        heading !== '' && preview.mapping[at] === null && preview.rows.some(({ cells }) => cells[at]),
    ) ?? [];

  const siblings = preview ? listSiblings(preview, taken) : [];
  const areSiblings = (found: (typeof siblings)[number]) =>
    tickedSiblings.get(found.key) ?? isSiblingsAtFirst(found);

  async function importTaken() {
    const commands = studio && rowsToCommands(taken, siblings.filter(areSiblings), studio.today, newId);
    if (!commands) return;
    setBusy(true);
    const label = says.done(commands.add.students.length, commands.courses.length);
    const sent = await sendTogether([commands.add, ...commands.siblings, ...commands.courses], label);
    setBusy(false);
    // Those who came without a time have no course yet, and nobody has a unit.
    if (sent) navigate('/students/first');
  }

  return (
    <Page title={says.title} lead={says.lead} wide={preview !== null}>
      <div className="import-source">
        <ChooseFile
          label={preview ? says.another : says.file}
          kind={preview ? 'quiet' : 'primary'}
          accept={['.csv', '.txt', '.tsv', 'text/csv', 'text/plain']}
          pending={busy}
          onText={start}
        />
        {!preview && (
          <>
            <TextField label={says.paste} rows={8} value={pasted} onValue={setPasted} help={says.example} />
            <div>
              <Button isDisabled={pasted.trim() === ''} pending={busy} onPress={() => start(pasted)}>
                {says.read}
              </Button>
            </div>
          </>
        )}
      </div>
      {preview && preview.rows.length === 0 && <p>{says.empty}</p>}
      {preview && preview.rows.length > 0 && (
        <>
          <p className="import-summary" role="status">
            {says.summary(preview.rows.length - faulty, faulty)}
          </p>
          {leftOut.length > 0 && <p className="soft">{says.leftOut(leftOut)}</p>}
          {turning && example && (
            <div className="import-turn">
              <Tick ticked={turning.isTurned} pending={busy} onTick={turn}>
                {says.turn(example.as, example.turned)}
              </Tick>
            </div>
          )}
          <ImportTable
            key={reading}
            preview={preview}
            isTaken={isTaken}
            onTake={(row, take) => setTicked(new Map(ticked).set(row.line, take))}
            onMapping={map}
            onMend={(row, column, cell) => void look(mendCell(preview, row, column, cell), preview.mapping)}
          />
          <ImportSiblings
            found={siblings}
            isTicked={areSiblings}
            pending={busy}
            onTick={(found, isTicked) => setTickedSiblings(new Map(tickedSiblings).set(found.key, isTicked))}
          />
          <p className="form-care import-care">{says.minor}</p>
          <div className="import-end">
            <Button
              kind="primary"
              isDisabled={taken.length === 0}
              pending={busy}
              onPress={() => void importTaken()}
            >
              {says.action(taken.length)}
            </Button>
            <Button kind="plain" onPress={() => navigate('/students')}>
              {words.frame.cancel}
            </Button>
          </div>
        </>
      )}
    </Page>
  );
}

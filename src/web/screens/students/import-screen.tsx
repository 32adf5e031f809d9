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
import { useStudio } from '../../hooks/use-view.ts';
import { newId } from '../../new-id.ts';
import { words } from '../../words/index.ts';
import { isReady, isTakenAtFirst, mendCell, type PreviewRow, rowsToCommands } from './import-draft.ts';
import { ImportTable } from './import-table.tsx';
import './students.css';
import './import.css';

const says = words.studentsImport;

export function ImportScreen() {
  const studio = useStudio().data;
  const [, navigate] = useLocation();
  const [pasted, setPasted] = useState('');
  const [preview, setPreview] = useState<StudentImportPreview | null>(null);
  /** What the teacher ticked otherwise than at first, by line. */
  const [ticked, setTicked] = useState<ReadonlyMap<number, boolean>>(new Map());
  const [text, setText] = useState('');
  /** Counts the files read, so that a new one starts with a fresh table. */
  const [reading, setReading] = useState(0);
  const [busy, setBusy] = useState(false);

  async function look(next: string, mapping?: readonly (StudentColumn | null)[]) {
    const asked: PreviewStudents = { text: next, ...(mapping ? { mapping: [...mapping] } : {}) };
    setBusy(true);
    const reply = await postJson<StudentImportPreview>('/api/preview/students', asked);
    setBusy(false);
    if (!reply.ok) {
      showFault(reply.error);
      return;
    }
    setText(next);
    setPreview(reply.value);
  }
  const start = (next: string) => {
    setTicked(new Map());
    setReading((n) => n + 1);
    void look(next);
  };
  const isTaken = (row: PreviewRow) => isReady(row) && (ticked.get(row.line) ?? isTakenAtFirst(row));
  const taken = preview?.rows.filter(isTaken) ?? [];
  const faulty = preview?.rows.filter((row) => !isReady(row)).length ?? 0;

  async function importTaken() {
    const commands = studio && rowsToCommands(taken, studio.today, newId);
    if (!commands) return;
    setBusy(true);
    const label = says.done(commands.add.students.length, commands.courses.length);
    const sent = await sendTogether([commands.add, ...commands.courses], () => label);
    setBusy(false);
    if (sent) navigate('/students');
  }

  return (
    <Page title={says.title} lead={says.lead} wide={preview !== null}>
      <div className="import-source">
        <ChooseFile
          label={preview ? says.another : says.file}
          kind={preview ? 'quiet' : 'primary'}
          accept={['.csv', '.txt', '.tsv', 'text/csv', 'text/plain']}
          disabled={busy}
          onText={start}
        />
        {!preview && (
          <>
            <TextField label={says.paste} rows={8} value={pasted} onValue={setPasted} help={says.example} />
            <div>
              <Button isDisabled={pasted.trim() === '' || busy} onPress={() => start(pasted)}>
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
          <ImportTable
            key={reading}
            preview={preview}
            isTaken={isTaken}
            onTake={(row, take) => setTicked(new Map(ticked).set(row.line, take))}
            onMapping={(mapping) => void look(text, mapping)}
            onMend={(row, column, cell) => void look(mendCell(preview, row, column, cell), preview.mapping)}
          />
          <p className="form-care import-care">{says.minor}</p>
          <div className="import-end">
            <Button kind="primary" isDisabled={taken.length === 0 || busy} onPress={() => void importTaken()}>
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

// Holidays from a calendar file: what was found, which to take, and only then added.

import { useState } from 'react';
import type { HolidayImportPreview, PreviewHolidays } from '#contract';
import { addDays, daysBetween, type PlainDate } from '#core';
import { postJson } from '../../app/api.ts';
import { showFault } from '../../app/send.ts';
import { Button } from '../../components/button.tsx';
import { ChooseFile } from '../../components/choose-file.tsx';
import { Dialog } from '../../components/dialog.tsx';
import { Tick } from '../../components/tick.tsx';
import { useCommand } from '../../hooks/use-command.ts';
import { useFormat } from '../../hooks/use-format.ts';
import { newId } from '../../new-id.ts';
import { words } from '../../words/index.ts';
import '../../components/form.css';

const says = words.term.holidays;

export interface CalendarDialogProps {
  readonly today: PlainDate;
  readonly onClose: () => void;
}

export function CalendarDialog({ today, onClose }: CalendarDialogProps) {
  const send = useCommand();
  const format = useFormat();
  const [preview, setPreview] = useState<HolidayImportPreview | null>(null);
  const [left, setLeft] = useState<ReadonlySet<number>>(new Set());
  const [busy, setBusy] = useState(false);
  const taken = preview?.holidays.filter((_, at) => !left.has(at)) ?? [];

  async function read(text: string) {
    // From two months back to two years on: the terms a teacher plans.
    const asked: PreviewHolidays = { text, from: addDays(today, -60), to: addDays(today, 730) };
    setBusy(true);
    const reply = await postJson<HolidayImportPreview>('/api/preview/holidays', asked);
    setBusy(false);
    if (!reply.ok) {
      showFault(reply.error);
      return;
    }
    setPreview(reply.value);
    setLeft(new Set(reply.value.holidays.flatMap((h, at) => (h.known ? [at] : []))));
  }

  async function add() {
    setBusy(true);
    const holidays = taken.map(({ name, starts, ends, source }) => ({
      id: newId('holiday'),
      name,
      starts,
      ends,
      source,
    }));
    const done = await send({ type: 'holiday.putMany', holidays });
    setBusy(false);
    if (done) onClose();
  }

  return (
    <Dialog title={says.importTitle} open onClose={onClose}>
      <div className="form">
        <div>
          <ChooseFile
            label={words.studentsImport.file}
            kind={preview ? 'quiet' : 'primary'}
            accept={['.ics', 'text/calendar']}
            pending={busy}
            onText={(text) => void read(text)}
          />
        </div>
        {preview?.faults.map((fault) => (
          <p key={fault} className="fault">
            {fault}
          </p>
        ))}
        {preview && preview.holidays.length > 0 && (
          <>
            <ul className="ruled calendar-found">
              {preview.holidays.map((holiday, at) => (
                <li key={`${holiday.source} ${holiday.starts} ${holiday.name}`}>
                  <Tick
                    ticked={!left.has(at)}
                    onTick={(ticked) => {
                      const next = new Set(left);
                      if (ticked) next.delete(at);
                      else next.add(at);
                      setLeft(next);
                    }}
                  >
                    {holiday.name}
                  </Tick>
                  <span className="soft">
                    {format.days(holiday.starts, holiday.ends)}
                    {holiday.known && `, ${says.known}`}
                  </span>
                  <span className="faint">{says.days(daysBetween(holiday.starts, holiday.ends) + 1)}</span>
                </li>
              ))}
            </ul>
            {preview.holidays.every((holiday) => holiday.known) && <p>{says.allKnown}</p>}
            <div className="form-end">
              <Button
                kind="primary"
                isDisabled={taken.length === 0}
                pending={busy}
                onPress={() => void add()}
              >
                {says.importAction(taken.length)}
              </Button>
              <Button kind="plain" onPress={onClose}>
                {words.frame.cancel}
              </Button>
            </div>
          </>
        )}
      </div>
    </Dialog>
  );
}

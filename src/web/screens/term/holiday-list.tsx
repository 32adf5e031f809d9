// The holidays to come, and those past behind a button.

import { useState } from 'react';
import type { TermView } from '#contract';
import type { PlainDate } from '#core';
import { Button } from '../../components/button.tsx';
import { useCommand } from '../../hooks/use-command.ts';
import { useFormat } from '../../hooks/use-format.ts';
import { newId } from '../../new-id.ts';
import { words } from '../../words/index.ts';
import { SpanDialog } from './span-dialog.tsx';

const says = words.term.holidays;
const terms = words.term.terms;
type Holiday = TermView['holidays'][number];

export interface HolidayListProps {
  readonly holidays: TermView['holidays'];
  readonly today: PlainDate;
  readonly onImport: () => void;
}

export function HolidayList({ holidays, today, onImport }: HolidayListProps) {
  const send = useCommand();
  const format = useFormat();
  const [open, setOpen] = useState<Holiday | 'new' | null>(null);
  const [withPast, setWithPast] = useState(false);
  const past = holidays.filter((h) => h.ends < today).length;
  const known = open === 'new' ? null : open;
  return (
    <section>
      <div className="section-line">
        <h2>{says.title}</h2>
        <span className="term-acts no-print">
          <Button kind="plain" onPress={() => setOpen('new')}>
            {says.add}
          </Button>
          <Button kind="plain" onPress={onImport}>
            {says.import}
          </Button>
        </span>
      </div>
      {holidays.length === 0 && <p className="soft">{says.none}</p>}
      <ul className="ruled term-list">
        {holidays
          .filter((h) => withPast || h.ends >= today)
          .map((holiday) => (
            <li key={holiday.id}>
              <span className="term-name">{holiday.name}</span>
              <span>{format.days(holiday.starts, holiday.ends)}</span>
              <span className="term-acts no-print">
                <Button kind="plain" aria-label={terms.change(holiday.name)} onPress={() => setOpen(holiday)}>
                  {words.frame.change}
                </Button>
                <Button
                  kind="plain"
                  aria-label={terms.removeNamed(holiday.name)}
                  onPress={() => void send({ type: 'holiday.remove', holiday: holiday.id })}
                >
                  {terms.remove}
                </Button>
              </span>
            </li>
          ))}
      </ul>
      {past > 0 && !withPast && (
        <Button kind="plain" onPress={() => setWithPast(true)}>
          {says.showPast(past)}
        </Button>
      )}
      {open !== null && (
        <SpanDialog
          title={known ? known.name : says.addTitle}
          action={known ? words.frame.save : says.add}
          placeholder={says.namePlaceholder}
          start={{
            name: known?.name ?? '',
            starts: known?.starts ?? '',
            ends: known?.ends ?? '',
            endsOptional: true,
          }}
          lastDayHelp={says.lastDayHelp}
          onSave={async (span) => {
            const holiday = { id: known?.id ?? newId('holiday'), source: known?.source ?? '', ...span };
            return (await send({ type: 'holiday.putMany', holidays: [holiday] })) !== null;
          }}
          onClose={() => setOpen(null)}
        />
      )}
    </section>
  );
}

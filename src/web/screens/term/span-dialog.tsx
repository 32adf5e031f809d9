// A stretch of days with a name: a term, or a holiday.

import { type FormEvent, useState } from 'react';
import { isDate, type PlainDate } from '#core';
import { Button } from '../../components/button.tsx';
import { Dialog } from '../../components/dialog.tsx';
import { TextField } from '../../components/field.tsx';
import { words } from '../../words/index.ts';
import { findSpanFaults, type SpanDraft } from './span-draft.ts';
import '../../components/form.css';

const says = words.term.terms;

export interface SpanDialogProps {
  readonly title: string;
  readonly action: string;
  readonly placeholder: string;
  readonly start: SpanDraft;
  readonly lastDayHelp?: string;
  /** Sends it; answers whether it was taken. */
  readonly onSave: (span: { name: string; starts: PlainDate; ends: PlainDate }) => Promise<boolean>;
  readonly onClose: () => void;
}

export function SpanDialog(props: SpanDialogProps) {
  const [draft, setDraft] = useState(props.start);
  const [tried, setTried] = useState(false);
  const [busy, setBusy] = useState(false);
  const faults = findSpanFaults(draft);
  const shown = tried ? faults : {};

  async function save(event: FormEvent) {
    event.preventDefault();
    setTried(true);
    if (busy || Object.keys(faults).length > 0 || !isDate(draft.starts)) return;
    const ends = isDate(draft.ends) ? draft.ends : draft.starts;
    setBusy(true);
    const taken = await props.onSave({ name: draft.name.trim(), starts: draft.starts, ends });
    setBusy(false);
    if (taken) props.onClose();
  }

  return (
    <Dialog title={props.title} open onClose={props.onClose}>
      <form className="form" onSubmit={save} noValidate>
        <TextField
          label={says.name}
          placeholder={props.placeholder}
          value={draft.name}
          onValue={(name) => setDraft({ ...draft, name })}
          fault={shown.name ?? null}
          required
          autoFocus
        />
        <div className="form-row form-top">
          <TextField
            label={says.starts}
            type="date"
            value={draft.starts}
            onValue={(starts) => setDraft({ ...draft, starts })}
            fault={shown.starts ?? null}
            required
          />
          <TextField
            label={says.ends}
            type="date"
            min={draft.starts}
            value={draft.ends}
            onValue={(ends) => setDraft({ ...draft, ends })}
            fault={shown.ends ?? null}
            help={props.lastDayHelp}
          />
        </div>
        <div className="form-end">
          <Button kind="primary" type="submit" pending={busy}>
            {props.action}
          </Button>
          <Button kind="plain" onPress={props.onClose}>
            {words.frame.cancel}
          </Button>
        </div>
      </form>
    </Dialog>
  );
}

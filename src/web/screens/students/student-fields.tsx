// Who a student is: name, age, instruments, contacts, notes.

import type { Id, PlainDate } from '#core';
import { Button } from '../../components/button.tsx';
import { TextField } from '../../components/field.tsx';
import { InstrumentSelect } from '../../components/instrument-select.tsx';
import { StageSelect } from '../../components/stage-select.tsx';
import { Tick } from '../../components/tick.tsx';
import { words } from '../../words/index.ts';
import { type ContactDraft, newContact } from './sibling-draft.ts';
import { SiblingsFields } from './siblings-fields.tsx';
import { type DraftFaults, mayBeMinor, type StudentDraft } from './student-draft.ts';

const form = words.students.form;

export interface StudentFieldsProps {
  readonly draft: StudentDraft;
  /** Null of a student who is being added. */
  readonly own: Id<'student'> | null;
  readonly onDraft: (step: (draft: StudentDraft) => StudentDraft) => void;
  readonly faults: DraftFaults;
  readonly today: PlainDate;
}

export function StudentFields({ draft, own, onDraft, faults, today }: StudentFieldsProps) {
  const set = (change: Partial<StudentDraft>) => onDraft((now) => ({ ...now, ...change }));
  const setContact = (n: number, change: Partial<ContactDraft>) =>
    set({ contacts: draft.contacts.map((contact, at) => (at === n ? { ...contact, ...change } : contact)) });
  return (
    <>
      <section className="form-part">
        <div className="form-row form-top">
          <div className="field field-broad">
            <TextField
              label={form.name}
              value={draft.name}
              onValue={(name) => set({ name })}
              fault={faults.name ?? null}
              required
              autoFocus
            />
          </div>
          <TextField
            label={form.born}
            type="date"
            max={today}
            value={draft.born}
            onValue={(born) => set({ born, birthYear: born === '' ? draft.birthYear : '' })}
            fault={faults.born ?? null}
          />
          <div className="field field-slim">
            <TextField
              label={form.birthYear}
              type="number"
              min={1900}
              max={today.slice(0, 4)}
              value={draft.birthYear}
              onValue={(birthYear) => set({ birthYear, born: birthYear === '' ? draft.born : '' })}
              fault={faults.birthYear ?? null}
            />
          </div>
        </div>
        <p className="faint">{form.bornHelp}</p>
        {mayBeMinor(draft, today) && <p className="form-care">{form.minor}</p>}
      </section>

      <section className="form-part">
        <h3>{form.instruments}</h3>
        {draft.instruments.map((row, n) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: rows are told apart by their place alone
          <div className="form-row" key={n}>
            <div className="field field-broad">
              <InstrumentSelect
                label={form.instrument}
                value={row.instrument}
                fault={n === 0 ? (faults.course ?? null) : null}
                onValue={(instrument) =>
                  set({ instruments: draft.instruments.with(n, { ...row, instrument }) })
                }
              />
            </div>
            <StageSelect
              label={form.stage}
              value={row.stage}
              onValue={(stage) => set({ instruments: draft.instruments.with(n, { ...row, stage }) })}
            />
            {draft.instruments.length > 1 && (
              <Button kind="plain" onPress={() => set({ instruments: draft.instruments.toSpliced(n, 1) })}>
                {form.removeRow}
              </Button>
            )}
          </div>
        ))}
        {faults.instruments && <p className="fault">{faults.instruments}</p>}
        <div>
          <Button
            kind="plain"
            onPress={() =>
              set({ instruments: [...draft.instruments, { instrument: '', stage: 'beginner' }] })
            }
          >
            {form.addInstrument}
          </Button>
        </div>
      </section>

      <SiblingsFields draft={draft} own={own} onDraft={onDraft} />

      <section className="form-part">
        <h3>{form.contacts}</h3>
        {draft.contacts.map((contact, n) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: rows are told apart by their place alone
          <div className="form-row" key={n}>
            <TextField
              label={form.contactName}
              value={contact.name}
              onValue={(name) => setContact(n, { name })}
            />
            <TextField
              label={form.relation}
              placeholder={form.relationPlaceholder}
              value={contact.relation}
              onValue={(relation) => setContact(n, { relation })}
            />
            <TextField
              label={form.phone}
              type="tel"
              value={contact.phone}
              onValue={(phone) => setContact(n, { phone })}
            />
            <TextField
              label={form.email}
              type="email"
              value={contact.email}
              onValue={(email) => setContact(n, { email })}
            />
            {draft.siblings.length > 0 && (
              <div className="contact-shared">
                <Tick ticked={contact.shared} onTick={(shared) => setContact(n, { shared })}>
                  {words.students.siblings.shared(draft.siblings.map(({ name }) => name))}
                </Tick>
              </div>
            )}
            <Button kind="plain" onPress={() => set({ contacts: draft.contacts.toSpliced(n, 1) })}>
              {form.removeRow}
            </Button>
          </div>
        ))}
        <div>
          <Button kind="plain" onPress={() => set({ contacts: [...draft.contacts, newContact(draft)] })}>
            {form.addContact}
          </Button>
        </div>
      </section>

      <section className="form-part">
        <TextField
          label={form.note}
          help={form.noteHelp}
          rows={3}
          value={draft.note}
          onValue={(note) => set({ note })}
        />
        <div className="form-row">
          <div className="field field-slim">
            <TextField
              label={form.since}
              type="date"
              value={draft.since}
              onValue={(since) => set({ since })}
            />
          </div>
        </div>
      </section>
    </>
  );
}

// Consent before a minor is recorded: who gave it and when, with the caution that local law decides.

import { type FormEvent, useState } from 'react';
import type { TakesView } from '#contract';
import type { PlainDate } from '#core';
import { Button } from '../components/button.tsx';
import { TextField } from '../components/field.tsx';
import { useCommand } from '../hooks/use-command.ts';
import { useStudio } from '../hooks/use-view.ts';
import { newId } from '../new-id.ts';
import { words } from '../words/index.ts';
import '../components/form.css';

const say = words.takes.consent;

export function ConsentForm({ takes }: { readonly takes: TakesView }) {
  const send = useCommand();
  const today = useStudio().data?.today ?? '';
  const [givenBy, setGivenBy] = useState('');
  const [relation, setRelation] = useState('');
  const [on, setOn] = useState<string>(today);
  const [note, setNote] = useState('');
  const submit = (event: FormEvent) => {
    event.preventDefault();
    void send({
      type: 'consent.give',
      consent: {
        id: newId('consent'),
        student: takes.student,
        givenBy: givenBy.trim(),
        relation: relation.trim(),
        on: on as PlainDate, // the date field gives a day or nothing; the server checks it
        note: note.trim(),
      },
    });
  };
  return (
    <form className="form" onSubmit={submit}>
      <p>{say.needed(takes.name, takes.minority ?? 'unknown', takes.age)}</p>
      <p className="soft">{say.caution}</p>
      <TextField label={say.givenBy} value={givenBy} onValue={setGivenBy} required autoFocus />
      <TextField label={say.relation} value={relation} onValue={setRelation} help={say.relationHelp} />
      <TextField label={say.on} type="date" value={on} onValue={setOn} required max={today} />
      <TextField label={say.note} value={note} onValue={setNote} help={say.noteHelp} />
      <p className="form-end">
        <Button kind="primary" large type="submit" isDisabled={givenBy.trim() === '' || on === ''}>
          {say.give}
        </Button>
      </p>
    </form>
  );
}

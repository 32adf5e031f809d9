// Whose sibling a student is: chosen from the students who are here already, and taken out again.

import { useState } from 'react';
import type { StudentView } from '#contract';
import type { Id } from '#core';
import { getView, isApiFault } from '../../app/api.ts';
import { showFault } from '../../app/send.ts';
import { Button } from '../../components/button.tsx';
import { SelectField } from '../../components/field.tsx';
import { useStudents } from '../../hooks/use-view.ts';
import { words } from '../../words/index.ts';
import { addSibling, dropSiblings, siblingChoices } from './sibling-draft.ts';
import type { StudentDraft } from './student-draft.ts';
import './siblings.css';

const says = words.students.siblings;

export interface SiblingsFieldsProps {
  readonly draft: StudentDraft;
  /** Null of a student who is being added. */
  readonly own: Id<'student'> | null;
  /** Takes the step from the draft as it is by then. */
  readonly onDraft: (step: (draft: StudentDraft) => StudentDraft) => void;
}

export function SiblingsFields({ draft, own, onDraft }: SiblingsFieldsProps) {
  const students = useStudents().data?.students ?? [];
  const [fetching, setFetching] = useState(false);
  const { siblings } = draft;
  const { alike, others } = siblingChoices(students, own, draft);
  if (alike.length + others.length + siblings.length === 0) return null;

  async function choose(id: string) {
    if (id === '' || fetching) return;
    setFetching(true);
    try {
      const chosen = await getView<StudentView>(`/api/students/${encodeURIComponent(id)}`);
      onDraft((now) => addSibling(now, own, chosen));
    } catch (fault) {
      if (!isApiFault(fault)) throw fault;
      showFault(fault);
    }
    setFetching(false);
  }

  return (
    <section className="form-part">
      <h3>{says.title}</h3>
      {siblings.length > 0 && (
        <div className="siblings-row">
          <p>
            {says.of}{' '}
            {siblings.map(({ id, name }, n) => (
              <span key={id}>
                {n > 0 && ', '}
                {name}
              </span>
            ))}
          </p>
          <Button kind="plain" onPress={() => onDraft(dropSiblings)}>
            {says.not}
          </Button>
        </div>
      )}
      {alike.length + others.length > 0 && (
        <div className="form-row">
          <div className="field field-broad">
            <SelectField
              label={siblings.length === 0 ? says.of : says.alsoOf}
              value=""
              onValue={(id) => void choose(id)}
              options={[
                { value: '', label: siblings.length === 0 ? says.nobody : says.nobodyElse },
                ...alike.map(({ id, name }) => ({
                  value: id as string,
                  label: name,
                  group: says.sameSurname,
                })),
                ...others.map(({ id, name }) => ({
                  value: id as string,
                  label: name,
                  group: alike.length > 0 ? says.others : '',
                })),
              ]}
            />
          </div>
        </div>
      )}
      <p className="faint">{siblings.length === 0 ? says.help : says.sharing}</p>
    </section>
  );
}

import { type FormEvent, useState } from 'react';
import type { CourseView, InkIndex } from '#contract';
import type { Id } from '#core';
import { Button } from '../../components/button.tsx';
import { SelectField, TextField } from '../../components/field.tsx';
import { useCommand } from '../../hooks/use-command.ts';
import { newId } from '../../new-id.ts';
import { words } from '../../words/index.ts';
import { dayOrNull } from './what-if-commands.ts';

const say = words.student.plan;
const inks: readonly InkIndex[] = [0, 1, 2, 3];

interface StrandDraft {
  readonly id: Id<'strand'>;
  readonly name: string;
  readonly ink: InkIndex;
  readonly priority: number;
  readonly deadline: string;
}

/** The strands of a course: names, inks, priority, and the day each must be ready by. */
export function PlanStrands({ course }: { readonly course: CourseView }) {
  const send = useCommand();
  const before: readonly StrandDraft[] = course.strands.map((one) => ({
    ...one,
    deadline: one.deadline ?? '',
  }));
  const [draft, setDraft] = useState(before);
  const right = draft.every(
    (one) => one.name.trim() !== '' && (one.deadline === '' || dayOrNull(one.deadline)),
  );
  const changed = JSON.stringify(draft) !== JSON.stringify(before);
  const change = (id: string, change: Partial<StrandDraft>) =>
    setDraft(draft.map((one) => (one.id === id ? { ...one, ...change } : one)));
  const submit = (event: FormEvent) => {
    event.preventDefault();
    if (!right) return;
    void send({
      type: 'course.change',
      seen: course.revision,
      course: course.id,
      strands: draft.map((one) => ({ ...one, name: one.name.trim(), deadline: dayOrNull(one.deadline) })),
    });
  };
  const add = () => {
    const free = inks.find((ink) => !draft.some((one) => one.ink === ink)) ?? 0;
    setDraft([
      ...draft,
      {
        id: newId('strand'),
        name: say.newStrand,
        ink: free,
        priority: Math.min(9, draft.length + 1),
        deadline: '',
      },
    ]);
  };
  return (
    <form className="form-part" onSubmit={submit}>
      <h3>{say.strands}</h3>
      <ul className="strand-rows">
        {draft.map((one) => (
          <li key={one.id} className="form-row">
            <TextField label={say.strandName} value={one.name} onValue={(name) => change(one.id, { name })} />
            <SelectField
              label={say.ink}
              value={String(one.ink)}
              onValue={(value) =>
                change(one.id, { ink: inks.find((ink) => String(ink) === value) ?? one.ink })
              }
              options={inks.map((ink) => ({ value: String(ink), label: say.inks[ink] ?? '' }))}
            />
            <SelectField
              label={say.priority}
              value={String(one.priority)}
              onValue={(value) => change(one.id, { priority: Number(value) })}
              options={[1, 2, 3, 4, 5, 6, 7, 8, 9].map((n) => ({ value: String(n), label: String(n) }))}
            />
            <TextField
              label={say.deadline}
              type="date"
              value={one.deadline}
              onValue={(deadline) => change(one.id, { deadline })}
            />
            {draft.length > 1 && (
              <Button
                kind="plain"
                aria-label={say.removeStrand(one.name)}
                onPress={() => setDraft(draft.filter((other) => other.id !== one.id))}
              >
                {say.remove}
              </Button>
            )}
          </li>
        ))}
      </ul>
      <p className="faint">{say.priorityHelp}</p>
      <p className="form-end">
        <Button type="submit" isDisabled={!changed || !right}>
          {say.save}
        </Button>
        {draft.length < 8 && (
          <Button kind="plain" onPress={add}>
            {say.addStrand}
          </Button>
        )}
      </p>
    </form>
  );
}

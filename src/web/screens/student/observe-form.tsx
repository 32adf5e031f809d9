import { type FormEvent, useState } from 'react';
import type { CourseView, SkillStandingView } from '#contract';
import type { Level } from '#planning';
import { sentenceCase } from '../../app/sentence-case.ts';
import { Button } from '../../components/button.tsx';
import { Dialog } from '../../components/dialog.tsx';
import { SelectField, TextField } from '../../components/field.tsx';
import { LevelPicker } from '../../components/level-picker.tsx';
import { useCommand } from '../../hooks/use-command.ts';
import { newId } from '../../new-id.ts';
import { words } from '../../words/index.ts';

const say = words.student.skills;

interface Props {
  readonly course: CourseView;
  readonly skill: Pick<SkillStandingView, 'skill' | 'title'>;
  readonly onClose: () => void;
}

/** An observation outside any lesson: a level, a note, and of whom when it is a group. */
export function ObserveForm({ course, skill, onClose }: Props) {
  const send = useCommand();
  const { members } = course.learner;
  const [level, setLevel] = useState<Level | null>(null);
  const [note, setNote] = useState('');
  const [who, setWho] = useState('');
  const submit = async (event: FormEvent) => {
    event.preventDefault();
    if (level === null) return;
    const student = members.find((member) => member.student === who)?.student ?? course.learner.student;
    const reply = await send({
      type: 'observe',
      observation: newId('observation'),
      course: course.id,
      student,
      lesson: null,
      skill: skill.skill,
      level,
      note: note.trim(),
    });
    if (reply) onClose();
  };
  return (
    <Dialog title={say.observeTitle(sentenceCase(skill.title))} open onClose={onClose}>
      <form className="form" onSubmit={(event) => void submit(event)}>
        <p className="soft">{say.observeHelp}</p>
        <LevelPicker label={sentenceCase(skill.title)} level={level} onLevel={setLevel} />
        {course.learner.group !== null && (
          <SelectField
            label={say.who}
            value={who}
            onValue={setWho}
            options={[
              { value: '', label: course.learner.name },
              ...members.map((member) => ({ value: member.student as string, label: member.name })),
            ]}
          />
        )}
        <TextField label={say.note} value={note} onValue={setNote} help={say.noteHelp} />
        <p className="form-end">
          <Button kind="primary" type="submit" isDisabled={level === null}>
            {say.record}
          </Button>
        </p>
      </form>
    </Dialog>
  );
}

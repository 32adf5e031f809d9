// A level noted of a take that was kept before, such as one recorded at home: the take becomes its proof.

import { useState } from 'react';
import type { CourseView, TakeView } from '#contract';
import type { Level } from '#planning';
import { Button } from '../components/button.tsx';
import { useCommand } from '../hooks/use-command.ts';
import { newId } from '../new-id.ts';
import { words } from '../words/index.ts';
import { LevelChoice, type ObservableSkill } from './level-choice.tsx';

export interface NoteLevelProps {
  readonly take: TakeView;
  readonly course: CourseView;
}

export function NoteLevel({ take, course }: NoteLevelProps) {
  const send = useCommand();
  const skills = observableSkills(take, course);
  const [chosen, setChosen] = useState<{ readonly skill: string; readonly level: Level | null }>({
    skill: skills[0]?.skill ?? '',
    level: null,
  });
  const { level } = chosen;
  const [isAsked, setAsked] = useState(false);
  const skill = skills.find((one) => one.skill === chosen.skill);
  if (skill === undefined) return null;
  const note = async () => {
    setAsked(level === null);
    if (level === null) return;
    const done = await send({
      type: 'observe',
      observation: newId('observation'),
      course: course.id,
      student: take.student,
      lesson: take.lesson,
      skill: skill.skill,
      level,
      note: '',
      take: take.id,
    });
    if (done) setChosen({ skill: skill.skill, level: null });
  };
  return (
    <section className="note-level">
      <LevelChoice
        skills={skills}
        skill={chosen.skill}
        level={level}
        onChoose={(one, at) => setChosen({ skill: one, level: at })}
      />
      <div className="record-deeds">
        {/* Never disabled: it would lose the focus the moment the level is noted. */}
        <Button onPress={() => void note()}>{words.takes.result.noteIt}</Button>
        <p className="soft" role="status">
          {isAsked && level === null && words.takes.result.chooseLevel}
        </p>
      </div>
    </section>
  );
}

/** Skills of the course, first those that the take was played for; with the level that its unit wants of them. */
function observableSkills(take: TakeView, course: CourseView): readonly ObservableSkill[] {
  const checks = course.units.find(({ id }) => id === take.activity?.courseUnit)?.checks ?? [];
  const all = course.skills.map(({ skill, title }): ObservableSkill => {
    const wanted = checks.find((check) => check.skill === skill)?.wanted ?? null;
    return { skill, title, wanted };
  });
  const placeOf = ({ skill }: ObservableSkill) => take.develops.indexOf(skill) + 1 || all.length + 1;
  return all.toSorted((a, b) => placeOf(a) - placeOf(b));
}

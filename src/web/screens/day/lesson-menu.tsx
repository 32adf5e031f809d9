import { useState } from 'react';
import type { DayLesson } from '#contract';
import type { PlainDate } from '#core';
import { Button } from '../../components/button.tsx';
import { MenuButton, type MenuChoice } from '../../components/menu.tsx';
import { useCommand } from '../../hooks/use-command.ts';
import { words } from '../../words/index.ts';
import { ChangeLesson, type LessonChange } from './change-lesson.tsx';

/** What else can be done with a lesson of the day. */
export function LessonMenu({ lesson, date }: { readonly lesson: DayLesson; readonly date: PlainDate }) {
  const [change, setChange] = useState<LessonChange | null>(null);
  const send = useCommand();
  const off = lesson.status === 'cancelled' || lesson.status === 'missed';
  const actions: readonly MenuChoice[] = off
    ? [{ label: words.day.restore, act: () => void send({ type: 'lesson.restore', lesson: lesson.id }) }]
    : [
        { label: words.day.cancel, act: () => setChange('cancel') },
        { label: words.day.miss, act: () => setChange('miss') },
        { label: words.day.move, act: () => setChange('move') },
      ];
  if (lesson.status === 'taught') return null;
  return (
    <>
      <MenuButton label={words.day.changeOf(lesson.learner.name)} choices={actions}>
        <Button kind="plain" className="day-touch" aria-label={words.day.changeOf(lesson.learner.name)}>
          {words.day.change}
        </Button>
      </MenuButton>
      {change && <ChangeLesson lesson={lesson} date={date} change={change} onClose={() => setChange(null)} />}
    </>
  );
}

import { useState } from 'react';
import { Menu, MenuItem, MenuTrigger, Popover } from 'react-aria-components';
import type { DayLesson } from '#contract';
import type { PlainDate } from '#core';
import { Button } from '../../components/button.tsx';
import { useCommand } from '../../hooks/use-command.ts';
import { words } from '../../words/index.ts';
import { ChangeLesson, type LessonChange } from './change-lesson.tsx';
import './lesson-menu.css';

/** What else can be done with a lesson of the day. */
export function LessonMenu({ lesson, date }: { readonly lesson: DayLesson; readonly date: PlainDate }) {
  const [change, setChange] = useState<LessonChange | null>(null);
  const send = useCommand();
  const off = lesson.status === 'cancelled' || lesson.status === 'missed';
  const actions: readonly { readonly label: string; readonly act: () => void }[] = off
    ? [{ label: words.day.restore, act: () => void send({ type: 'lesson.restore', lesson: lesson.id }) }]
    : [
        { label: words.day.cancel, act: () => setChange('cancel') },
        { label: words.day.miss, act: () => setChange('miss') },
        { label: words.day.move, act: () => setChange('move') },
      ];
  if (lesson.status === 'taught') return null;
  return (
    <>
      <MenuTrigger>
        <Button kind="plain" className="day-touch" aria-label={words.day.changeOf(lesson.learner.name)}>
          {words.day.change}
        </Button>
        <Popover className="day-menu" placement="bottom end">
          <Menu aria-label={words.day.changeOf(lesson.learner.name)}>
            {actions.map(({ label, act }) => (
              <MenuItem key={label} className="day-menu-item" onAction={act}>
                {label}
              </MenuItem>
            ))}
          </Menu>
        </Popover>
      </MenuTrigger>
      {change && <ChangeLesson lesson={lesson} date={date} change={change} onClose={() => setChange(null)} />}
    </>
  );
}

// Something on hand, taken into the lesson on the spot.

import { useState } from 'react';
import { Radio, RadioGroup } from 'react-aria-components';
import type { LessonView } from '#contract';
import { sentenceCase } from '../../app/sentence-case.ts';
import { Button } from '../../components/button.tsx';
import { Dialog } from '../../components/dialog.tsx';
import { useCommand } from '../../hooks/use-command.ts';
import { useFormat } from '../../hooks/use-format.ts';
import { newId } from '../../new-id.ts';
import { words } from '../../words/index.ts';
import './take-up.css';

type OnHand = LessonView['onHand'][number];
const keyOf = (thing: OnHand) => `${thing.courseUnit} ${thing.activity}`;

export interface TakeUpProps {
  readonly lesson: LessonView;
  readonly onClose: () => void;
  readonly onTaken: (segment: LessonView['segments'][number]['id']) => void;
}

export function TakeUp({ lesson, onClose, onTaken }: TakeUpProps) {
  const send = useCommand();
  const format = useFormat();
  const [chosen, setChosen] = useState(() => lesson.onHand[0] ?? null);
  const [busy, setBusy] = useState(false);
  const take = async () => {
    if (!chosen) return;
    const { courseUnit, activity, minutes } = chosen;
    const segment = newId('segment');
    setBusy(true);
    const done = await send({
      type: 'segment.add',
      lesson: lesson.id,
      segment,
      courseUnit,
      activity,
      minutes,
    });
    setBusy(false);
    if (!done) return;
    onTaken(segment);
    onClose();
  };
  return (
    <Dialog title={words.lesson.takeUpTitle} open onClose={onClose}>
      {lesson.onHand.length === 0 ? (
        <p>{words.lesson.takeUpNone}</p>
      ) : (
        <>
          <p className="soft">{words.lesson.takeUpHelp}</p>
          <RadioGroup
            className="take-up"
            aria-label={words.lesson.takeUpWhat}
            value={chosen ? keyOf(chosen) : null}
            onChange={(key) => setChosen(lesson.onHand.find((thing) => keyOf(thing) === key) ?? null)}
          >
            {lesson.onHand.map((thing) => (
              <Radio key={keyOf(thing)} value={keyOf(thing)} className="take-up-choice">
                <span className="take-up-title">{sentenceCase(thing.title)}</span>
                <span className="soft">
                  {words.lesson.takeUpKind[thing.kind]} · {format.minutes(thing.minutes)}
                </span>
              </Radio>
            ))}
          </RadioGroup>
          <div className="take-up-actions">
            <Button kind="primary" large isDisabled={!chosen} pending={busy} onPress={() => void take()}>
              {words.lesson.takeUpDo}
            </Button>
            <Button large onPress={onClose}>
              {words.lesson.leave}
            </Button>
          </div>
        </>
      )}
    </Dialog>
  );
}

// Whose take it is: a student's own, or that of one member of a group, who is asked for first.

import { type ReactNode, useState } from 'react';
import type { LearnerView } from '#contract';
import { Button } from '../components/button.tsx';
import { Dialog } from '../components/dialog.tsx';
import { words } from '../words/index.ts';
import type { TakeOf } from './take-for-lesson.ts';

const say = words.takes;

export interface WhoseTakeProps {
  readonly learner: LearnerView;
  readonly onClose: () => void;
  readonly children: (who: TakeOf) => ReactNode;
}

export function WhoseTake({ learner, onClose, children }: WhoseTakeProps) {
  const { members, student, name } = learner;
  const [who, setWho] = useState<TakeOf | null>(student === null ? null : { student, name });
  if (who !== null) return children(who);
  return (
    <Dialog title={say.record} open onClose={onClose}>
      <p>{say.group}</p>
      <ul className="take-deeds">
        {members.map((member) => (
          <li key={member.student}>
            <Button large onPress={() => setWho(member)}>
              {member.name}
            </Button>
          </li>
        ))}
      </ul>
    </Dialog>
  );
}

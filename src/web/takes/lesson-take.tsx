// A take recorded in a lesson, for the activity in hand; in a group, of one of its members.

import { useState } from 'react';
import type { LessonSegmentView, LessonView, MaterialView } from '#contract';
import { findInstrument, fitBacking, parseBackingMaterial } from '#music';
import { Button } from '../components/button.tsx';
import { Dialog } from '../components/dialog.tsx';
import { seedOf } from '../screens/practice/practice-materials.ts';
import { words } from '../words/index.ts';
import { RecordTake } from './record-take.tsx';

const say = words.takes;

export interface LessonTakeProps {
  readonly lesson: LessonView;
  readonly segment: LessonSegmentView;
  readonly onClose: () => void;
}

export function LessonTake({ lesson, segment, onClose }: LessonTakeProps) {
  const { members, student, name, instrument } = lesson.learner;
  const [who, setWho] = useState(student === null ? null : { student, name });
  if (who === null)
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
  const { courseUnit, activity } = segment;
  return (
    <RecordTake
      of={{
        ...who,
        course: lesson.course,
        lesson: lesson.id,
        activity: courseUnit === null || activity === null ? null : { courseUnit, activity },
        title: segment.title,
        instrument,
        materials: segment.materials.map((material) => fitSpec(lesson, segment, material)),
        skills: segment.skills.map(({ skill, title, wanted }) => ({ skill, title, wanted })),
      }}
      onClose={onClose}
    />
  );
}

/** The spec of a material; a backing track in the key in which the lesson plays it. */
function fitSpec(lesson: LessonView, segment: LessonSegmentView, material: MaterialView): unknown {
  const read = parseBackingMaterial(material.spec);
  const { instrument, stage, age } = lesson.learner;
  const plays = findInstrument(instrument);
  if (!read.ok || plays === null) return material.spec;
  return fitBacking(read.value, { instrument: plays, stage, age, seed: seedOf(lesson, segment, material) });
}

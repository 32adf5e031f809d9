// What is done on the score: the menu, the small forms, and the keys' short ways. One place sends the commands.

import { type ReactNode, useCallback, useState } from 'react';
import { useLocation } from 'wouter';
import type { Command, CourseView } from '#contract';
import { words } from '../words/index.ts';
import { isMovable, isSettable, type Writing } from './describe.ts';
import {
  LessonGoneForm,
  LessonTimeForm,
  MinutesForm,
  MoveSegmentForm,
  SetAsideForm,
  WhyHere,
} from './score-dialogs.tsx';
import type { ScoreItem } from './score-items.ts';
import { type ScoreDeed, ScoreMenu } from './score-menu.tsx';
import { useCourseCommand } from './use-course-command.ts';

const say = words.score;

export interface ScoreActions {
  /** Opens the menu of an item beside an element. */
  readonly open: (item: ScoreItem, anchor: Element) => void;
  /** Pins or unpins, sets aside; the answer is a sentence when it cannot be done. */
  readonly togglePin: (item: ScoreItem) => string | null;
  readonly setAside: (item: ScoreItem) => string | null;
  /** Resolves when the answer is on screen, or there is none. */
  readonly moveSegment: (item: ScoreItem, lesson: string) => Promise<void>;
  readonly lookedAt: () => void;
  /** The open menu or form, to be put anywhere on the page. */
  readonly layer: ReactNode;
}

interface Open {
  readonly item: ScoreItem;
  readonly anchor: Element;
  readonly deed: ScoreDeed | null;
}

/** The deeds of one course's score; commands say the revision on screen. `refocus` brings the focus back to an item. */
export function useScoreActions(
  course: CourseView,
  writing: Writing,
  refocus: (id: string) => void,
): ScoreActions {
  const send = useCourseCommand(course);
  const [, navigate] = useLocation();
  const [opened, setOpened] = useState<Open | null>(null);
  const { id, revision } = course;
  const seen = revision;

  const close = () => {
    const id = opened?.item.id;
    setOpened(null);
    // A closing form gives the focus back a frame later, to a menu that is gone; the score takes it after that.
    if (id !== undefined) requestAnimationFrame(() => requestAnimationFrame(() => refocus(id)));
  };
  const put = useCallback((command: Command) => void send(command), [send]);
  const sendAndClose = (command: Command) => {
    close();
    put(command);
  };

  const togglePin = (item: ScoreItem): string | null => {
    if (item.kind !== 'segment' || !isMovable(item.segment, item.bar)) return say.cannotPin;
    put({ type: 'segment.pin', seen, segment: item.segment.id, pinned: !item.segment.pinned });
    return null;
  };
  const setAside = (item: ScoreItem): string | null => {
    if (item.kind !== 'segment' || !isSettable(item.segment, item.bar)) return say.cannotSetAside;
    const { courseUnit, activity } = item.segment;
    if (courseUnit === null || activity === null) return say.cannotSetAside;
    put({ type: 'activity.setAside', seen, course: id, courseUnit, activity, backFrom: null });
    return null;
  };
  const moveSegment = async (item: ScoreItem, lesson: string) => {
    const target = course.bars.find((bar) => bar.kind === 'lesson' && bar.lesson === lesson);
    if (item.kind !== 'segment' || target?.kind !== 'lesson' || target.lesson === item.bar.lesson) return;
    await send({
      type: 'segment.move',
      seen,
      segment: item.segment.id,
      lesson: target.lesson,
      minutes: null,
    });
  };

  const onDeed = (deed: ScoreDeed) => {
    if (!opened) return;
    const { item } = opened;
    if (item.kind === 'rest') return;
    const { lesson } = item.bar;
    switch (deed) {
      case 'pin':
      case 'unpin':
        togglePin(item);
        return close();
      case 'setAside':
        setAside(item);
        return close();
      case 'open':
        return navigate(`/lesson/${lesson}`);
      case 'keepFree':
      case 'use':
        return sendAndClose({ type: 'lesson.bar', lesson, barred: deed === 'keepFree' });
      case 'restore':
        return sendAndClose({ type: 'lesson.restore', lesson });
      default:
        setOpened({ ...opened, deed });
    }
  };

  return {
    open: (item, anchor) => {
      if (item.kind !== 'rest') setOpened({ item, anchor, deed: null });
    },
    togglePin,
    setAside,
    moveSegment,
    lookedAt: () => put({ type: 'course.looked', course: id }),
    layer: opened && (
      <Layer
        opened={opened}
        course={course}
        writing={writing}
        onDeed={onDeed}
        onSend={sendAndClose}
        onClose={close}
        onMenuClose={() => setOpened((now) => (now?.deed === null ? null : now))}
      />
    ),
  };
}

function Layer({
  opened: { item, anchor, deed },
  course,
  writing,
  onDeed,
  onSend,
  onClose,
  onMenuClose,
}: {
  readonly opened: Open;
  readonly course: CourseView;
  readonly writing: Writing;
  readonly onDeed: (deed: ScoreDeed) => void;
  readonly onSend: (command: Command) => void;
  readonly onClose: () => void;
  readonly onMenuClose: () => void;
}) {
  if (item.kind === 'rest') return null;
  const ending = { onSend, onClose };
  const { bar } = item;
  if (deed === null)
    return (
      <ScoreMenu item={item} today={course.today} anchor={anchor} onDeed={onDeed} onClose={onMenuClose} />
    );
  if (deed === 'cancel' || deed === 'miss')
    return <LessonGoneForm bar={bar} how={deed} writing={writing} {...ending} />;
  if (deed === 'move') return <LessonTimeForm bar={bar} writing={writing} {...ending} />;
  if (item.kind !== 'segment') return null;
  const { segment, description } = item;
  if (deed === 'moveTo')
    return <MoveSegmentForm course={course} segment={segment} bar={bar} writing={writing} {...ending} />;
  if (deed === 'minutes') return <MinutesForm course={course} segment={segment} bar={bar} {...ending} />;
  if (deed === 'setAsideUntil') return <SetAsideForm course={course} segment={segment} {...ending} />;
  return (
    <WhyHere
      title={description.title}
      facts={description.facts}
      reasons={description.reasons}
      onClose={onClose}
    />
  );
}

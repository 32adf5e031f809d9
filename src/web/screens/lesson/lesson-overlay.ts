// What has been done here and is still on its way, laid over the lesson as the studio last told it: a tap shows at
// once, a refresh that overtakes it does not take it back, and a dead server changes nothing on screen.

import type { CommandOf, LessonView } from '#contract';
import { fieldOf, type OutboxCommand } from '../../app/outbox-queue.ts';
import { membersAsked } from './members-asked.ts';

export interface OnItsWay {
  readonly command: OutboxCommand;
  /** When everything sent had arrived (milliseconds of the epoch), or null while it has not. */
  readonly arrived: number | null;
}

/** The list with one more command; an earlier one that it replaces goes. */
export function addOnItsWay(list: readonly OnItsWay[], command: OutboxCommand): readonly OnItsWay[] {
  const place = placeOf(command);
  const earlier = list.find((e) => placeOf(e.command) === place)?.command;
  const joined =
    command.type === 'segment.log' && earlier?.type === 'segment.log' ? joinLogs(earlier, command) : command;
  return [...list.filter((e) => placeOf(e.command) !== place), { command: joined, arrived: null }];
}

/** The list once the outbox is empty. */
export function markArrived(list: readonly OnItsWay[], now: number): readonly OnItsWay[] {
  return list.some((e) => e.arrived === null) ? list.map((e) => ({ ...e, arrived: e.arrived ?? now })) : list;
}

/** The list without what a view told at `told` has taken in. */
export function dropTold(list: readonly OnItsWay[], told: number): readonly OnItsWay[] {
  const rest = list.filter((e) => e.arrived === null || e.arrived >= told);
  return rest.length === list.length ? list : rest;
}

/** What a command is about: the field of a write or log, else the skill in the lesson, the take, or the lesson. */
function placeOf(command: OutboxCommand): string {
  if (command.type === 'observe') return `${command.lesson ?? ''} ${command.skill}`;
  if (command.type === 'take.keep') return command.take.id;
  return fieldOf(command) ?? `${command.type === 'lesson.close' ? command.lesson : ''} close`;
}

/** Nothing said of seconds or outcome leaves what was said before. */
function joinLogs(
  first: CommandOf<'segment.log'>,
  second: CommandOf<'segment.log'>,
): CommandOf<'segment.log'> {
  return {
    ...second,
    seconds: second.seconds ?? first.seconds,
    outcome: second.outcome ?? first.outcome,
    share: second.outcome === null ? first.share : second.share,
  };
}

/** The lesson as it will be once the commands have arrived. */
export function overlayLesson(view: LessonView, list: readonly OnItsWay[]): LessonView {
  return list.reduce((lesson, { command }) => overlayOne(lesson, command), view);
}

function overlayOne(view: LessonView, command: OutboxCommand): LessonView {
  switch (command.type) {
    case 'lesson.write':
      return command.lesson === view.id ? { ...view, [command.field]: command.text } : view;
    case 'segment.write':
      return changeSegment(view, command.segment, { note: command.text });
    case 'segment.log': {
      const { seconds, outcome } = command;
      return changeSegment(view, command.segment, {
        ...(outcome === null ? {} : { outcome }),
        ...(seconds === null ? {} : { seconds }),
      });
    }
    case 'lesson.absent':
      if (command.lesson !== view.id) return view;
      return {
        ...view,
        absent: membersAsked(view).filter(({ student }) => command.absent.includes(student)),
      };
    case 'observe':
      if (command.lesson !== view.id) return view;
      return {
        ...view,
        segments: view.segments.map((s) => ({
          ...s,
          skills: s.skills.map((k) =>
            k.skill === command.skill
              ? {
                  ...k,
                  level: command.level,
                  here: { observation: command.observation, level: command.level },
                }
              : k,
          ),
        })),
      };
    case 'lesson.close':
      return command.lesson === view.id ? { ...view, status: 'taught' } : view;
    case 'take.keep':
      return view;
  }
}

function changeSegment(
  view: LessonView,
  id: string,
  change: Partial<LessonView['segments'][number]>,
): LessonView {
  return { ...view, segments: view.segments.map((s) => (s.id === id ? { ...s, ...change } : s)) };
}

// What has been done here and is still on its way, laid over the lesson as the studio last told it, so that a tap shows
// at once, a refresh that overtakes it does not take it back, and a dead server changes nothing on screen.

import type { Command, LessonView } from '#contract';

/** The lesson as it will be once the commands have arrived. Commands that do not concern it change nothing. */
export function overlayLesson(view: LessonView, pending: readonly Command[]): LessonView {
  return pending.reduce(overlayOne, view);
}

function overlayOne(view: LessonView, command: Command): LessonView {
  switch (command.type) {
    case 'lesson.write':
      return command.lesson === view.id ? { ...view, [command.field]: command.text } : view;
    case 'segment.write':
      return changeSegment(view, command.segment, { note: command.text });
    case 'segment.log': {
      const { seconds, outcome, share } = command;
      const covered = outcome === 'partly' ? share : outcome === 'finished' ? 1 : null;
      return changeSegment(view, command.segment, {
        outcome,
        covered,
        ...(seconds === null ? {} : { seconds }),
      });
    }
    case 'observe':
      if (command.lesson !== view.id) return view;
      return changeSkill(view, command.skill, {
        level: command.level,
        here: { observation: command.observation, level: command.level },
      });
    case 'observe.remove':
      return {
        ...view,
        segments: view.segments.map((s) => ({
          ...s,
          skills: s.skills.map((k) =>
            k.here?.observation === command.observation ? { ...k, here: null } : k,
          ),
        })),
      };
    case 'lesson.close':
      return command.lesson === view.id ? { ...view, status: 'taught' } : view;
    default:
      return view;
  }
}

function changeSegment(
  view: LessonView,
  id: string,
  change: Partial<LessonView['segments'][number]>,
): LessonView {
  if (!view.segments.some((s) => s.id === id)) return view;
  return { ...view, segments: view.segments.map((s) => (s.id === id ? { ...s, ...change } : s)) };
}

function changeSkill(
  view: LessonView,
  skill: string,
  change: Partial<LessonView['segments'][number]['skills'][number]>,
): LessonView {
  return {
    ...view,
    segments: view.segments.map((s) => ({
      ...s,
      skills: s.skills.map((k) => (k.skill === skill ? { ...k, ...change } : k)),
    })),
  };
}

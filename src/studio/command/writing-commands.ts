// Text as it is typed in a lesson. It comes from a queue that outlives dead networks, so it is never refused for being
// late: what two windows typed is put together, and only a lesson that is gone makes it impossible, with the text handed
// back.

import { err, mergeTexts, ok } from '#core';
import { formatDay } from '#planning';
import { type Desk, type Handler, takeCourse, touchCourse } from './desk.ts';
import type { Refusal } from './fault.ts';

const textGoneMost = 2000;

/** The lesson or segment is gone: the text comes back in the message, so that it is not lost. */
const gone = (what: string, text: string): Refusal =>
  err({
    kind: 'NotFound',
    message: `This ${what} no longer exists: it was removed, or erased with its student. So your text could not be kept in it. Copy it from here: ${text.slice(0, textGoneMost)}`,
    details: [text],
  });

/** The text to keep; the reply tells what became of the one that was sent. */
function putTogether(desk: Desk, texts: Parameters<typeof mergeTexts>[0]): ReturnType<typeof mergeTexts> {
  const merged = mergeTexts(texts);
  const { mine, theirs } = texts;
  desk.wrote = merged.text === mine ? { text: mine } : { text: merged.text, typed: mine, over: theirs };
  return merged;
}

export const writeLesson: Handler<'lesson.write'> = async (desk, { lesson: id, field, base, text }) => {
  const lesson = await desk.tx.get('lesson', id);
  if (lesson === null) return gone('lesson', text);
  const records = await takeCourse(desk, lesson.course);
  const merged = putTogether(desk, { base, theirs: lesson[field], mine: text });
  if (merged.text !== lesson[field]) {
    await desk.tx.put('lesson', { ...lesson, [field]: merged.text });
    touchCourse(desk, lesson.course, { replan: false });
  }
  if (merged.bothKept) tellBothKept(desk, field === 'note' ? 'note' : 'practice');
  const what = field === 'note' ? 'the note' : 'the practice';
  return ok(`Wrote ${what} of ${records?.learner.name ?? 'a'}’s lesson of ${formatDay(lesson.date)}`);
};

export const writeSegment: Handler<'segment.write'> = async (desk, { segment: id, base, text }) => {
  const segment = await desk.tx.get('segment', id);
  if (segment === null) return gone('part of the lesson', text);
  const records = await takeCourse(desk, segment.course);
  const merged = putTogether(desk, { base, theirs: segment.note, mine: text });
  if (merged.text !== segment.note) {
    await desk.tx.put('segment', { ...segment, note: merged.text });
    touchCourse(desk, segment.course, { replan: false });
  }
  if (merged.bothKept) tellBothKept(desk, 'note');
  return ok(`Wrote a note on “${segment.title}” for ${records?.learner.name ?? 'a student'}`);
};

const tellBothKept = (desk: Desk, what: string) =>
  desk.notices.push(
    `Someone else had written here too: both versions of the ${what} are kept, one above the other.`,
  );

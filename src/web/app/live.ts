// Changes made elsewhere (another window, the command line) reach this window by server-sent events. While something
// of ours is still unsaved nothing is asked for again, so that no text is replaced under the hand that types it.

import { type Fields, isFields } from '#core';
import { isOwnChange } from './own-changes.ts';
import { queryClient } from './query-client.ts';
import type { ViewName } from './query-keys.ts';
import { heedTold } from './readings.ts';
import { watchSilence } from './silence.ts';
import { afterMilliseconds, theOutbox } from './the-outbox.ts';

/** The server says something every 25 s, if only that nothing happened; twice that and a little is too long. */
const longestSilence = 60_000;

interface LiveEvent {
  readonly change: string;
  readonly courses: readonly string[];
  /** Something was erased: what it was is not told, so all that is shown is asked for again. */
  readonly erased: boolean;
}

function parseFields(text: string): Fields {
  try {
    const value: unknown = JSON.parse(text);
    return isFields(value) ? value : {};
  } catch {
    return {};
  }
}

function readLiveEvent({ change, courses, erased }: Fields): LiveEvent | null {
  if (change === undefined) return null;
  return {
    change: String(change),
    courses: Array.isArray(courses) ? courses.map(String) : [],
    erased: erased === true,
  };
}

const perCourse: readonly string[] = ['lesson', 'courseUnit', 'student'] satisfies ViewName[];

function refresh(courses: ReadonlySet<string>): void {
  void queryClient.invalidateQueries({
    predicate: ({ queryKey: [name, id], state }) => {
      if (name === 'course') return courses.has(String(id));
      // A lesson knows its course; another course's change does not concern it.
      if (perCourse.includes(String(name)) && courses.size > 0) {
        const data: unknown = state.data;
        if (typeof data === 'object' && data !== null && 'course' in data)
          return courses.has(String(data.course));
      }
      return true;
    },
  });
}

/**
 * Opens the live channel; the browser opens it again by itself. A window that is not looked at lets go of it, because a
 * browser has six connections to one address and no more: the sixth window would wait for ever. Returns how to close it.
 */
export function startLive(): () => void {
  let source: EventSource | null = null;
  let waiting = new Set<string>();
  let due = false;
  let all = false;
  let isUnsure = false;
  const whenSaved = () => {
    if (!due || theOutbox.status().pending > 0) return;
    due = false;
    const courses = waiting;
    waiting = new Set();
    if (all) {
      const told = queryClient.invalidateQueries();
      if (isUnsure) void theOutbox.forgetKnown(told);
    } else refresh(courses);
    all = false;
    isUnsure = false;
  };
  const hear = (event: MessageEvent<string>) => {
    const fields = parseFields(event.data);
    heedTold(fields['told']);
    const heard = readLiveEvent(fields);
    if (!heard || isOwnChange(heard.change)) return;
    for (const course of heard.courses) waiting.add(course);
    due = true;
    all ||= heard.erased;
    whenSaved();
  };
  let wasLost = false;
  const close = () => {
    silence.stop();
    source?.close();
    source = null;
  };
  const openAgain = () => {
    if (source === null) return;
    wasLost = true;
    close();
    open();
  };
  const silence = watchSilence({ after: afterMilliseconds, longestMilliseconds: longestSilence }, openAgain);
  const open = () => {
    silence.heard();
    source = new EventSource('/api/live');
    source.addEventListener('message', hear);
    source.addEventListener('change', hear);
    for (const event of ['hello', 'quiet', 'change', 'progress'])
      source.addEventListener(event, silence.heard);
    source.addEventListener('error', () => {
      wasLost = true;
    });
    source.addEventListener('open', silence.heard);
    source.addEventListener('hello', (event: MessageEvent<string>) => {
      // What happened before the channel stood was not told. After one that was lost it may even be another studio: an older
      // backup may have been put in its place.
      if (heedTold(parseFields(event.data)['told']) || wasLost) {
        due = true;
        all = true;
        isUnsure ||= wasLost;
      }
      wasLost = false;
      void theOutbox.flush().then(whenSaved);
    });
  };
  const tend = () => {
    if (document.visibilityState === 'hidden') {
      wasLost ||= source !== null;
      close();
    } else if (source === null) open();
  };
  document.addEventListener('visibilitychange', tend);
  tend();
  // A studio that was out of reach may have this line dead still.
  let wasWaiting = false;
  const unsubscribe = theOutbox.subscribe(() => {
    whenSaved();
    const isWaiting = theOutbox.status().state === 'waiting';
    if (wasWaiting && !isWaiting) openAgain();
    wasWaiting = isWaiting;
  });
  return () => {
    document.removeEventListener('visibilitychange', tend);
    unsubscribe();
    close();
  };
}

// Windows, browsers and a studio in which everything that may come between them does: answers that are lost or late, a
// server that is away, pages that die and come again. Nothing happens by itself; each step is asked for.

import type { CommandReply } from '#contract';
import { err, type Id, mergeTexts, ok, type Result } from '#core';
import type { ApiFault } from '../../app/api.ts';
import { createOutbox, type Outbox } from '../../app/outbox.ts';
import type { OutboxCommand, OutboxEntry } from '../../app/outbox-queue.ts';
import type { OutboxStore } from '../../app/outbox-store.ts';
import { createKeptField, type KeptField } from './kept-field.ts';

const lesson = 'lesson:one' as Id<'lesson'>;
const field = `${lesson} note`;
const offline: ApiFault = { kind: 'Broken', message: 'not reached', offline: true };

interface Told {
  readonly field: string;
  readonly stored: string;
  readonly revision: number;
}

/** The studio: each change counts once, is answered alike, and raises the revision where it changed something. */
export function createStudio() {
  let text = '';
  let revision = 1;
  const replies = new Map<string, CommandReply>();
  return {
    isAway: false,
    text: () => text,
    tell: (): Told => ({ field, stored: text, revision }),
    take(change: Id<'change'>, command: OutboxCommand): CommandReply {
      const before = replies.get(change);
      if (before) return before;
      if (command.type !== 'lesson.write') throw new Error('only notes are written here');
      const merged = mergeTexts({ base: command.base, theirs: text, mine: command.text });
      const wrote =
        merged.text === command.text
          ? { text: command.text }
          : { text: merged.text, typed: command.text, over: text };
      if (merged.text !== text) revision++;
      text = merged.text;
      const courses = [{ course: 'course:one' as Id<'course'>, revision, moved: 0 }];
      const reply: CommandReply = { change, label: 'wrote', courses, notices: [], wrote };
      replies.set(change, reply);
      return reply;
    },
  };
}
type Studio = ReturnType<typeof createStudio>;

/** What a browser keeps for its windows. */
export function createBrowser() {
  const kept = new Map<string, { readonly entry: OutboxEntry; readonly page: string }>();
  const open = new Map<string, (name: string) => void>();
  return {
    open(page: string): OutboxStore {
      open.set(page, () => {});
      const takeOver = (isChosen: (owner: string) => boolean): readonly OutboxEntry[] => {
        const chosen = [...kept.values()]
          .filter(({ page: owner }) => isChosen(owner))
          .map(({ entry }) => entry);
        for (const entry of chosen) kept.set(entry.id, { entry, page });
        return chosen.sort((a, b) => a.order - b.order);
      };
      return {
        async adopt(take) {
          open.set(page, (name) => {
            const left = takeOver((owner) => owner === name);
            if (left.length > 0) take(left);
          });
          take(takeOver((owner) => !open.has(owner)));
        },
        async put(entry) {
          if (open.has(page)) kept.set(entry.id, { entry, page });
        },
        async settle(id, changed) {
          if (!open.has(page)) return;
          kept.delete(id);
          for (const entry of changed) kept.set(entry.id, { entry, page });
        },
      };
    },
    close(page: string): void {
      open.delete(page);
      for (const tell of open.values()) tell(page);
    },
  };
}
type Browser = ReturnType<typeof createBrowser>;

interface Request {
  readonly change: Id<'change'>;
  readonly command: OutboxCommand;
  readonly answer: (reply: Result<CommandReply, ApiFault>) => void;
  reply: CommandReply | null;
}

let minted = 0;

/** One window at the lesson. `typed` holds each thing that was typed at one go, as far as it came. */
export function createWindow(studio: Studio, browser: Browser) {
  let page = '';
  let outbox: Outbox;
  let kept: KeptField | null = null;
  let told: Told | null = null;
  let asked: Told | null = null;
  let requests: Request[] = [];
  let timers: (() => void)[] = [];
  let go: { readonly text: string; at: number; caret: number } | null = null;
  const typed: string[] = [];

  const look = () => {
    if (told) kept?.look(told);
  };
  const endGo = () => {
    if (go && go.at > 0) typed.push(go.text.slice(0, go.at).trim());
    go = null;
  };
  const insert = (what: string) => {
    if (!go || !kept) return;
    const shown = kept.value();
    kept.change(shown.slice(0, go.caret) + what + shown.slice(go.caret));
    go.caret += what.length;
  };

  return {
    typed: () => (go && go.at > 0 ? [...typed, go.text.slice(0, go.at).trim()] : typed),
    shown: () => kept?.value() ?? null,
    isIdle: () => outbox.status().pending === 0,
    open(): void {
      page = `page ${++minted}`;
      requests = [];
      timers = [];
      [kept, told, asked] = [null, null, null];
      const mine = requests;
      const clocks = timers;
      outbox = createOutbox({
        store: browser.open(page),
        newChangeId: () => `change:${++minted}` as Id<'change'>,
        restMilliseconds: 1,
        longestMilliseconds: 2,
        after(_, callback) {
          clocks.push(callback);
          return () => void (clocks.includes(callback) && clocks.splice(clocks.indexOf(callback), 1));
        },
        send: (change, command) =>
          new Promise((answer) => void mine.push({ change, command, answer, reply: null })),
      });
      outbox.subscribe(look);
      void outbox.start();
    },
    /** Without a word, as when the battery ends; what was asked may still arrive. */
    die(): void {
      endGo();
      kept = null;
      browser.close(page);
    },
    /** Begins something new to write on a line of its own, if the last thing is done. */
    begin(text: string, where: 'above' | 'below'): void {
      if (!kept || go) return;
      kept.take();
      const shown = kept.value();
      go = { text, at: 0, caret: where === 'above' ? 0 : shown.length };
      if (shown === '') return;
      insert('\n');
      if (where === 'above') go.caret = 0;
    },
    type(letters: number): void {
      if (!go) return;
      for (let n = 0; n < letters && go.at < go.text.length; n++) insert(go.text.charAt(go.at++));
    },
    leave(): void {
      endGo();
      kept?.leave();
    },
    rest(): void {
      for (const callback of timers.splice(0)) callback();
    },
    /** The studio takes what was sent, unless it is away. */
    arrive(): void {
      for (const request of requests.filter((r) => r.reply === null)) {
        if (studio.isAway) continue;
        request.reply = studio.take(request.change, request.command);
      }
    },
    answer(isLost: boolean): void {
      for (const { answer, reply } of requests.splice(0))
        answer(isLost || reply === null ? err(offline) : ok(reply));
    },
    /** Asks the studio for the note; what it tells is on its way until `hear`. */
    ask(): void {
      if (!studio.isAway) asked = studio.tell();
    },
    hear(): void {
      if (!asked) return;
      told = asked;
      if (kept) look();
      else {
        kept = createKeptField(told, {
          outbox,
          redraw: () => {},
          post: (base, text) => outbox.post({ type: 'lesson.write', lesson, field: 'note', base, text }),
        });
        kept.listen();
      }
    },
  };
}
export type SimulatedWindow = ReturnType<typeof createWindow>;

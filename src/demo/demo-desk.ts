// What the demo's scenes share: a store, seeded chance, and a clock that is moved from day to day, so that history comes
// about through the same commands and rules as a teacher's own.

import type { Command, CommandReply } from '#contract';
import {
  assert,
  createFixedClock,
  createId,
  createSeededRandom,
  type Id,
  type PlainDate,
  type PlainTime,
  type Random,
} from '#core';
import { carryOut, type Outside, type Store } from '#studio';

export interface DemoDesk {
  readonly store: Store;
  readonly random: Random;
  /** Carries out a command as if it were sent on this day at this time. */
  send(day: PlainDate, command: Command, time?: string): Promise<CommandReply>;
  /** A new id. */
  mint<P extends string>(prefix: P): Id<P>;
}

/** `outside` gives the planner and the starter library; its clock is not asked. */
export function createDemoDesk(store: Store, outside: Outside, seed: number): DemoDesk {
  const random = createSeededRandom(seed);
  const mint = <P extends string>(prefix: P): Id<P> => createId(prefix, random);
  return {
    store,
    random,
    mint,
    async send(day, command, time = '08:00') {
      const clock = createFixedClock(day, time as PlainTime);
      const done = await carryOut(store, { id: mint('change'), command }, { ...outside, random, clock });
      assert(done.ok, `the demo's ${command.type} is carried out${done.ok ? '' : `: ${done.error.message}`}`);
      return done.value;
    },
  };
}

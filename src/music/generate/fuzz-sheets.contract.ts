// Random specs for random students: every sheet sound, in range, well spelled and the same twice; every refusal reasoned.

import { chooseOne, createSeededRandom, present, type Random, randomInteger, stages } from '#core';
import { listInstruments } from '../instrument/instrument.ts';
import type { SheetFor } from '../shape/student-shape.ts';
import { type MaterialKind, materialKinds, parseMaterialSpec } from '../spec/material-spec.ts';
import { createSheet } from './create-sheet.ts';
import { sheetFaults } from './judge-sheet.contract.ts';
import { randomSpec } from './random-spec.contract.ts';

export interface KindReport {
  made: number;
  refused: number;
  /** How often each kind of refusal, and the last message with its seed. */
  readonly reasons: Map<string, { readonly times: number; readonly example: string }>;
}

export interface SheetFuzzReport {
  readonly byKind: ReadonlyMap<MaterialKind, KindReport>;
  /** Each with the spec and student that brought it about. */
  readonly failures: readonly string[];
}

function randomStudent(random: Random): SheetFor {
  const instrument = chooseOne(random, listInstruments());
  const stage = chooseOne(random, stages);
  const age = random.next() < 0.2 ? null : randomInteger(random, 5, 80);
  return { instrument, stage, age, seed: randomInteger(random, -2_000_000_000, 2_000_000_000) };
}

/** One case, by its own seed; what went wrong, or null. */
function tryOne(seed: number, byKind: Map<MaterialKind, KindReport>, checksTwice: boolean): string | null {
  const random = createSeededRandom(seed);
  const typed = randomSpec(random);
  const student = randomStudent(random);
  const about = `seed ${seed}: ${student.instrument.id} ${student.stage} ${student.age} ${student.seed} ${JSON.stringify(typed)}`;
  try {
    const spec = parseMaterialSpec(typed);
    if (!spec.ok) return `${about}\n  the spec is not read: ${spec.error.message}`;
    const report = present(byKind.get(spec.value.kind), 'a report for every kind');
    const sheet = createSheet(spec.value, student);
    if (!sheet.ok) {
      report.refused++;
      const { kind, message } = sheet.error;
      const times = (report.reasons.get(kind)?.times ?? 0) + 1;
      report.reasons.set(kind, { times, example: `seed ${seed}: ${message}` });
      return sheet.error.message.length > 20 ? null : `${about}\n  refused without a reason`;
    }
    report.made++;
    const [fault] = sheetFaults(sheet.value, student);
    if (fault !== undefined) return `${about}\n  ${fault}`;
    if (!checksTwice) return null;
    const again = createSheet(spec.value, student);
    const isSame = again.ok && JSON.stringify(again.value) === JSON.stringify(sheet.value);
    return isSame ? null : `${about}\n  the same seed made another sheet`;
  } catch (thrown) {
    return `${about}\n  ${thrown instanceof Error ? thrown.stack : String(thrown)}`;
  }
}

/** Tries `count` cases from a first seed on; every tenth is made twice. */
export function fuzzSheets(count: number, firstSeed: number): SheetFuzzReport {
  const byKind = new Map<MaterialKind, KindReport>(
    materialKinds.map((kind) => [kind, { made: 0, refused: 0, reasons: new Map() }]),
  );
  const failures: string[] = [];
  for (let i = 0; i < count && failures.length < 20; i++) {
    const failure = tryOne(firstSeed + i, byKind, i % 10 === 0);
    if (failure !== null) failures.push(failure);
  }
  return { byKind, failures };
}

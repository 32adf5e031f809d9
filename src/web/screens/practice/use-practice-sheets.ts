// Draws the notation of several lessons' practice sheets, one after the other, and says how far it is.

import { useEffect, useMemo, useState } from 'react';
import type { LessonView } from '#contract';
import { wishSheet } from '../../engraver/engraver.ts';
import type { SheetAnswer, SheetWish } from '../../engraver/sheet-wish.ts';
import { listPracticeMaterials, type PracticeMaterial } from './practice-materials.ts';

export type Paper = 'a4' | 'letter';

/** The width between the margins of a practice sheet, and the most a piece of notation may take of its height. */
export const columns = {
  a4: { widthMm: 182, mostHeightMm: 235 },
  letter: { widthMm: 187.9, mostHeightMm: 218 },
} as const satisfies Readonly<Record<Paper, { widthMm: number; mostHeightMm: number }>>;

export interface LessonPractice {
  readonly lesson: LessonView;
  readonly materials: readonly PracticeMaterial[];
}

export interface Drawing {
  readonly practices: readonly LessonPractice[];
  /** What was drawn so far, by lesson and material. */
  readonly answers: ReadonlyMap<string, SheetAnswer>;
  readonly total: number;
}

export const answerKey = (lesson: LessonView, material: PracticeMaterial): string =>
  `${lesson.id} ${material.id}`;

function wishOf({ learner }: LessonView, material: PracticeMaterial, paper: Paper, name: string): SheetWish {
  return {
    spec: material.spec,
    instrument: learner.instrument,
    stage: learner.stage,
    age: learner.age,
    seed: material.seed,
    drawing: { form: columns[paper], name, heading: 'tempo', scale: 92 },
  };
}

export function usePracticeSheets(lessons: readonly LessonView[], paper: Paper): Drawing {
  const practices = useMemo(
    () => lessons.map((lesson) => ({ lesson, materials: listPracticeMaterials(lesson) })),
    [lessons],
  );
  const [answers, setAnswers] = useState<ReadonlyMap<string, SheetAnswer>>(new Map());
  useEffect(() => {
    let isStopped = false;
    const drawAll = async () => {
      setAnswers(new Map());
      for (const [at, { lesson, materials }] of practices.entries()) {
        for (const [m, material] of materials.entries()) {
          const answer = await wishSheet(wishOf(lesson, material, paper, `practice-${at + 1}-${m + 1}`));
          if (isStopped) return;
          setAnswers((now) => new Map([...now, [answerKey(lesson, material), answer]]));
        }
      }
    };
    void drawAll();
    return () => {
      isStopped = true;
    };
  }, [practices, paper]);
  return { practices, answers, total: practices.reduce((sum, { materials }) => sum + materials.length, 0) };
}

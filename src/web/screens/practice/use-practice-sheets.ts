// Draws the notation of several lessons' practice sheets, one after the other, and says how far it is.

import { useEffect, useMemo, useRef, useState } from 'react';
import type { LessonView } from '#contract';
import { hashText } from '../../components/hash-text.ts';
import { wishSheet } from '../../engraver/engraver.ts';
import type { SheetAnswer, SheetWish } from '../../engraver/sheet-wish.ts';
import { listPracticeMaterials, type PracticeMaterial, type PracticeNotation } from './practice-materials.ts';

export type Paper = 'a4' | 'letter';

/**
 * The width between the margins of a practice sheet, and how high one picture of notation may be. Pages break between
 * pictures, so low ones fill a page that has something on it already.
 */
export const columns = {
  a4: { widthMm: 182, mostHeightMm: 62 },
  letter: { widthMm: 187.9, mostHeightMm: 62 },
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

const notationOf = (materials: readonly PracticeMaterial[]): readonly PracticeNotation[] =>
  materials.filter((material) => material.kind === 'notation');

function wishOf(lesson: LessonView, material: PracticeNotation, paper: Paper): SheetWish {
  const { learner } = lesson;
  return {
    spec: material.spec,
    instrument: learner.instrument,
    stage: learner.stage,
    age: learner.age,
    seed: material.seed,
    drawing: {
      form: columns[paper],
      // The same whatever else stands on the page, so that a drawing can stay when something is taken off.
      name: `practice-${hashText(answerKey(lesson, material))}`,
      heading: 'tempo',
      scale: 92,
    },
  };
}

export function usePracticeSheets(lessons: readonly LessonView[], paper: Paper): Drawing {
  const practices = useMemo(
    () =>
      lessons.map((lesson) => ({
        lesson,
        // What waits can be put on a sheet that is printed alone; for the others nothing is drawn in vain.
        materials: listPracticeMaterials(lesson).filter(({ waits }) => !waits || lessons.length === 1),
      })),
    [lessons],
  );
  const drawn = useRef<ReadonlyMap<string, SheetAnswer>>(new Map());
  const [answers, setAnswers] = useState<ReadonlyMap<string, SheetAnswer>>(new Map());
  useEffect(() => {
    let isStopped = false;
    const drawAll = async () => {
      const wishes = practices.flatMap(({ lesson, materials }) =>
        notationOf(materials).map((material) => ({
          key: answerKey(lesson, material),
          wish: wishOf(lesson, material, paper),
        })),
      );
      const known = (wish: SheetWish) => drawn.current.get(JSON.stringify(wish));
      setAnswers(
        new Map(
          wishes.flatMap(({ key, wish }) => {
            const answer = known(wish);
            return answer === undefined ? [] : [[key, answer] as const];
          }),
        ),
      );
      for (const { key, wish } of wishes) {
        if (known(wish) !== undefined) continue;
        const answer = await wishSheet(wish);
        if (isStopped) return;
        drawn.current = new Map([...drawn.current, [JSON.stringify(wish), answer]]);
        setAnswers((now) => new Map([...now, [key, answer]]));
      }
    };
    void drawAll();
    return () => {
      isStopped = true;
    };
  }, [practices, paper]);
  const total = practices.reduce((sum, { materials }) => sum + notationOf(materials).length, 0);
  return { practices, answers, total };
}

// A backing on a practice sheet: named on paper, and played along with on the screen.

import { lazy, Suspense, useId, useState } from 'react';
import type { LessonView } from '#contract';
import { findInstrument } from '#music';
import { Button } from '../../components/button.tsx';
import { words } from '../../words/index.ts';
import { describeBacking, writeChart } from './describe-backing.ts';
import type { PracticeBacking as Backing } from './practice-materials.ts';

const BandPlayer = lazy(async () => ({ default: (await import('../../sound/band-player.tsx')).BandPlayer }));

const says = words.practice.backing;

export interface PracticeBackingProps {
  readonly lesson: LessonView;
  readonly material: Backing;
}

export function PracticeBacking({ lesson, material }: PracticeBackingProps) {
  const { title, seed, backing } = material;
  const [isOpen, setIsOpen] = useState(false);
  const reader = findInstrument(lesson.learner.instrument);
  const id = useId();
  return (
    <section className="practice-backing" data-open={isOpen}>
      <div className="practice-backing-line">
        <h3>{says.named(title)}</h3>
        <Button
          kind="plain"
          className="no-print"
          aria-label={isOpen ? says.put : says.playNamed(title)}
          aria-expanded={isOpen}
          {...(isOpen ? { 'aria-controls': id } : {})}
          onPress={() => setIsOpen(!isOpen)}
        >
          {isOpen ? says.put : says.play}
        </Button>
      </div>
      <p>{describeBacking(backing, lesson.learner.instrument).join(' · ')}</p>
      <p className="practice-chart">{writeChart(backing, lesson.learner.instrument)}</p>
      {isOpen && (
        <div id={id} className="no-print">
          <Suspense fallback={null}>
            <BandPlayer spec={backing} seed={seed} keysOnPage={false} reader={reader} />
          </Suspense>
        </div>
      )}
    </section>
  );
}

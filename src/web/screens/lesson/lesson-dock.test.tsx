// The clock as it is heard: WCAG 2.2, success criterion 4.1.3; a timer is silent by itself (WAI-ARIA 1.2, role timer).

import { QueryClient, QueryClientProvider } from '@tanstack/react-query';
import { renderToStaticMarkup } from 'react-dom/server';
import { expect, test, vi } from 'vitest';
import { LessonDock } from './lesson-dock.tsx';
import { segmentOf } from './lesson-segment.fixture.ts';

// Node 20 has no navigator; the studio's locale is not known here.
vi.stubGlobal('navigator', { language: 'en-GB' });

const nothing = () => undefined;

function statusAt(seconds: number, runs: boolean): string {
  const page = renderToStaticMarkup(
    <QueryClientProvider client={new QueryClient()}>
      <LessonDock
        segment={segmentOf('long notes', { minutes: 10 })}
        lessonMinutes={45}
        seconds={seconds}
        runs={runs}
        first={false}
        last={false}
        asksShare={false}
        onClock={nothing}
        onSetClock={nothing}
        onTurn={nothing}
        onOutcome={nothing}
        onShare={nothing}
      />
    </QueryClientProvider>,
  );
  return /role="status">([^<]*)</.exec(page)?.[1] ?? 'no status';
}

test('the running clock says once that the minutes are over, and nothing before', () => {
  expect(statusAt(599, true)).toBe('');
  expect(statusAt(601, true)).toMatch(/^Long notes: .*10/);
  // The same words while it runs on: what does not change is not said again.
  expect(statusAt(660, true)).toBe(statusAt(601, true));
});

test('a clock that stands says nothing', () => {
  expect(statusAt(700, false)).toBe('');
});

// `<barline>`: repeats, endings, double and final lines.

import type { EndingSpan } from '../score/bar-places.ts';
import type { ScoreBar } from '../score/score.ts';
import { element } from './element.ts';

const styles = {
  single: '',
  double: '<bar-style>light-light</bar-style>',
  final: '<bar-style>light-heavy</bar-style>',
};

function barline(location: 'left' | 'right', ...inside: readonly string[]): string {
  const content = inside.join('');
  return content === '' ? '' : element('barline', { location }, content);
}

/** What stands before the bar: an opening repeat, the start of an ending; empty for neither. */
export function writeLeftBarline(bar: ScoreBar, ending: EndingSpan | null): string {
  return barline(
    'left',
    bar.repeatStart ? '<bar-style>heavy-light</bar-style>' : '',
    ending === null ? '' : element('ending', { number: ending.number, type: 'start' }, `${ending.number}.`),
    bar.repeatStart ? element('repeat', { direction: 'forward' }) : '',
  );
}

/** What stands after the bar; empty for a plain line. An ending without repeat sign stays open at its end. */
export function writeRightBarline(bar: ScoreBar, ending: EndingSpan | null): string {
  return barline(
    'right',
    bar.repeatEnd ? styles.final : styles[bar.barline],
    ending === null
      ? ''
      : element('ending', { number: ending.number, type: ending.isClosed ? 'stop' : 'discontinue' }),
    bar.repeatEnd ? element('repeat', { direction: 'backward' }) : '',
  );
}

import { useState } from 'react';
import { Radio, RadioGroup } from 'react-aria-components';
import { Button } from '../components/button.tsx';
import { words } from '../words/index.ts';

const say = words.score;

interface Props {
  readonly form: 'score' | 'table';
  readonly onForm: (form: 'score' | 'table') => void;
  readonly bars: number;
  readonly onBars: (bars: number) => void;
  /** Goes to the next lesson to be taught; null where none is planned. */
  readonly onNow: (() => void) | null;
  /** Without printing, for a preview. */
  readonly plain: boolean;
}

/** How the score is shown: as score or table, how many bars on a line, on paper. */
export function ScoreTools({ form, onForm, bars, onBars, onNow, plain }: Props) {
  // The width of the window sets it too, and is no news.
  const [isTurned, setTurned] = useState(false);
  const turn = (by: 1 | -1) => {
    setTurned(true);
    onBars(bars + by);
  };
  return (
    <div className="score-tools no-print">
      <RadioGroup
        className="score-form-choice"
        aria-label={say.shownAs}
        orientation="horizontal"
        value={form}
        onChange={(chosen) => onForm(chosen === 'table' ? 'table' : 'score')}
      >
        <Radio value="score">{say.asScore}</Radio>
        <Radio value="table">{say.asTable}</Radio>
      </RadioGroup>
      {form === 'score' && (
        <fieldset className="score-zoom">
          <legend className="only-heard">{say.barsPerLine}</legend>
          <Button kind="plain" aria-label={say.fewerBars} isDisabled={bars <= 1} onPress={() => turn(-1)}>
            −
          </Button>
          <span className="score-zoom-count" aria-live={isTurned ? 'polite' : 'off'}>
            {say.barsOnLine(bars)}
          </span>
          <Button kind="plain" aria-label={say.moreBars} isDisabled={bars >= 12} onPress={() => turn(1)}>
            +
          </Button>
        </fieldset>
      )}
      {onNow && (
        <Button kind="plain" aria-label={say.toNext} onPress={onNow}>
          {say.toNow}
        </Button>
      )}
      {!plain && (
        <Button kind="plain" onPress={() => window.print()}>
          {say.print}
        </Button>
      )}
    </div>
  );
}

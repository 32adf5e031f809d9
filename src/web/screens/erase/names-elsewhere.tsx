// Where the student's name stands in what stays, each to be ticked; and another name to look for.

import { useState } from 'react';
import type { ErasureView, MentionView } from '#contract';
import { Button } from '../../components/button.tsx';
import { TextField } from '../../components/field.tsx';
import { Tick } from '../../components/tick.tsx';
import { words } from '../../words/index.ts';

const say = words.erase.names;

export interface NamesElsewhereProps {
  readonly erasure: ErasureView;
  /** Places that stay as they are. */
  readonly keep: readonly string[];
  readonly looking: boolean;
  readonly onTurn: (place: string) => void;
  readonly onCalled: (text: string) => void;
}

export function NamesElsewhere({ erasure, keep, looking, onTurn, onCalled }: NamesElsewhereProps) {
  const [called, setCalled] = useState('');
  const { mentions } = erasure;
  return (
    <>
      <p>{mentions.length === 0 ? say.none : say.text}</p>
      {mentions.length > 0 && (
        <ul className="erase-mentions">
          {mentions.map((mention) => (
            <li key={mention.place}>
              <Tick
                ticked={!keep.includes(mention.place)}
                onTick={() => onTurn(mention.place)}
                label={say.replace(mention.where)}
              />
              <div>
                <p>{mention.where}</p>
                {mention.texts.map((text) => (
                  <Excerpt key={`${text.before}|${text.after}`} text={text} />
                ))}
              </div>
            </li>
          ))}
        </ul>
      )}
      <p className="faint">
        {say.words(erasure.words)} {say.picture}
      </p>
      <form
        className="form-row erase-called"
        onSubmit={(event) => {
          event.preventDefault();
          onCalled(called);
        }}
      >
        <TextField label={say.called} help={say.calledHelp} value={called} onValue={setCalled} />
        <Button type="submit" pending={looking}>
          {say.look}
        </Button>
      </form>
    </>
  );
}

function Excerpt({ text }: { readonly text: MentionView['texts'][number] }) {
  return (
    <p className="faint">
      {text.before}
      <mark>{text.name}</mark>
      {text.after}
    </p>
  );
}

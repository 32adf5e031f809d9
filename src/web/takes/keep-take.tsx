// What is kept of a take: figures always, the sound if wanted, and at one touch of a level an observation that it proves.

import { type FormEvent, type ReactNode, useState } from 'react';
import type { CommandOf } from '#contract';
import { mostSoundBytes } from '#contract';
import type { Level } from '#planning';
import { Button } from '../components/button.tsx';
import { TextField } from '../components/field.tsx';
import { Tick } from '../components/tick.tsx';
import { newId } from '../new-id.ts';
import { words } from '../words/index.ts';
import { blobToBase64 } from './blob-to-base64.ts';
import { formatMegabytes } from './format-figure.ts';
import { keepOrHold } from './keep-or-hold.ts';
import { LevelChoice } from './level-choice.tsx';
import type { HeardEvidence } from './listening-message.ts';
import { saveSound } from './save-sound.ts';
import type { TakeFor } from './take-for.ts';

const say = words.takes.result;

export interface KeepTakeProps {
  readonly of: TakeFor;
  readonly heard: HeardEvidence;
  readonly sound: Blob | null;
  readonly onAgain: () => void;
  readonly onKept: () => void;
  /** What was heard, with the fields of what is kept in it; keeping itself stays in reach below. */
  readonly children: (fields: ReactNode) => ReactNode;
}

export function KeepTake({ of, heard, sound, onAgain, onKept, children }: KeepTakeProps) {
  const fits = sound !== null && sound.size <= mostSoundBytes;
  const megabytes = formatMegabytes(sound?.size ?? 0);
  const [title, setTitle] = useState(of.title);
  const [keepsSound, setKeepsSound] = useState(fits);
  const [skill, setSkill] = useState<string>(of.skills[0]?.skill ?? '');
  const [level, setLevel] = useState<Level | null>(null);
  const [busy, setBusy] = useState(false);
  const [wasRefused, setRefused] = useState(false);
  // One take, however often it is tried to be kept.
  const [ids] = useState(() => ({
    take: newId('take'),
    sound: newId('sound'),
    observation: newId('observation'),
  }));
  const isHeard = heard.heard.notes.length > 0;
  const chosen = of.skills.find((one) => one.skill === skill);
  const keep = async (event: FormEvent) => {
    event.preventDefault();
    if (busy) return;
    setBusy(true);
    const keeping: CommandOf<'take.keep'> = {
      type: 'take.keep',
      take: {
        id: ids.take,
        student: of.student,
        lesson: of.lesson,
        practiceOf: of.practiceOf,
        title: title.trim() || of.title || words.takes.untitled,
        activity: of.activity,
        instrument: of.instrument,
        ...heard,
        note: '',
      },
      sound:
        sound !== null && keepsSound && fits
          ? { id: ids.sound, type: sound.type, data: await blobToBase64(sound) }
          : null,
    };
    const observing: CommandOf<'observe'> | null =
      level === null || chosen === undefined || of.course === null
        ? null
        : {
            type: 'observe',
            observation: ids.observation,
            course: of.course,
            student: of.student,
            lesson: of.lesson,
            skill: chosen.skill,
            level,
            note: '',
            take: ids.take,
          };
    const done = await keepOrHold(
      observing ? [keeping, observing] : [keeping],
      (replies) => replies.at(-1)?.label ?? '',
    );
    setBusy(false);
    setRefused(!done);
    if (done) onKept();
  };
  // Waiting and not disabled: a button that is disabled loses the focus.
  const waiting = busy ? 'record-waiting' : '';
  const fields = (
    <div className="keep-fields">
      <TextField label={say.what} value={title} onValue={setTitle} placeholder={words.takes.untitled} />
      {isHeard && of.skills.length > 0 && (
        <LevelChoice
          skills={of.skills}
          skill={skill}
          level={level}
          onChoose={(one, at) => {
            setSkill(one);
            setLevel(at);
          }}
        />
      )}
      {sound !== null && (
        <div>
          <Tick ticked={keepsSound && fits} onTick={setKeepsSound} disabled={!fits}>
            {say.keepSound}
          </Tick>
          <p className="faint">{fits ? say.keepSoundHelp(megabytes) : say.soundTooLarge(megabytes)}</p>
        </div>
      )}
    </div>
  );
  return (
    <form className="keep-take" onSubmit={(event) => void keep(event)}>
      {children(fields)}
      <div className="record-deeds keep-foot">
        <Button kind={isHeard ? 'primary' : 'quiet'} large type="submit" className={waiting}>
          {busy ? words.frame.saving : level === null ? say.keep : say.keepObserved}
        </Button>
        <Button
          kind={isHeard ? 'quiet' : 'primary'}
          large
          className={waiting}
          onPress={() => !busy && onAgain()}
        >
          {say.again}
        </Button>
        {wasRefused && sound !== null && (
          <Button large onPress={() => saveSound(sound, title.trim() || words.takes.untitled)}>
            {words.takes.refused.save}
          </Button>
        )}
      </div>
    </form>
  );
}

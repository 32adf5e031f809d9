// What is kept of a take: figures always, the sound if wanted, and at one touch of a level an observation that it proves.

import { type FormEvent, useState } from 'react';
import type { Command } from '#contract';
import { mostSoundBytes } from '#contract';
import type { Level } from '#planning';
import { send, sendTogether } from '../app/send.ts';
import { sentenceCase } from '../app/sentence-case.ts';
import { Button } from '../components/button.tsx';
import { SelectField, TextField } from '../components/field.tsx';
import { LevelPicker } from '../components/level-picker.tsx';
import { Tick } from '../components/tick.tsx';
import { newId } from '../new-id.ts';
import { words } from '../words/index.ts';
import { blobToBase64 } from './blob-to-base64.ts';
import type { HeardEvidence } from './listening-message.ts';
import type { TakeFor } from './take-for.ts';

const say = words.takes.result;

export interface KeepTakeProps {
  readonly of: TakeFor;
  readonly heard: HeardEvidence;
  readonly sound: Blob | null;
  readonly onAgain: () => void;
  readonly onKept: () => void;
}

export function KeepTake({ of, heard, sound, onAgain, onKept }: KeepTakeProps) {
  const fits = sound !== null && sound.size <= mostSoundBytes;
  const megabytes = ((sound?.size ?? 0) / 1024 / 1024).toFixed(1);
  const [title, setTitle] = useState(of.title);
  const [keepsSound, setKeepsSound] = useState(fits);
  const [skill, setSkill] = useState<string>(of.skills[0]?.skill ?? '');
  const [level, setLevel] = useState<Level | null>(null);
  const [busy, setBusy] = useState(false);
  const chosen = of.skills.find((one) => one.skill === skill);
  const keep = async (event: FormEvent) => {
    event.preventDefault();
    setBusy(true);
    const take = newId('take');
    const keeping: Command = {
      type: 'take.keep',
      take: {
        id: take,
        student: of.student,
        lesson: of.lesson,
        title: title.trim() || of.title,
        activity: of.activity,
        instrument: of.instrument,
        ...heard,
        note: '',
      },
      sound:
        sound !== null && keepsSound && fits
          ? { id: newId('sound'), type: sound.type, data: await blobToBase64(sound) }
          : null,
    };
    const observing: Command | null =
      level === null || chosen === undefined || of.course === null
        ? null
        : {
            type: 'observe',
            observation: newId('observation'),
            course: of.course,
            student: of.student,
            lesson: of.lesson,
            skill: chosen.skill,
            level,
            note: '',
            take,
          };
    const done = observing
      ? await sendTogether([keeping, observing], (replies) => replies.at(-1)?.label ?? '')
      : await send(keeping);
    setBusy(false);
    if (done) onKept();
  };
  return (
    <form className="keep-take" onSubmit={(event) => void keep(event)}>
      <TextField label={say.what} value={title} onValue={setTitle} required />
      {of.skills.length > 0 && (
        <>
          <h3>{say.observe}</h3>
          <p className="soft">{say.observeHelp}</p>
          {of.skills.length > 1 && (
            <SelectField
              label={say.skill}
              value={skill}
              onValue={(one) => {
                setSkill(one);
                setLevel(null);
              }}
              options={of.skills.map((one) => ({ value: one.skill, label: sentenceCase(one.title) }))}
            />
          )}
          {chosen && (
            <LevelPicker
              label={sentenceCase(chosen.title)}
              level={level}
              onLevel={setLevel}
              {...(chosen.wanted === null ? {} : { wanted: chosen.wanted })}
            />
          )}
        </>
      )}
      {sound !== null && (
        <div>
          <Tick ticked={keepsSound && fits} onTick={setKeepsSound} disabled={!fits}>
            {say.keepSound}
          </Tick>
          <p className="faint">{fits ? say.keepSoundHelp(megabytes) : say.soundTooLarge(megabytes)}</p>
        </div>
      )}
      <div className="record-deeds">
        <Button kind="primary" large type="submit" isDisabled={busy || title.trim() === ''}>
          {level === null ? say.keep : say.keepObserved}
        </Button>
        <Button large onPress={onAgain} isDisabled={busy}>
          {say.again}
        </Button>
      </div>
    </form>
  );
}

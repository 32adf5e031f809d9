// The recording screen, a sheet over the lesson or the student: consent, set-up and sound check, the take, what was heard,
// and what is kept of it.

import { useEffect, useRef, useState } from 'react';
import { FileTrigger } from 'react-aria-components';
import { Button } from '../components/button.tsx';
import { Dialog } from '../components/dialog.tsx';
import { Loaded } from '../components/loading.tsx';
import { useHeard } from '../hooks/use-heard.ts';
import { useTakes } from '../hooks/use-view.ts';
import { words } from '../words/index.ts';
import { ConsentForm } from './consent-form.tsx';
import { formatLength } from './format-figure.ts';
import { KeepTake } from './keep-take.tsx';
import { LevelMeter } from './level-meter.tsx';
import { isMicrophoneGranted, type Microphone } from './recorder.ts';
import { sayHeard } from './say-heard.ts';
import { SettingsForm } from './settings-form.tsx';
import type { TakeFor } from './take-for.ts';
import { TakeResult } from './take-result.tsx';
import { suggestSettings } from './take-settings.ts';
import { useRecording } from './use-recording.ts';
import '../components/form.css';
import './record-take.css';

const say = words.takes;

export interface RecordTakeProps {
  readonly of: TakeFor;
  readonly onClose: () => void;
}

export function RecordTake({ of, onClose }: RecordTakeProps) {
  const takes = useTakes(of.student);
  const atStake = useRef(false);
  const [leaving, setLeaving] = useState(false);
  // A take that is thrown away by a slip of the hand cannot be played again: this one question is asked.
  const close = () => (atStake.current ? setLeaving(true) : onClose());
  return (
    <Dialog title={say.of(say.record, of.name)} open onClose={close} width="wide">
      {leaving && (
        <div className="record-leaving" role="alertdialog" aria-label={say.recording.leaveTitle}>
          <p>{say.recording.leaveTitle}</p>
          <div className="record-deeds">
            <Button large autoFocus onPress={() => setLeaving(false)}>
              {say.recording.stay}
            </Button>
            <Button large kind="plain" onPress={onClose}>
              {say.recording.leave}
            </Button>
          </div>
        </div>
      )}
      <Loaded view={takes}>
        {(view) =>
          view.isMinor && view.consent === null ? (
            <ConsentForm takes={view} />
          ) : (
            <Recording
              of={of}
              onStake={(isAtStake) => {
                atStake.current = isAtStake;
                if (!isAtStake) setLeaving(false);
              }}
              onClose={onClose}
            />
          )
        }
      </Loaded>
    </Dialog>
  );
}

interface RecordingProps extends RecordTakeProps {
  /** Told when there begins to be, and ceases to be, a take that would be lost. */
  readonly onStake: (isAtStake: boolean) => void;
}

function Recording({ of, onStake, onClose }: RecordingProps) {
  const [settings, setSettings] = useState(() => suggestSettings(of.materials, of.instrument));
  const recording = useRecording(settings);
  const { state, fault, microphone } = recording;
  const isAtStake =
    state.step === 'recording' ||
    ((state.step === 'listening' || state.step === 'heard') && state.isRecorded);
  const tell = useRef(onStake);
  tell.current = onStake;
  useEffect(() => {
    tell.current(isAtStake);
    if (!isAtStake) return;
    const hold = (event: BeforeUnloadEvent) => event.preventDefault();
    window.addEventListener('beforeunload', hold);
    return () => window.removeEventListener('beforeunload', hold);
  }, [isAtStake]);
  const result = state.step === 'heard' ? state.heard.heard : null;
  const heard = useHeard(result, result ? sayHeard({ ...result, notes: result.notes.length }) : '');
  const place = useRef<HTMLDivElement>(null);
  const before = useRef(state.step);
  useEffect(() => {
    if (before.current === state.step) return;
    before.current = state.step;
    // What had the focus went with its step; left alone it would come to Close, and a second Enter would throw the take
    // away. Stop has taken it by itself.
    if (state.step !== 'recording') place.current?.focus({ preventScroll: true });
  }, [state.step]);
  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset would bring a frame and a legend of its own
    <div className="record-take" role="group" aria-label={say.steps[state.step]} tabIndex={-1} ref={place}>
      <p className="only-heard" role="status">
        {heard}
      </p>
      {fault && (
        <p className="fault" role="alert">
          {fault}
        </p>
      )}
      {state.step === 'setUp' && (
        <>
          <SettingsForm settings={settings} onSettings={setSettings} fault={recording.settingsFault} />
          <SoundCheck recording={recording} />
        </>
      )}
      {state.step === 'recording' && (
        <RecordingNow
          microphone={microphone}
          seconds={state.seconds}
          isCountingIn={state.isCountingIn}
          onStop={() => void recording.stop()}
          onCancel={recording.cancel}
        />
      )}
      {state.step === 'listening' && (
        <div className="record-listening">
          <p aria-live="polite">{say.listening[state.progress?.stage ?? 'decoding']}</p>
          <progress
            max={1}
            value={state.progress?.share ?? 0}
            aria-label={say.listening[state.progress?.stage ?? 'decoding']}
          />
          <Button onPress={recording.cancel}>{say.listening.cancel}</Button>
        </div>
      )}
      {state.step === 'heard' && (
        <KeepTake of={of} heard={state.heard} sound={state.sound} onAgain={recording.again} onKept={onClose}>
          {(fields) => (
            <TakeResult take={state.heard} checks={of.checks} sound={state.samples} offClick={state.offClick}>
              {fields}
            </TakeResult>
          )}
        </KeepTake>
      )}
    </div>
  );
}

function SoundCheck({ recording }: { readonly recording: ReturnType<typeof useRecording> }) {
  const { microphone, busy, latency } = recording;
  const waiting = busy === null ? '' : 'record-waiting';
  // Where the browser was told already that this page may, the microphone opens by itself.
  const open = useRef(recording.openIt);
  const isOpen = useRef(microphone !== null);
  useEffect(() => {
    let isWanted = !isOpen.current;
    void isMicrophoneGranted().then((isGranted) => {
      if (isGranted && isWanted) void open.current(true);
    });
    return () => {
      isWanted = false;
    };
  }, []);
  return (
    <div className="form-part">
      <p className="soft">{say.setUp.headphones}</p>
      {microphone && <LevelMeter microphone={microphone} />}
      {latency !== null && (
        <p aria-live="polite">
          {latency === 'unheard' ? say.setUp.latencyNot : say.setUp.latencyIs(Math.round(latency * 1000))}
        </p>
      )}
      <div className="record-deeds">
        {/* One button through all of it, waiting and not disabled, so that the focus stays on it. */}
        <Button
          kind="primary"
          large
          className={waiting}
          onPress={() => {
            if (busy === null) void (microphone ? recording.begin() : recording.openIt());
          }}
        >
          {microphone
            ? busy === 'band'
              ? say.setUp.bandLoads
              : say.recording.begin
            : busy === 'opening'
              ? say.setUp.checking
              : say.setUp.check}
        </Button>
        {microphone && (
          <Button
            large
            className={waiting}
            onPress={() => {
              if (busy === null) void recording.measure();
            }}
          >
            {busy === 'measuring' ? say.setUp.measuring : say.setUp.latency}
          </Button>
        )}
        <FileTrigger
          acceptedFileTypes={['audio/*', '.wav', '.mp3', '.m4a', '.ogg', '.webm', '.flac']}
          onSelect={(files) => {
            const file = files?.[0];
            if (file) void recording.openFile(file);
          }}
        >
          <Button large isDisabled={busy !== null}>
            {say.setUp.file}
          </Button>
        </FileTrigger>
      </div>
      <p className="faint">{say.setUp.fileHelp}</p>
    </div>
  );
}

interface RecordingNowProps {
  readonly microphone: Microphone | null;
  readonly seconds: () => number;
  readonly isCountingIn: () => boolean;
  readonly onStop: () => void;
  readonly onCancel: () => void;
}

function RecordingNow({ microphone, seconds, isCountingIn, onStop, onCancel }: RecordingNowProps) {
  const [now, setNow] = useState({ seconds: 0, isCountingIn: isCountingIn() });
  useEffect(() => {
    const timer = setInterval(() => setNow({ seconds: seconds(), isCountingIn: isCountingIn() }), 200);
    return () => clearInterval(timer);
  }, [seconds, isCountingIn]);
  return (
    <div className="record-now">
      <p className="record-clock" role="timer">
        {formatLength(now.seconds)}
      </p>
      <p aria-live="polite">{now.isCountingIn ? say.recording.countIn : say.recording.now}</p>
      {microphone && <LevelMeter microphone={microphone} silent />}
      <div className="record-deeds">
        <Button kind="primary" large autoFocus onPress={onStop}>
          {say.recording.stop}
        </Button>
        <Button large onPress={onCancel}>
          {say.recording.cancel}
        </Button>
      </div>
    </div>
  );
}

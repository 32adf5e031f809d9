// The recording screen, a sheet over the lesson or the student: consent, set-up and sound check, the take, what was heard,
// and what is kept of it.

import { useEffect, useState } from 'react';
import { FileTrigger } from 'react-aria-components';
import { Button } from '../components/button.tsx';
import { Dialog } from '../components/dialog.tsx';
import { Loaded } from '../components/loading.tsx';
import { useTakes } from '../hooks/use-view.ts';
import { words } from '../words/index.ts';
import { ConsentForm } from './consent-form.tsx';
import { formatLength } from './format-figure.ts';
import { KeepTake } from './keep-take.tsx';
import { LevelMeter } from './level-meter.tsx';
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
  return (
    <Dialog title={say.of(say.record, of.name)} open onClose={onClose} width="wide">
      <Loaded view={takes}>
        {(view) =>
          view.isMinor && view.consent === null ? (
            <ConsentForm takes={view} />
          ) : (
            <Recording of={of} onClose={onClose} />
          )
        }
      </Loaded>
    </Dialog>
  );
}

function Recording({ of, onClose }: RecordTakeProps) {
  const [settings, setSettings] = useState(() => suggestSettings(of.materials, of.instrument));
  const recording = useRecording(settings);
  const { state, fault } = recording;
  return (
    <div className="record-take">
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
        <>
          <TakeResult take={state.heard} sound={state.samples} offClick={state.offClick} />
          <KeepTake
            of={of}
            heard={state.heard}
            sound={state.sound}
            onAgain={recording.again}
            onKept={onClose}
          />
        </>
      )}
    </div>
  );
}

function SoundCheck({ recording }: { readonly recording: ReturnType<typeof useRecording> }) {
  const { microphone, busy, latency } = recording;
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
        {microphone ? (
          <>
            <Button kind="primary" large isDisabled={busy !== null} onPress={() => void recording.begin()}>
              {busy === 'band' ? say.setUp.bandLoads : say.recording.begin}
            </Button>
            <Button large isDisabled={busy !== null} onPress={() => void recording.measure()}>
              {busy === 'measuring' ? say.setUp.measuring : say.setUp.latency}
            </Button>
          </>
        ) : (
          <Button kind="primary" large isDisabled={busy !== null} onPress={() => void recording.openIt()}>
            {busy === 'opening' ? say.setUp.checking : say.setUp.check}
          </Button>
        )}
        <FileTrigger
          acceptedFileTypes={['audio/*', '.wav', '.mp3', '.m4a', '.ogg', '.flac']}
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
  readonly seconds: () => number;
  readonly isCountingIn: () => boolean;
  readonly onStop: () => void;
  readonly onCancel: () => void;
}

function RecordingNow({ seconds, isCountingIn, onStop, onCancel }: RecordingNowProps) {
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

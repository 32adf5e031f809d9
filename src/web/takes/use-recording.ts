// One take from the sound check to what was heard in it: microphone, click, recorder, file and listening in one place, so that
// the screen only draws.

import { useEffect, useRef, useState } from 'react';
import { longestTake, type WrittenContext } from '#contract';
import { parseTakeContext } from '#listening';
import { createPlayer, type Player } from '../sound/player.ts';
import { words } from '../words/index.ts';
import { readyBand, startBand } from './band-click.ts';
import { startClick } from './click.ts';
import type { Company } from './company.ts';
import { decodeSound, type Samples } from './decode-sound.ts';
import { type ListeningInHand, listenTo } from './listen-to.ts';
import type { HeardEvidence, ListenProgress } from './listening-message.ts';
import { measureLatency } from './measure-latency.ts';
import { type Microphone, openMicrophone, type TakeInHand } from './recorder.ts';
import {
  bandOf,
  beatsPerBar,
  settingsOfFile,
  settingsToContext,
  type TakeSettings,
} from './take-settings.ts';

export type RecordingState =
  | { readonly step: 'setUp' }
  | { readonly step: 'recording'; readonly seconds: () => number; readonly isCountingIn: () => boolean }
  | {
      readonly step: 'listening';
      readonly progress: ListenProgress | null;
      /** Whether it was just recorded, so that it would be lost; a file stays where it is. */
      readonly isRecorded: boolean;
    }
  | {
      readonly step: 'heard';
      readonly heard: HeardEvidence;
      readonly samples: Samples;
      readonly sound: Blob | null;
      readonly offClick: boolean;
      readonly isRecorded: boolean;
    };

export interface SettingsFault {
  readonly field: string;
  readonly message: string;
}

/** Everything the recording screen does. Closing the screen lets go of the microphone. */
export function useRecording(settings: TakeSettings) {
  const [state, setState] = useState<RecordingState>({ step: 'setUp' });
  const [microphone, setMicrophone] = useState<Microphone | null>(null);
  const [busy, setBusy] = useState<'opening' | 'measuring' | 'band' | null>(null);
  const [latency, setLatency] = useState<number | 'unheard' | null>(null);
  const [fault, setFault] = useState<string | null>(null);
  const [settingsFault, setSettingsFault] = useState<SettingsFault | null>(null);
  const inHand = useRef<{ take: TakeInHand; company: Company | null; timer: number } | null>(null);
  const listening = useRef<ListeningInHand | null>(null);
  const open = useRef<{ readonly player: Player; readonly microphone: Microphone | null } | null>(null);

  const isOpening = useRef(false);
  const latestStop = useRef<() => Promise<void>>(async () => {});

  useEffect(
    () => () => {
      letGo(inHand);
      listening.current?.cancel();
      open.current?.microphone?.close();
      open.current?.player.close();
      open.current = null;
    },
    [],
  );

  /** `byItself`: nobody asked for it, so what was said before stays to be read. */
  const openIt = async (byItself = false) => {
    // A second one would never be let go of.
    if (isOpening.current) return;
    isOpening.current = true;
    setBusy('opening');
    if (!byItself) setFault(null);
    try {
      // A page that is neither on this machine nor encrypted is not given a microphone by any browser.
      if (!window.isSecureContext) throw new DOMException('', 'SecurityError');
      const player = open.current?.player ?? createPlayer();
      open.current = { player, microphone: null };
      const opened = await openMicrophone(player.context);
      // The sheet may have been closed while the browser asked.
      if (open.current === null) return opened.close();
      open.current = { player, microphone: opened };
      opened.onGone(() => lose(opened));
      setMicrophone(opened);
    } catch (error) {
      setFault((told) => (byItself && told !== null ? told : sayNoMicrophone(error)));
    }
    isOpening.current = false;
    setBusy(null);
  };
  const lose = (gone: Microphone) => {
    gone.close();
    if (open.current?.microphone !== gone) return;
    open.current = { player: open.current.player, microphone: null };
    setMicrophone(null);
    setLatency(null);
    setFault(inHand.current === null ? words.takes.setUp.gone : words.takes.recording.goneMidway);
    void latestStop.current();
  };
  const measure = async () => {
    if (microphone === null) return;
    setBusy('measuring');
    setLatency((await measureLatency(microphone)) ?? 'unheard');
    setBusy(null);
  };
  const areSettingsRight = (): boolean => {
    const parsed = parseTakeContext(settingsToContext(settings, null));
    setSettingsFault(parsed.ok ? null : { field: parsed.error.field, message: parsed.error.message });
    return parsed.ok;
  };
  const begin = async () => {
    if (microphone === null || !areSettingsRight()) return;
    setFault(null);
    const player = open.current?.player;
    const band = settings.company === 'band' ? bandOf(settings) : null;
    if (settings.company === 'band' && band === null)
      return setSettingsFault({ field: 'chart', message: words.takes.setUp.noChart });
    if (band !== null && player !== undefined) {
      setBusy('band');
      const isReady = await readyBand(player, band);
      setBusy(null);
      if (open.current === null) return; // the sheet was closed meanwhile
      if (!isReady) return setFault(words.takes.setUp.bandFailed);
    }
    const { clock } = microphone;
    const take = microphone.record();
    const company =
      settings.company === 'nothing'
        ? null
        : band !== null && player !== undefined
          ? startBand(player)
          : startClick(clock, {
              tempo: settings.tempo,
              beats: beatsPerBar(settings.metre),
              countInBars: settings.countInBars,
              goesOn: settings.company === 'click',
            });
    const timer = window.setTimeout(() => {
      setFault(words.takes.recording.tooLong);
      void stop();
    }, longestTake * 1000);
    inHand.current = { take, company, timer };
    setState({
      step: 'recording',
      seconds: take.seconds,
      isCountingIn: () =>
        company !== null && clock.currentTime < (company.barOneAt() ?? Number.POSITIVE_INFINITY),
    });
  };
  const stop = async () => {
    const hand = inHand.current;
    if (hand === null) return;
    inHand.current = null;
    window.clearTimeout(hand.timer);
    hand.company?.stop();
    const { samples, sampleRate, startedAt, sound } = await hand.take.stop();
    if (samples.length === 0) {
      setFault((told) => told ?? words.takes.recording.nothing);
      return setState({ step: 'setUp' });
    }
    const late = typeof latency === 'number' ? latency : 0;
    const barOneAt = hand.company?.barOneAt() ?? null;
    const offset = barOneAt === null ? null : barOneAt - startedAt + late;
    await listen({ samples, sampleRate }, sound, settingsToContext(settings, offset), true);
  };
  latestStop.current = stop;
  const listen = async (
    samples: Samples,
    sound: Blob | null,
    context: WrittenContext,
    isRecorded: boolean,
  ) => {
    setState({ step: 'listening', progress: null, isRecorded });
    const hand = listenTo(
      { ...samples, context },
      (progress) => setState({ step: 'listening', progress, isRecorded }),
      words.takes.listening.stopped,
    );
    listening.current = hand;
    const answer = await hand.answer;
    listening.current = null;
    if (answer === null) return setState({ step: 'setUp' });
    if (typeof answer === 'string') {
      setFault(answer);
      return setState({ step: 'setUp' });
    }
    const offClick = context.offsetS !== null && answer.context.offsetS === null;
    setState({ step: 'heard', heard: answer, samples, sound, offClick, isRecorded });
  };
  const openFile = async (file: File) => {
    if (!areSettingsRight()) return;
    setFault(null);
    setState({ step: 'listening', progress: null, isRecorded: false });
    const decoded = await decodeSound(file);
    if (decoded.ok)
      return listen(decoded.value, file, settingsToContext(settingsOfFile(settings), null), false);
    setFault(words.takes.decode[decoded.error]);
    setState({ step: 'setUp' });
  };
  const cancel = () => {
    letGo(inHand);
    listening.current?.cancel();
    setState({ step: 'setUp' });
  };
  return {
    state,
    microphone,
    busy,
    latency,
    fault,
    settingsFault,
    openIt,
    measure,
    begin,
    stop,
    openFile,
    cancel,
    again: () => setState({ step: 'setUp' }),
  };
}

/** Why there is no microphone, by the browser's own name for it (W3C Media Capture and Streams, `getUserMedia`). */
function sayNoMicrophone(error: unknown): string {
  const { setUp } = words.takes;
  switch (error instanceof Error ? error.name : '') {
    case 'NotAllowedError':
      return setUp.refused;
    case 'NotFoundError':
      return setUp.missing;
    case 'NotReadableError':
      return setUp.inUse;
    case 'SecurityError':
      return setUp.insecure;
    default:
      return setUp.noMicrophone;
  }
}

function letGo(inHand: {
  current: { take: TakeInHand; company: Company | null; timer: number } | null;
}): void {
  const hand = inHand.current;
  if (hand === null) return;
  inHand.current = null;
  window.clearTimeout(hand.timer);
  hand.company?.stop();
  hand.take.cancel();
}

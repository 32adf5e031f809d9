// The microphone: its samples with their place in the audio clock, its level, and beside them the compressed recording that
// can be kept. Echo cancelling, noise suppression and automatic gain are asked to stay off: they bend what is to be heard.

export interface Microphone {
  readonly clock: AudioContext;
  /** Loudest sample since last asked, 0 to 1. */
  level(): number;
  /** Whether the device or the system sends nothing at present: switched off at its own button, or by the system. */
  isMuted(): boolean;
  /** Told once when it goes away: unplugged, or its permission withdrawn. Not when it is closed here. */
  onGone(tell: () => void): void;
  /** Begins a take. */
  record(): TakeInHand;
  close(): void;
}

export interface RecordedTake {
  readonly samples: Float32Array<ArrayBuffer>;
  readonly sampleRate: number;
  /** Where in the audio clock the first sample lies, in seconds. */
  readonly startedAt: number;
  /** The sound to keep; null where this browser cannot compress it. */
  readonly sound: Blob | null;
}

export interface TakeInHand {
  /** Seconds recorded so far. */
  seconds(): number;
  stop(): Promise<RecordedTake>;
  cancel(): void;
}

/** Kept sounds are mono and small; 40 kbit/s of Opus leaves an instrument's tone well recognisable. Our own choice. */
const bitsPerSecond = 40_000;
const soundTypes = ['audio/webm;codecs=opus', 'audio/ogg;codecs=opus', 'audio/mp4'];

/** Whether the browser lets this page use the microphone without asking; false where it does not say. */
export async function isMicrophoneGranted(): Promise<boolean> {
  try {
    return (await navigator.permissions.query({ name: 'microphone' })).state === 'granted';
  } catch {
    return false;
  }
}

/** Opens the microphone on a clock that its caller closes; throws the browser's own error when that is refused or there is none. */
export async function openMicrophone(clock: AudioContext): Promise<Microphone> {
  const stream = await navigator.mediaDevices.getUserMedia({
    audio: { echoCancellation: false, noiseSuppression: false, autoGainControl: false, channelCount: 1 },
  });
  await clock.resume();
  const stopTracks = () => {
    for (const track of stream.getTracks()) track.stop();
  };
  try {
    await clock.audioWorklet.addModule('/take-capture.js');
  } catch (error) {
    stopTracks();
    throw error;
  }
  const source = clock.createMediaStreamSource(stream);
  const capture = new AudioWorkletNode(clock, 'take-capture', { numberOfOutputs: 0 });
  source.connect(capture);
  let loudest = 0;
  let taking: { at: number | null; readonly chunks: Float32Array[]; length: number } | null = null;
  capture.port.onmessage = ({ data }: MessageEvent<{ at: number; samples: Float32Array }>) => {
    for (const sample of data.samples) loudest = Math.max(loudest, Math.abs(sample));
    if (taking === null) return;
    taking.at ??= data.at;
    taking.chunks.push(data.samples);
    taking.length += data.samples.length;
  };
  const [track] = stream.getAudioTracks();
  return {
    clock,
    isMuted: () => track?.muted ?? false,
    onGone: (tell) => track?.addEventListener('ended', tell, { once: true }),
    level() {
      const level = loudest;
      loudest = 0;
      return level;
    },
    record() {
      const hand = { at: null as number | null, chunks: [] as Float32Array[], length: 0 };
      taking = hand;
      const compressed = compress(stream);
      return {
        seconds: () => hand.length / clock.sampleRate,
        async stop() {
          taking = null;
          const sound = await compressed.stop();
          const samples = new Float32Array(hand.length);
          let at = 0;
          for (const chunk of hand.chunks) {
            samples.set(chunk, at);
            at += chunk.length;
          }
          return { samples, sampleRate: clock.sampleRate, startedAt: hand.at ?? clock.currentTime, sound };
        },
        cancel() {
          taking = null;
          void compressed.stop();
        },
      };
    },
    close() {
      taking = null;
      stopTracks();
      capture.port.onmessage = null;
      source.disconnect();
    },
  };
}

function compress(stream: MediaStream): { stop(): Promise<Blob | null> } {
  const type = soundTypes.find((one) => MediaRecorder.isTypeSupported(one));
  if (type === undefined) return { stop: async () => null };
  const recorder = new MediaRecorder(stream, { mimeType: type, audioBitsPerSecond: bitsPerSecond });
  const parts: Blob[] = [];
  recorder.ondataavailable = ({ data }) => parts.push(data);
  // It also ends by itself, when the microphone is unplugged; what it has until then counts.
  const ended = new Promise<Blob | null>((done) => {
    recorder.onstop = () => done(parts.length === 0 ? null : new Blob(parts, { type }));
  });
  recorder.start();
  return {
    stop() {
      if (recorder.state !== 'inactive') recorder.stop();
      return ended;
    },
  };
}

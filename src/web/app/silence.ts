// Notices that a line has gone dead. A network that went away says nothing of it: a channel that only listens would wait for
// ever on a line whose other end is gone.

export interface SilenceParts {
  /** Calls back after some milliseconds; returns how to call it off. */
  readonly after: (milliseconds: number, callback: () => void) => () => void;
  /** The longest silence that is nothing. */
  readonly longestMilliseconds: number;
}

export interface SilenceWatch {
  /** Something was heard, or the line was opened anew: the silence begins again from here. */
  heard(): void;
  stop(): void;
}

/** Tells, once, when nothing was heard for too long since `heard` was last called. */
export function watchSilence({ after, longestMilliseconds }: SilenceParts, tell: () => void): SilenceWatch {
  let callOff = () => {};
  return {
    heard() {
      callOff();
      callOff = after(longestMilliseconds, tell);
    },
    stop: () => callOff(),
  };
}

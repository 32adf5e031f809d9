// A note as it was heard: the row that alignment, evidence and the screens build on.

/** One heard note. Times are seconds from the file's start. */
export interface HeardNote {
  /** Where the sound begins. */
  readonly onset: number;
  /** Where it ends; at most the next note's onset. */
  readonly offset: number;
  /** The nearest key of equal temperament at A4 = 440 Hz, a whole MIDI number. */
  readonly midi: number;
  /** How far the middle of the note lies from that key, in cents, -50 … 50. */
  readonly cents: number;
  /** Loudness of its louder part, dB relative to full scale. */
  readonly db: number;
  /** 0 … 1: how surely there is a note of this pitch here. */
  readonly confidence: number;
}

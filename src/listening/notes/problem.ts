// Why a take could not be heard, or not well: said instead of guessing.

/** What stands in the way of hearing a take; figures say how much. Shares are 0 … 1 of the time looked at. */
export type Problem =
  /** The samples cannot be read at this rate (hertz): it lies outside 4 000 … 400 000. */
  | { readonly kind: 'RateUnusable'; readonly sampleRate: number }
  /** Less than a tenth of a second of sound: nothing was heard. */
  | { readonly kind: 'TooShort'; readonly seconds: number }
  /** Silent, or so quiet that no note rises above the noise; `db` is the level of the loud moments. */
  | { readonly kind: 'TooQuiet'; readonly db: number }
  /** The recording was cut off at full scale in this share of its loud moments. */
  | { readonly kind: 'Clipped'; readonly share: number }
  /** This share of the sound has no pitch. */
  | { readonly kind: 'MostlyNoise'; readonly share: number }
  /** Other pitches sound beside the player's own in this share of the notes. */
  | { readonly kind: 'MoreThanOneVoice'; readonly share: number }
  /** What sounds between the notes is only this many dB softer than they are. */
  | { readonly kind: 'BackingTooLoud'; readonly db: number }
  /** This share of the notes was heard clearly, yet outside what the instrument can play. */
  | { readonly kind: 'OutsideRange'; readonly share: number }
  /** The pitch glides as in talking in this share of the time; notes of such stretches are left out. */
  | { readonly kind: 'SpeechLike'; readonly share: number };

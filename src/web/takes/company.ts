/** What is heard while playing: a click or a band. */
export interface Company {
  /** Where in the audio clock the first beat of bar 1, after the count-in, falls; null before that is known. */
  barOneAt(): number | null;
  stop(): void;
}

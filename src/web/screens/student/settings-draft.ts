// The numbers that govern how a course is planned, as typed, with their ranges.

import type { CourseSettings } from '#planning';

export interface SettingRange {
  readonly key: keyof CourseSettings;
  readonly low: number;
  readonly high: number;
  /** Shares are typed in per cent. */
  readonly share: boolean;
}

/** In the order they are shown; the ranges are those of the contract's `course.change`. */
export const settingRanges: readonly SettingRange[] = [
  { key: 'overrun', low: 2, high: 45, share: true },
  { key: 'retention', low: 70, high: 97, share: true },
  { key: 'maxRun', low: 1, high: 10, share: false },
  { key: 'parkGap', low: 0, high: 6, share: false },
  { key: 'settlingIn', low: 0, high: 20, share: false },
  { key: 'recap', low: 0, high: 20, share: false },
  { key: 'revisit', low: 0, high: 40, share: false },
  { key: 'settingPractice', low: 0, high: 20, share: false },
  { key: 'mostBlocks', low: 1, high: 10, share: false },
  { key: 'mostStrands', low: 1, high: 8, share: false },
];

export type SettingsDraft = Readonly<Record<keyof CourseSettings, string>>;

/** `settingsToDraft({ overrun: 0.2, … }).overrun` → `20` */
export function settingsToDraft(settings: CourseSettings): SettingsDraft {
  const text = ({ key, share }: SettingRange) =>
    String(share ? Math.round(settings[key] * 100) : settings[key]);
  const entries = settingRanges.map((range) => [range.key, text(range)]);
  return Object.fromEntries(entries) as SettingsDraft; // one entry for every key of the table above
}

/** Whether one number is whole and in its range. */
export function isSettingRight(range: SettingRange, text: string): boolean {
  const value = Number(text);
  return text.trim() !== '' && Number.isInteger(value) && value >= range.low && value <= range.high;
}

/** The settings, or null while a number is not right. */
export function draftToSettings(draft: SettingsDraft): CourseSettings | null {
  if (!settingRanges.every((range) => isSettingRight(range, draft[range.key]))) return null;
  const value = ({ key, share }: SettingRange) => (share ? Number(draft[key]) / 100 : Number(draft[key]));
  return Object.fromEntries(
    settingRanges.map((range) => [range.key, value(range)]),
  ) as unknown as CourseSettings;
}

// The planning defaults as the form holds them: text, with shares in per cent.

import { type CourseSettings, defaultCourseSettings } from '#planning';
import { words } from '../../words/index.ts';

export type SettingName = keyof CourseSettings;
export type PlanningDraft = Readonly<Record<SettingName, string>>;

interface Bounds {
  readonly low: number;
  readonly high: number;
  /** The form shows this many for 1 of the setting: 100 for shares. */
  readonly scale: 1 | 100;
}

/** As the contract allows them. */
export const bounds: Readonly<Record<SettingName, Bounds>> = {
  overrun: { low: 2, high: 45, scale: 100 },
  retention: { low: 70, high: 97, scale: 100 },
  maxRun: { low: 1, high: 10, scale: 1 },
  parkGap: { low: 0, high: 6, scale: 1 },
  settlingIn: { low: 0, high: 20, scale: 1 },
  settingPractice: { low: 0, high: 20, scale: 1 },
  recap: { low: 0, high: 20, scale: 1 },
  revisit: { low: 0, high: 40, scale: 1 },
  mostBlocks: { low: 1, high: 10, scale: 1 },
  mostStrands: { low: 1, high: 8, scale: 1 },
};

export const settingNames = Object.keys(bounds).filter((name): name is SettingName => name in bounds);

const shown = (settings: CourseSettings, name: SettingName) =>
  String(Math.round(settings[name] * bounds[name].scale));

/** Settings as the form shows them. `overrun: 0.2` → `overrun: '20'` */
export function settingsToDraft(settings: CourseSettings): PlanningDraft {
  return {
    overrun: shown(settings, 'overrun'),
    retention: shown(settings, 'retention'),
    maxRun: shown(settings, 'maxRun'),
    parkGap: shown(settings, 'parkGap'),
    settlingIn: shown(settings, 'settlingIn'),
    settingPractice: shown(settings, 'settingPractice'),
    recap: shown(settings, 'recap'),
    revisit: shown(settings, 'revisit'),
    mostBlocks: shown(settings, 'mostBlocks'),
    mostStrands: shown(settings, 'mostStrands'),
  };
}

/** The starting values, as the form shows them. */
export const usualDraft: PlanningDraft = settingsToDraft(defaultCourseSettings);

/** What is wrong with one field, or null. */
export function findSettingFault(name: SettingName, text: string): string | null {
  const { low, high } = bounds[name];
  const value = Number(text);
  if (text.trim() !== '' && Number.isInteger(value) && value >= low && value <= high) return null;
  return words.settings.planning.between(low, high, words.settings.planning.defaults[name].unit);
}

/** The settings a draft stands for; null while something in it is wrong. */
export function draftToSettings(draft: PlanningDraft): CourseSettings | null {
  if (settingNames.some((name) => findSettingFault(name, draft[name]) !== null)) return null;
  const value = (name: SettingName) => Number(draft[name]) / bounds[name].scale;
  return {
    overrun: value('overrun'),
    retention: value('retention'),
    maxRun: value('maxRun'),
    parkGap: value('parkGap'),
    settlingIn: value('settlingIn'),
    settingPractice: value('settingPractice'),
    recap: value('recap'),
    revisit: value('revisit'),
    mostBlocks: value('mostBlocks'),
    mostStrands: value('mostStrands'),
  };
}

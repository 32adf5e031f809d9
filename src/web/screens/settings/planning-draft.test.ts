import { expect, test } from 'vitest';
import { commandSchema } from '#contract';
import { defaultCourseSettings } from '#planning';
import {
  bounds,
  draftToSettings,
  findSettingFault,
  settingNames,
  settingsToDraft,
  usualDraft,
} from './planning-draft.ts';

test('settings go through the form unchanged', () => {
  expect(draftToSettings(settingsToDraft(defaultCourseSettings))).toEqual(defaultCourseSettings);
});

test('the form allows what the contract allows, to its ends and not past them', () => {
  const taken = (text: string, name: (typeof settingNames)[number]) => {
    const defaults = draftToSettings({ ...usualDraft, [name]: text });
    return defaults !== null && commandSchema.safeParse({ type: 'studio.change', seen: 0, defaults }).success;
  };
  for (const name of settingNames) {
    const { low, high, scale } = bounds[name];
    expect([name, taken(String(low), name), taken(String(high), name)]).toEqual([name, true, true]);
    expect(findSettingFault(name, String(low - 1))).not.toBeNull();
    expect(findSettingFault(name, String(high + 1))).not.toBeNull();
    // One step past either end is refused by the contract too.
    for (const value of [(low - 1) / scale, (high + 1) / scale]) {
      const defaults = { ...defaultCourseSettings, [name]: value };
      expect(commandSchema.safeParse({ type: 'studio.change', seen: 0, defaults }).success).toBe(false);
    }
  }
});

test.each(['', ' ', 'two', '2.5'])('%j is not a whole number', (text) => {
  expect(findSettingFault('recap', text)).not.toBeNull();
});

import { describe, expect, it } from 'vitest';
import { courseSettingsForTest } from '../../score/course.fixture.ts';
import { draftToSettings, settingRanges, settingsToDraft } from './settings-draft.ts';

describe('the settings of a course as typed', () => {
  const settings = courseSettingsForTest;
  it('show shares in per cent and come back the same', () => {
    const draft = settingsToDraft(settings);
    expect(draft.overrun).toBe('20');
    expect(draft.retention).toBe('85');
    expect(draftToSettings(draft)).toEqual(settings);
  });
  it('are refused out of range, empty, or broken', () => {
    const draft = settingsToDraft(settings);
    for (const range of settingRanges)
      for (const text of [String(range.low - 1), String(range.high + 1), '', 'x', `${range.low}.5`])
        expect(draftToSettings({ ...draft, [range.key]: text })).toBeNull();
  });
  it('name every setting there is', () => {
    expect(settingRanges.map((range) => range.key).sort()).toEqual(Object.keys(settings).sort());
  });
});

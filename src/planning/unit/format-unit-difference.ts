import { unreachable } from '#core';
import type { ActivityField, Change, CheckField, Place, UnitDifference, UnitField } from './compare-units.ts';

/** A difference as a sentence; long texts are named, not quoted. */
export function formatUnitDifference(difference: UnitDifference): string {
  switch (difference.kind) {
    case 'FieldChanged':
      return `${fieldNames[difference.field]} ${sayChange(difference)}.`;
    case 'SkillAdded':
      return `Skill added: ${sayName(difference.skill)}.`;
    case 'SkillRemoved':
      return `Skill removed: ${sayName(difference.skill)}.`;
    case 'ActivityAdded':
      return `${difference.extension ? 'Extension' : 'Activity'} added: “${difference.title}”.`;
    case 'ActivityRemoved':
      return `${difference.extension ? 'Extension' : 'Activity'} removed: “${difference.title}”.`;
    case 'ActivityMoved':
      return `“${difference.title}” moved from ${sayPlace(difference.before)} to ${sayPlace(difference.after)}.`;
    case 'ActivityChanged':
      return `“${difference.title}”: ${activityFieldNames[difference.field]} ${sayChange(difference)}.`;
    case 'CheckAdded':
      return `Check added: ${sayName(difference.key)}.`;
    case 'CheckRemoved':
      return `Check removed: ${sayName(difference.key)}.`;
    case 'CheckChanged':
      return `Check ${sayName(difference.key)}: ${checkFieldNames[difference.field]} ${sayChange(difference)}.`;
    case 'NextAdded':
      return `May now be followed by ${sayName(difference.unit)}.`;
    case 'NextRemoved':
      return `No longer followed by ${sayName(difference.unit)}.`;
    default:
      return unreachable(difference);
  }
}

const fieldNames: Readonly<Record<UnitField, string>> = {
  title: 'The title',
  area: 'The area',
  goal: 'The goal',
  about: 'The note for the teacher',
  stages: 'The stages',
  ages: 'The ages',
  families: 'The instrument families',
};
const activityFieldNames: Readonly<Record<ActivityField, string>> = {
  title: 'the title',
  howTo: 'the how-to',
  minutes: 'the minutes',
  develops: 'the skills',
  character: 'the place in the lesson',
  variants: 'the variants',
  materials: 'the materials',
  bring: 'what to bring',
};
const checkFieldNames: Readonly<Record<CheckField, string>> = {
  skill: 'the skill',
  level: 'the level',
  lookFor: 'what to look for',
  listenFor: 'what a take shows of it',
};

/** Keys and ids are words joined by hyphens, read as such: `skill:long-short` → `“long short”` */
function sayName(id: string): string {
  return `“${id.slice(id.indexOf(':') + 1).replaceAll('-', ' ')}”`;
}

function sayPlace({ extension, index }: Place): string {
  return `${extension ? 'extension' : 'activity'} ${index + 1}`;
}

function sayChange({ before, after }: Change): string {
  const [old, fresh] = [sayShort(before), sayShort(after)];
  return old === null || fresh === null ? 'changed' : `changed from ${old} to ${fresh}`;
}

function sayShort(value: unknown): string | null {
  if (typeof value === 'number') return String(value);
  if (typeof value === 'string') return value.length <= 80 && !value.includes('\n') ? `“${value}”` : null;
  if (Array.isArray(value)) {
    if (value.length === 0) return 'none';
    return value.length <= 6 && value.every((item) => typeof item === 'string') ? value.join(', ') : null;
  }
  if (typeof value === 'object' && value !== null) {
    const parts = Object.values(value);
    return parts.length <= 3 && parts.every((part) => typeof part === 'number') ? parts.join('–') : null;
  }
  return null;
}

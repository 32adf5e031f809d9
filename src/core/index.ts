// core: the words every other module speaks. Results, ids, stages, texts, days, clock, chance.

export { assert, present, unreachable } from './assert.ts';
export { type Clock, createFixedClock, createSystemClock } from './clock.ts';
export { type Fields, isFields } from './fields.ts';
export { type Brand, createId, type Id, isId } from './id.ts';
export { formatJsonFault, type JsonFault, parseJson } from './json-text.ts';
export { type MergedText, mergeEdits, mergeTexts } from './merge-text.ts';
export { modulo } from './modulo.ts';
export { nearestWord, nearWord } from './nearest-word.ts';
export {
  addDays,
  addMinutes,
  ageOn,
  type DateUnreadable,
  daysBetween,
  isDate,
  isoWeekOf,
  isTime,
  minutesOf,
  type PlainDate,
  type PlainTime,
  parseDate,
  parseTime,
  type TimeUnreadable,
  type Weekday,
  weekdayOf,
  weekdays,
} from './plain-date.ts';
export { chooseOne, createSeededRandom, type Random, randomInteger, randomNormal } from './random.ts';
export { type Err, err, type Ok, ok, type Result } from './result.ts';
export { type Stage, stages } from './stage.ts';
export { applyEdit, type Edit, editBetween } from './text-edit.ts';
export { isTimeZone, secondsAt, wallAt } from './time-zone.ts';

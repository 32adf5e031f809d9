// Founding a studio, and changing what is said about it.

import { isTimeZone, ok } from '#core';
import { defaultCourseSettings } from '#planning';
import { studioId } from '../record/studio-id.ts';
import type { Handler } from './desk.ts';
import { changedElsewhere, invalid, notAllowed, notFound } from './fault.ts';
import { unitRows } from './unit-rows.ts';

export const foundStudio: Handler<'studio.found'> = async (desk, command) => {
  const { tx, outside } = desk;
  if ((await tx.get('studio', studioId)) !== null)
    return notAllowed('There is a studio here already. To start another, give it a data folder of its own.');
  if (!isTimeZone(command.timeZone))
    return invalid('timeZone', `“${command.timeZone}” is not a time zone. Write one like Europe/Lisbon.`);
  await tx.put('studio', {
    id: studioId,
    revision: 1,
    name: command.name,
    teacher: command.teacher,
    timeZone: command.timeZone,
    locale: command.locale,
    noteNames: /^en-(US|CA)\b/.test(command.locale) ? 'american' : 'british',
    paper: /-(US|CA|MX)\b/.test(command.locale) ? 'Letter' : 'A4',
    defaults: defaultCourseSettings,
    pace: null,
    demo: false,
  });
  if (command.starterUnits && outside.starter !== undefined) {
    for (const skill of outside.starter.skills) await tx.put('skill', skill);
    for (const unit of outside.starter.units) {
      const rows = unitRows(unit, 1, outside.clock.instant());
      await tx.put('unit', rows.unit);
      await tx.put('unitVersion', rows.version);
    }
  }
  return ok(`Founded the studio “${command.name}”`);
};

export const changeStudio: Handler<'studio.change'> = async (desk, command) => {
  const studio = await desk.tx.get('studio', studioId);
  if (studio === null) return notFound('studio');
  if (!desk.imagining && studio.revision !== command.seen)
    return changedElsewhere(desk.tx, 'studio', studioId, 'The studio');
  if (command.timeZone !== undefined && !isTimeZone(command.timeZone))
    return invalid('timeZone', `“${command.timeZone}” is not a time zone. Write one like Europe/Lisbon.`);
  await desk.tx.put('studio', {
    ...studio,
    revision: studio.revision + 1,
    name: command.name ?? studio.name,
    teacher: command.teacher ?? studio.teacher,
    timeZone: command.timeZone ?? studio.timeZone,
    locale: command.locale ?? studio.locale,
    noteNames: command.noteNames ?? studio.noteNames,
    paper: command.paper ?? studio.paper,
    defaults: command.defaults ?? studio.defaults,
  });
  return ok('Changed the studio’s settings');
};

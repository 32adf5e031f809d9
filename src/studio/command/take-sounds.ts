// The sounds of takes: kept apart from the journal, held by at most one take, and deleted for good once none holds them.

import { mostStudioSoundBytes } from '#contract';
import { addDays, type Id } from '#core';
import type { SoundId, TakeRecord } from '../record/records.ts';
import type { Reader } from '../record/store.ts';
import type { Desk } from './desk.ts';

/** How long a sound outlives the take that held it, so that a slip of the finger can be taken back. */
const daysKept = 7;

const dataId = (sound: SoundId) => `sound-data:${sound.slice('sound:'.length)}` as Id<'sound-data'>;

/** Bytes that one more sound may have before the studio's sounds are more than its export can carry. */
export async function findRoom(reader: Reader): Promise<number> {
  const sounds = await reader.list('sound');
  return mostStudioSoundBytes - sounds.reduce((sum, sound) => sum + sound.bytes, 0);
}

/** Bytes that a base64 text stands for. `bytesOfBase64('AAA=')` → 2 */
export const bytesOfBase64 = (data: string): number =>
  Math.floor((data.length * 3) / 4) - (data.endsWith('==') ? 2 : data.endsWith('=') ? 1 : 0);

/** Keeps a sound that a take of the same change will hold. */
export async function putSound(desk: Desk, id: SoundId, type: string, data: string): Promise<void> {
  await desk.tx.put('sound', { id, type, bytes: bytesOfBase64(data), unheldSince: null });
  await desk.tx.put('soundData', { id: dataId(id), sound: id, data });
}

/** Deletes a sound for good. The take that holds it must let go of it in the same change. */
export async function eraseSound(desk: Desk, id: SoundId): Promise<void> {
  await desk.tx.remove('soundData', dataId(id));
  await desk.tx.remove('sound', id);
}

/** Notes since when no take holds a sound, or that one does. */
export async function tendSound(desk: Desk, id: SoundId | null): Promise<void> {
  const sound = id === null ? null : await desk.tx.get('sound', id);
  if (sound === null) return;
  const held = (await desk.tx.list('take', { where: { sound: sound.id } })).length > 0;
  const unheldSince = held ? null : (sound.unheldSince ?? desk.today);
  if (unheldSince !== sound.unheldSince) await desk.tx.put('sound', { ...sound, unheldSince });
}

/** Deletes the sounds that no take has held for some days. */
export async function sweepSounds(desk: Desk): Promise<void> {
  const to = addDays(desk.today, -daysKept);
  // Rows without a day are in no range.
  for (const sound of await desk.tx.list('sound', { range: { column: 'unheldSince', from: '0000', to } }))
    await eraseSound(desk, sound.id);
}

/** Takes a take away; levels that rested on it stay, and its sound is deleted some days later. */
export async function removeTake(desk: Desk, take: TakeRecord): Promise<void> {
  for (const level of await desk.tx.list('observation', { where: { take: take.id } }))
    await desk.tx.put('observation', { ...level, take: null });
  await desk.tx.remove('take', take.id);
  await tendSound(desk, take.sound);
}

/** Puts a take back as it was, without its sound where that is gone for good. */
export async function putBackTake(desk: Desk, take: TakeRecord): Promise<void> {
  const gone = take.sound !== null && (await desk.tx.get('sound', take.sound)) === null;
  if (gone) desk.notices.push(`The sound of “${take.title}” was deleted for good and does not come back.`);
  await desk.tx.put('take', gone ? { ...take, sound: null } : take);
  await tendSound(desk, take.sound);
}

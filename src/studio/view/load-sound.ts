import type { TakeId } from '../record/records.ts';
import type { Reader } from '../record/store.ts';

/** The sound of a take: its media type and its bytes in base64; null when there is no such take, or no sound with it. */
export async function loadSound(
  reader: Reader,
  id: TakeId,
): Promise<{ readonly type: string; readonly data: string } | null> {
  const take = await reader.get('take', id);
  const sound = take?.sound == null ? null : await reader.get('sound', take.sound);
  if (sound === null) return null;
  const [bytes] = await reader.list('soundData', { where: { sound: sound.id } });
  return bytes === undefined ? null : { type: sound.type, data: bytes.data };
}

import { handOver } from '../app/hand-over.ts';

/** Endings that are not the media type's own name; common practice, no source. */
const endings: Readonly<Record<string, string>> = {
  mp4: 'm4a',
  'x-m4a': 'm4a',
  mpeg: 'mp3',
  wave: 'wav',
  'x-wav': 'wav',
  'vnd.wave': 'wav',
  'x-flac': 'flac',
};

/** A file's name for the sound of a take. `nameSound('Blues: take 2', 'audio/webm;codecs=opus')` → `Blues take 2.webm` */
export function nameSound(title: string, type: string): string {
  const kind = /^\w+\/([\w.+-]+)/.exec(type)?.[1]?.toLowerCase() ?? 'webm';
  // What no file system takes in a name, or hides a file by.
  const name = title
    .replace(/[\p{Cc}\\/:*?"<>|]+/gu, ' ')
    .replace(/\s+/g, ' ')
    .replace(/^[. ]+|[. ]+$/g, '');
  return `${name || 'take'}.${endings[kind] ?? kind}`;
}

/** Gives the browser the sound of a take as a file. */
export const saveSound = (sound: Blob, title: string): void => handOver(sound, nameSound(title, sound.type));

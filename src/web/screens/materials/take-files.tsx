// The sheet as a file to take along: for another notation editor, for a player of MIDI, for a page of one's own.

import { useEffect, useMemo } from 'react';
import { type DrawnSheet, pagesToSvgFile } from '#engraving';
import { scoreToMidi, scoreToMusicXml } from '#music';
import { words } from '../../words/index.ts';
import { titleToSlug } from '../units/slug.ts';

const says = words.materials;

export function TakeFiles({ drawn }: { readonly drawn: DrawnSheet }) {
  const name = titleToSlug(drawn.sheet.title, 'sheet');
  const files = useMemo(() => {
    const { score } = drawn.sheet;
    const at = (parts: readonly BlobPart[], type: string) =>
      URL.createObjectURL(new Blob([...parts], { type }));
    return [
      {
        label: says.files.musicxml,
        file: `${name}.musicxml`,
        url: at([scoreToMusicXml(score)], 'application/vnd.recordare.musicxml+xml'),
      },
      {
        label: says.files.midi,
        file: `${name}.mid`,
        url: at([new Uint8Array(scoreToMidi(score))], 'audio/midi'),
      },
      { label: says.files.svg, file: `${name}.svg`, url: at([pagesToSvgFile(drawn.pages)], 'image/svg+xml') },
    ];
  }, [drawn, name]);
  useEffect(
    () => () => {
      for (const { url } of files) URL.revokeObjectURL(url);
    },
    [files],
  );
  return (
    <p className="take-files no-print">
      <span className="soft">{says.take}: </span>
      {files.map(({ label, file, url }) => (
        <a key={label} href={url} download={file}>
          {label}
        </a>
      ))}
    </p>
  );
}

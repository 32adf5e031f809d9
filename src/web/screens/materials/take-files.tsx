// The sheet as a file to take along: for a printer, for another notation editor, for a player of MIDI, for a page of one's
// own. Each is made when it is asked for, so that no change of the sheet waits for them; the PDF where Levare runs.

import { useState } from 'react';
import type { SheetPdf } from '#contract';
import { ok, type Result } from '#core';
import { type DrawnSheet, pagesToSvgFile } from '#engraving';
import { scoreToMidi, scoreToMusicXml } from '#music';
import { type ApiFault, postForFile } from '../../app/api.ts';
import { handOver } from '../../app/hand-over.ts';
import { showFault } from '../../app/send.ts';
import { Button } from '../../components/button.tsx';
import { words } from '../../words/index.ts';
import { titleToSlug } from '../units/slug.ts';

const says = words.materials;

export interface TakeFilesProps {
  readonly drawn: DrawnSheet;
  /** What the sheet is made from. */
  readonly wish: SheetPdf;
}

type Made = Result<Blob, ApiFault>;

export function TakeFiles({ drawn, wish }: TakeFilesProps) {
  const { score, title } = drawn.sheet;
  const here = (part: BlobPart, type: string): Made => ok(new Blob([part], { type }));
  const files: readonly TakeFileProps[] = [
    { label: says.files.pdf, ending: 'pdf', make: () => postForFile('/api/sheets/pdf', wish) },
    {
      label: says.files.musicxml,
      ending: 'musicxml',
      make: () => here(scoreToMusicXml(score), 'application/vnd.recordare.musicxml+xml'),
    },
    {
      label: says.files.midi,
      ending: 'mid',
      make: () => here(new Uint8Array(scoreToMidi(score)), 'audio/midi'),
    },
    { label: says.files.svg, ending: 'svg', make: () => here(pagesToSvgFile(drawn.pages), 'image/svg+xml') },
  ].map((file) => ({ ...file, name: `${titleToSlug(title, 'sheet')}.${file.ending}` }));
  return (
    <p className="take-files no-print">
      <span className="soft">{says.take}: </span>
      {files.map((file) => (
        <TakeFile key={file.label} {...file} />
      ))}
    </p>
  );
}

interface TakeFileProps {
  readonly label: string;
  readonly name: string;
  readonly make: () => Made | Promise<Made>;
}

function TakeFile({ label, name, make }: TakeFileProps) {
  const [isBusy, setIsBusy] = useState(false);
  const take = async () => {
    setIsBusy(true);
    const made = await make();
    setIsBusy(false);
    if (made.ok) handOver(made.value, name);
    else showFault(made.error);
  };
  return (
    <Button kind="plain" pending={isBusy} onPress={() => void take()}>
      {isBusy ? says.making(label) : label}
    </Button>
  );
}

// The bands of a segment, in the lesson itself, with the sheets that go along with them; arrows and pages stay the lesson's.

import { lazy, Suspense, useMemo, useState } from 'react';
import type { LessonSegmentView, LessonView } from '#contract';
import type { DrawnSheet } from '#engraving';
import {
  type BackingMaterial,
  backingToSpec,
  findInstrument,
  fitBacking,
  type MaterialSpec,
  parseBackingMaterial,
  parseMaterialSpec,
  playsSameChords,
  scoreToBacking,
  sheetPlaces,
} from '#music';
import { Button } from '../../components/button.tsx';
import { seedOf } from '../../components/material-seed.ts';
import { useSheet } from '../../engraver/use-sheet.ts';
import { FollowedSheet } from '../../sound/followed-sheet.tsx';
import { SheetWithBand } from '../../sound/sheet-with-band.tsx';
import { useFollowing } from '../../sound/use-following.ts';
import { words } from '../../words/index.ts';

const BandPlayer = lazy(async () => ({ default: (await import('../../sound/band-player.tsx')).BandPlayer }));

/** As wide as a practice sheet, and the most of a page at a time. */
const column = { widthMm: 182, mostHeightMm: 235 } as const;

export interface SegmentBandsProps {
  readonly lesson: LessonView;
  readonly segment: LessonSegmentView;
}

interface ChordSheet {
  readonly key: string;
  readonly title: string;
  readonly spec: MaterialSpec;
  readonly seed: number;
}

interface Band {
  readonly key: string;
  readonly material: BackingMaterial;
  readonly seed: number;
}

export function SegmentBands({ lesson, segment }: SegmentBandsProps) {
  const { bands, sheets } = useMemo(() => read(lesson, segment), [lesson, segment]);
  const [first] = bands;
  return (
    <>
      {bands.map((band) => (
        <BandWithSheets
          key={band.key}
          band={band}
          learner={lesson.learner}
          sheets={band === first ? sheets : []}
        />
      ))}
      {first === undefined &&
        sheets.map((sheet) => <SheetOnDemand key={sheet.key} sheet={sheet} learner={lesson.learner} />)}
    </>
  );
}

function read(
  lesson: LessonView,
  segment: LessonSegmentView,
): { readonly bands: readonly Band[]; readonly sheets: readonly ChordSheet[] } {
  const { instrument, stage, age } = lesson.learner;
  const plays = findInstrument(instrument);
  const bands: Band[] = [];
  const sheets: ChordSheet[] = [];
  for (const material of segment.materials) {
    const { key, title } = material;
    const seed = seedOf(lesson, segment, material);
    const band = parseBackingMaterial(material.spec);
    if (band.ok) {
      const fitted =
        plays === null ? band.value : fitBacking(band.value, { instrument: plays, stage, age, seed });
      bands.push({ key, material: fitted, seed });
      continue;
    }
    const sheet = parseMaterialSpec(material.spec);
    if (sheet.ok && 'chart' in sheet.value && sheet.value.chart !== null)
      sheets.push({ key, title, spec: sheet.value, seed });
  }
  return { bands, sheets };
}

interface BandWithSheetsProps {
  readonly band: Band;
  readonly learner: LessonView['learner'];
  readonly sheets: readonly ChordSheet[];
}

function BandWithSheets({ band: { material, seed }, learner, sheets }: BandWithSheetsProps) {
  const following = useFollowing(material.chart);
  return (
    <Suspense fallback={null}>
      <BandPlayer
        spec={material}
        seed={seed}
        keysOnPage={false}
        isBrief
        reader={findInstrument(learner.instrument)}
        following={following}
      />
      {sheets.map((sheet) => (
        <Drawn key={sheet.key} sheet={sheet} learner={learner} heading="none">
          {(drawn) => {
            const own = scoreToBacking(drawn.sheet.score);
            return own !== null && playsSameChords(own, material) ? (
              <FollowedSheet
                pages={drawn.pages}
                places={sheetPlaces(drawn.sheet.score.bars, backingToSpec(material).chart)}
                following={following}
              />
            ) : null;
          }}
        </Drawn>
      ))}
    </Suspense>
  );
}

/** A sheet with chords and no band of its own: the band plays what stands on it. */
function SheetOnDemand({
  sheet,
  learner,
}: {
  readonly sheet: ChordSheet;
  readonly learner: LessonView['learner'];
}) {
  const [isOpen, setIsOpen] = useState(false);
  return isOpen ? (
    <Drawn sheet={sheet} learner={learner} heading="tempo">
      {(drawn) => <SheetWithBand drawn={drawn} seed={sheet.seed} keysOnPage={false} />}
    </Drawn>
  ) : (
    <p className="show-band-call">
      <Button large onPress={() => setIsOpen(true)}>
        {words.player.withBand(sheet.title)}
      </Button>
    </p>
  );
}

interface DrawnProps {
  readonly sheet: ChordSheet;
  readonly learner: LessonView['learner'];
  /** A band of another tempo says its own. */
  readonly heading: 'tempo' | 'none';
  readonly children: (drawn: DrawnSheet) => React.ReactNode;
}

function Drawn({ sheet, learner: { instrument, stage, age }, heading, children }: DrawnProps) {
  const { key, spec, seed } = sheet;
  const { answer } = useSheet({
    spec,
    instrument,
    stage,
    age,
    seed,
    drawing: { form: column, name: `segment-${key}`, heading, scale: 92 },
  });
  return answer?.ok ? children(answer.value) : null;
}

// The chart as a lead sheet for whoever reads it: looked at with the band going along, and printed.

import { useEffect, useMemo, useRef } from 'react';
import {
  type BackingMaterial,
  backingToSpec,
  feelById,
  formatChart,
  formatMetre,
  type InstrumentId,
  parseMaterialSpec,
  sheetPlaces,
} from '#music';
import { Button } from '../../components/button.tsx';
import { useSheet } from '../../engraver/use-sheet.ts';
import { useStudio } from '../../hooks/use-view.ts';
import { FollowedSheet } from '../../sound/followed-sheet.tsx';
import type { Following } from '../../sound/use-following.ts';
import { words } from '../../words/index.ts';

const says = words.player.band;

export interface LeadSheetProps {
  readonly material: BackingMaterial;
  readonly instrument: InstrumentId;
  readonly following: Following;
  /** Whether to print as soon as it is drawn. */
  readonly printsFirst: boolean;
  readonly onPrinted: () => void;
}

/** The chart of a backing track as a sheet: as it sounds, for `createSheet` to write for the instrument. */
function leadSheetSpec(material: BackingMaterial) {
  const { chart } = backingToSpec(material);
  const feel = feelById(material.feel);
  return parseMaterialSpec({
    kind: 'chart',
    chart: formatChart(chart),
    pitch: 'concert',
    metre: formatMetre(feel.metre),
    feel: feel.isSwung ? 'swing' : 'straight',
    style: says.feels[material.feel],
    tempo: Math.min(300, material.tempo),
    ...(material.title === null ? {} : { title: material.title }),
  });
}

export function LeadSheet({ material, instrument, following, printsFirst, onPrinted }: LeadSheetProps) {
  const studio = useStudio().data;
  const spec = useMemo(() => leadSheetSpec(material), [material]);
  const paper = studio?.paper === 'Letter' ? 'letter' : 'a4';
  const { answer, isDrawing } = useSheet(
    spec.ok
      ? {
          spec: spec.value,
          instrument,
          stage: 'advanced',
          age: null,
          seed: 1,
          drawing: { form: paper, name: 'lead-sheet', naming: studio?.noteNames ?? 'british' },
        }
      : null,
  );
  const drawn = answer?.ok ? answer.value : null;
  const places = useMemo(
    () => (drawn === null ? null : sheetPlaces(drawn.sheet.score.bars, backingToSpec(material).chart)),
    [drawn, material],
  );
  const isPrinted = useRef(false);
  useEffect(() => {
    if (!printsFirst || drawn === null || isDrawing || isPrinted.current) return;
    isPrinted.current = true;
    // When the pages stand in the document.
    requestAnimationFrame(() => {
      window.print();
      onPrinted();
    });
  }, [printsFirst, drawn, isDrawing, onPrinted]);
  if (!spec.ok) return <p className="fault">{spec.error.message}</p>;
  if (answer !== null && !answer.ok) return <p className="fault">{answer.error.message}</p>;
  if (drawn === null || places === null)
    return (
      <p className="soft" role="status">
        {words.materials.loading}
      </p>
    );
  return (
    <section className={`lead-sheet lead-sheet-${paper}`} aria-label={says.leadSheet} aria-busy={isDrawing}>
      <p className="no-print">
        <Button onPress={() => window.print()}>{says.printAgain}</Button>
      </p>
      <FollowedSheet pages={drawn.pages} places={places} following={following} pageClass="lead-sheet-page" />
    </section>
  );
}

// The chart as a lead sheet for whoever reads it: looked at with the band going along, and printed.

import { useEffect, useMemo, useRef, useState } from 'react';
import {
  type BackingMaterial,
  backingToSpec,
  createSheet,
  feelById,
  formatChart,
  formatMetre,
  type Instrument,
  parseMaterialSpec,
  type Score,
  sheetPlaces,
} from '#music';
import { Button } from '../../components/button.tsx';
import { wishScore } from '../../engraver/engraver.ts';
import type { ScoreAnswer, ScoreWish } from '../../engraver/sheet-wish.ts';
import { useStudio } from '../../hooks/use-view.ts';
import { FollowedSheet, type PageFrame } from '../../sound/followed-sheet.tsx';
import type { Following } from '../../sound/use-following.ts';
import { words } from '../../words/index.ts';

const says = words.player.band;

const leadPage: PageFrame = (_, drawing) => <div className="lead-sheet-page">{drawing}</div>;

export interface LeadSheetProps {
  readonly material: BackingMaterial;
  readonly instrument: Instrument;
  readonly following: Following;
  /** Whether to print as soon as it is drawn. */
  readonly printsFirst: boolean;
  readonly onPrinted: () => void;
}

/** The chart of a backing track as a sheet: as it sounds, for `createSheet` to write for the instrument; or why it cannot be. */
function leadSheet(
  material: BackingMaterial,
  instrument: Instrument,
): { readonly score: Score | null; readonly fault: string | null } {
  const { chart } = backingToSpec(material);
  const feel = feelById(material.feel);
  const spec = parseMaterialSpec({
    kind: 'chart',
    chart: formatChart(chart),
    pitch: 'concert',
    metre: formatMetre(feel.metre),
    feel: feel.isSwung ? 'swing' : 'straight',
    style: says.feels[material.feel],
    tempo: Math.min(300, material.tempo),
    ...(material.title === null ? {} : { title: material.title }),
  });
  if (!spec.ok) return { score: null, fault: spec.error.message };
  const sheet = createSheet(spec.value, { instrument, stage: 'advanced', age: null, seed: 1 });
  if (!sheet.ok) return { score: null, fault: sheet.error.message };
  return { score: { ...sheet.value.score, footer: null }, fault: null }; // of a stage nobody asked for
}

/** A score as it is drawn; while a newer one is on its way, the last. */
function useScore(
  score: Score | null,
  drawing: ScoreWish['drawing'],
): { readonly answer: ScoreAnswer | null; readonly isDrawing: boolean } {
  const [state, setState] = useState<{ answer: ScoreAnswer | null; isDrawing: boolean }>({
    answer: null,
    isDrawing: true,
  });
  useEffect(() => {
    if (score === null) return;
    let isStale = false;
    setState((now) => ({ ...now, isDrawing: true }));
    void wishScore({ score, drawing }).then((answer) => {
      if (!isStale) setState({ answer, isDrawing: false });
    });
    return () => {
      isStale = true;
    };
  }, [score, drawing]);
  return state;
}

export function LeadSheet({ material, instrument, following, printsFirst, onPrinted }: LeadSheetProps) {
  const studio = useStudio().data;
  const paper = studio?.paper === 'Letter' ? 'letter' : 'a4';
  const made = useMemo(() => leadSheet(material, instrument), [material, instrument]);
  const { answer, isDrawing } = useScore(
    made.score,
    useMemo(
      () => ({ form: paper, name: 'lead-sheet', naming: studio?.noteNames ?? 'british' }) as const,
      [paper, studio?.noteNames],
    ),
  );
  const pages = answer?.ok ? answer.value : null;
  const places = useMemo(
    () => (made.score === null ? null : sheetPlaces(made.score.bars, backingToSpec(material).chart)),
    [made, material],
  );
  const isPrinted = useRef(false);
  useEffect(() => {
    if (!printsFirst || pages === null || isDrawing || isPrinted.current) return;
    isPrinted.current = true;
    // When the pages stand in the document.
    requestAnimationFrame(() => {
      window.print();
      onPrinted();
    });
  }, [printsFirst, pages, isDrawing, onPrinted]);
  if (made.fault !== null) return <p className="fault">{made.fault}</p>;
  if (answer !== null && !answer.ok) return <p className="fault">{answer.error.message}</p>;
  if (pages === null || places === null)
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
      <FollowedSheet pages={pages} places={places} following={following} frame={leadPage} />
    </section>
  );
}

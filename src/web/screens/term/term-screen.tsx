// Term: when lessons are given, when not, and the week they repeat in.

import { useState } from 'react';
import { useSearchParams } from 'wouter';
import type { TermView } from '#contract';
import type { PlainDate } from '#core';
import { Loaded } from '../../components/loading.tsx';
import { NextStep } from '../../components/next-step.tsx';
import { Page } from '../../components/page.tsx';
import { useStudio, useTerm } from '../../hooks/use-view.ts';
import { words } from '../../words/index.ts';
import { CalendarDialog } from './calendar-dialog.tsx';
import { HolidayList } from './holiday-list.tsx';
import { SlotDialog } from './slot-dialog.tsx';
import { TermList } from './term-list.tsx';
import { Week } from './week.tsx';
import type { WeekSlot } from './week-layout.ts';
import { YearLine } from './year-line.tsx';
import './term.css';

const says = words.term;

function TermParts({ view, today }: { readonly view: TermView; readonly today: PlainDate }) {
  const [search, setSearch] = useSearchParams();
  const [slot, setSlot] = useState<WeekSlot | null>(null);
  const [importing, setImporting] = useState(false);
  const adding = search.has('add');
  const setAdding = (open: boolean) => setSearch(open ? { add: '' } : {});
  return (
    <>
      <NextStep after="term" />
      <YearLine view={view} today={today} />
      <div className="term-dates">
        <TermList terms={view.terms} adding={adding} onAdding={setAdding} />
        <HolidayList holidays={view.holidays} today={today} onImport={() => setImporting(true)} />
      </div>
      <section className="term-week">
        <div className="section-line">
          <h2>{says.week.title}</h2>
        </div>
        {view.week.length === 0 ? (
          <p className="soft">{says.week.none}</p>
        ) : (
          <Week week={view.week} onChange={setSlot} />
        )}
      </section>
      {slot && <SlotDialog slot={slot} onClose={() => setSlot(null)} />}
      {importing && <CalendarDialog today={today} onClose={() => setImporting(false)} />}
    </>
  );
}

export function TermScreen() {
  const view = useTerm();
  const studio = useStudio().data;
  return (
    <Page title={says.title}>
      <Loaded view={view}>{(data) => studio && <TermParts view={data} today={studio.today} />}</Loaded>
    </Page>
  );
}

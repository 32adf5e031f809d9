// Materials: any sheet for any player in seconds, outside a plan. Choose what, for whom, shape it, look at it at once.

import { useCallback, useEffect, useMemo, useRef, useState } from 'react';
import { useLocation, useSearch } from 'wouter';
import type { DrawnSheet } from '#engraving';
import { fieldsByKind, type MaterialKind, parseMaterialSpec, type SpecFault } from '#music';
import { Button } from '../../components/button.tsx';
import { ButtonLink } from '../../components/button-link.tsx';
import { Page } from '../../components/page.tsx';
import { warm } from '../../engraver/engraver.ts';
import { useStudents, useStudio } from '../../hooks/use-view.ts';
import { words } from '../../words/index.ts';
import { furtherFields, mainFields } from './field-control.ts';
import { ForWhom } from './for-whom.tsx';
import { KeepDialog } from './keep-dialog.tsx';
import { KindChooser } from './kind-chooser.tsx';
import { draftToQuery, draftToSpec, type MaterialDraft, queryToDraft } from './material-draft.ts';
import { SheetPane } from './sheet-pane.tsx';
import { SpecField } from './spec-field.tsx';
import { useHear } from './use-hear.ts';
import '../../components/form.css';
import './materials.css';

const says = words.materials;

export function MaterialsScreen() {
  const [draft, change] = useDraft();
  const studio = useStudio().data;
  const students = useStudents().data;
  useEffect(warm, []);
  const given = useMemo(() => draftToSpec(draft), [draft]);
  const spec = useMemo(() => parseMaterialSpec(given), [given]);
  const paper = studio?.paper === 'Letter' ? 'letter' : 'a4';
  const { instrument, stage, age, seed } = draft;
  const noteNames = studio?.noteNames ?? 'british';
  const wish = spec.ok
    ? {
        spec: spec.value,
        instrument,
        stage,
        age,
        seed,
        drawing: { form: paper, name: 'sheet', naming: noteNames } as const,
      }
    : null;
  const changeField = useCallback(
    (name: string, value: unknown) => change(({ fields }) => ({ fields: { ...fields, [name]: value } })),
    [change],
  );
  const changeKind = useCallback((kind: MaterialKind) => change(() => ({ kind, fields: {} })), [change]);
  const changeWhom = useCallback((whom: Partial<MaterialDraft>) => change(() => whom), [change]);
  const faultOf = (name: string) =>
    !spec.ok && spec.error.at.split('/')[1] === name ? sayFault(spec.error) : null;
  const field = (name: string) => (
    <SpecField
      key={`${draft.kind} ${name}`}
      kind={draft.kind}
      name={name}
      value={
        given[name] ??
        (spec.ok
          ? Object.entries(spec.value).find(([key]) => key === name)?.[1]
          : fieldsByKind[draft.kind][name]?.fallback)
      }
      fault={faultOf(name)}
      onValue={changeField}
    />
  );
  const [drawn, setDrawn] = useState<DrawnSheet | null>(null);
  const hearing = useHear(drawn?.sheet.score ?? null);
  const [isKeeping, setIsKeeping] = useState(false);
  // A student may learn several instruments; the sheet is for one of them.
  const course = students?.courses.find((one) => draft.player === `${one.student} ${one.instrument}`) ?? null;
  return (
    <Page
      title={says.title}
      lead={says.lead}
      actions={
        <>
          <Button isDisabled={drawn === null} onPress={hearing.toggle}>
            {hearing.isPlaying ? says.stop : says.hear}
          </Button>
          <Button onPress={() => change((now) => ({ seed: (now.seed + 1) % 2 ** 31 }))}>
            {says.another}
          </Button>
          <Button isDisabled={drawn === null} onPress={() => setIsKeeping(true)}>
            {says.keep}
          </Button>
          <Button kind="primary" isDisabled={drawn === null} onPress={() => window.print()}>
            {says.print}
          </Button>
        </>
      }
    >
      <div className={`materials materials-${paper}`}>
        <div className="no-print">
          <ButtonLink kind="plain" to="/band">
            {words.player.band.link}
          </ButtonLink>
          <KindChooser kind={draft.kind} onKind={changeKind} />
        </div>
        <form className="materials-shape no-print" onSubmit={(event) => event.preventDefault()}>
          <h2>{says.whom}</h2>
          <ForWhom
            player={draft.player}
            instrument={instrument}
            stage={stage}
            age={age}
            students={students}
            onChange={changeWhom}
          />
          <h2>{says.shape}</h2>
          <div className="materials-fields">{mainFields[draft.kind].map(field)}</div>
          <details className="materials-more">
            <summary>{says.more}</summary>
            <div className="materials-fields">{furtherFields(draft.kind).map(field)}</div>
          </details>
        </form>
        <SheetPane
          wish={wish}
          fault={spec.ok ? null : says.mend(sayFault(spec.error))}
          pdf={{ spec: given, instrument, stage, age, seed, paper, noteNames }}
          onDrawn={setDrawn}
        />
      </div>
      <KeepDialog
        kind="sheet"
        open={isKeeping}
        onClose={() => setIsKeeping(false)}
        title={drawn?.sheet.title ?? ''}
        spec={given}
        seed={draft.seed}
        course={course}
      />
    </Page>
  );
}

/** The trouble and the mend, without the field's name in the file, which stands beside it in words. */
function sayFault({ message }: SpecFault): string {
  return message.replace(/^“[^”]*”:? (.)/, (_, first: string) => first.toUpperCase());
}

type ChangeDraft = (change: (now: MaterialDraft) => Partial<MaterialDraft>) => void;

/** The draft lives in the address. The function that changes it stays the same. */
function useDraft(): readonly [MaterialDraft, ChangeDraft] {
  const search = useSearch();
  const [path, navigate] = useLocation();
  const draft = useMemo(() => queryToDraft(search), [search]);
  const newest = useRef({ draft, path, navigate });
  newest.current = { draft, path, navigate };
  const change = useCallback<ChangeDraft>((changed) => {
    const now = newest.current;
    const next = { ...now.draft, ...changed(now.draft) };
    newest.current = { ...now, draft: next };
    now.navigate(`${now.path}?${draftToQuery(next)}`, { replace: true });
  }, []);
  return [draft, change];
}

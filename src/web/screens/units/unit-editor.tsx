// The editor of a unit, for the library's units and for a student's copy alike. It knows nothing of where the document
// goes; it keeps the draft, says what must be mended and what would surprise, and hands over a document.

import { type FormEvent, type ReactNode, useMemo, useState } from 'react';
import { useLocation } from 'wouter';
import { type UnitDocument, type UnitId, validateUnit } from '#planning';
import { showToast } from '../../app/toasts.ts';
import { Button } from '../../components/button.tsx';
import { useFormat } from '../../hooks/use-format.ts';
import { useSkills, useUnits } from '../../hooks/use-view.ts';
import { words } from '../../words/index.ts';
import { draftToDocument, usualMinutesOf } from './draft-to-document.ts';
import { EditAbout, EditAlsoSkills, EditSuits } from './edit-about.tsx';
import { EditActivities } from './edit-activities.tsx';
import { EditChecks } from './edit-checks.tsx';
import { EditNext } from './edit-next.tsx';
import { type Editing, shownFault } from './editing.ts';
import { estimateLessons } from './estimate-lessons.ts';
import { findDraftFaults } from './find-draft-faults.ts';
import type { DraftPlace } from './keep-draft.ts';
import { placeFindings } from './place-findings.ts';
import { titleToUnitId } from './slug.ts';
import type { UnitDraft } from './unit-draft.ts';
import { useUnitDraft } from './use-unit-draft.ts';
import '../../components/form.css';
import './editor.css';

const says = words.units.editor;

export interface UnitEditorProps {
  /** Under which the draft is kept. */
  readonly place: DraftPlace;
  readonly from: UnitDraft;
  /** The version that is newest now, to say that a kept draft is older. */
  readonly newest: number;
  readonly saveLabel: string;
  /** True when it was saved; then the draft is thrown away. */
  readonly onSave: (document: UnitDocument, draft: UnitDraft) => Promise<boolean>;
  /** After saving, or when the draft was thrown away. */
  readonly onLeave: (saved: UnitDocument | null) => void;
  /** What stands first: the differences of a copy. */
  readonly before?: (document: UnitDocument, touched: boolean) => ReactNode;
  /** What stands above the foot: a clash. `finish` throws the kept draft away. */
  readonly children?: (finish: () => void) => ReactNode;
}

/** Never saved under this id: it stands in until a new unit is. */
const unsaved = 'unit:unsaved' as UnitId;

export function UnitEditor({
  place,
  from,
  newest,
  saveLabel,
  onSave,
  onLeave,
  before,
  children,
}: UnitEditorProps) {
  const format = useFormat();
  const [, navigate] = useLocation();
  const hand = useUnitDraft(place, from);
  const skillView = useSkills().data;
  const skills = useMemo(() => skillView?.skills ?? [], [skillView]);
  const units = useUnits().data?.units ?? [];
  const [tried, setTried] = useState(false);
  const [busy, setBusy] = useState(false);
  const { draft, setDraft, offered } = hand;

  const document = useMemo(() => draftToDocument(draft, draft.id ?? unsaved), [draft]);
  const faults = useMemo(() => findDraftFaults(draft), [draft]);
  const findings = useMemo(() => {
    if (skills.length === 0) return new Map();
    const skillsById = new Map(skills.map((skill) => [skill.id, skill]));
    return placeFindings(validateUnit(document, skillsById), document, skillsById);
  }, [document, skills]);
  // All is mended: what is begun after it is not at fault before it is written.
  if (tried && faults.size === 0) setTried(false);

  if (offered) {
    return (
      <section className="editor-offer">
        <h2>{says.found}</h2>
        <p className="editor-offer-title">{offered.draft.title}</p>
        <p>
          {says.foundAt(format.moment(offered.at))}{' '}
          {offered.version < newest && offered.version > 0 && says.foundOlder(offered.version, newest)}
        </p>
        <p className="form-row">
          <Button kind="primary" onPress={hand.goOn} autoFocus>
            {says.goOn}
          </Button>
          <Button onPress={hand.startAgain}>{says.startAgain}</Button>
        </p>
      </section>
    );
  }

  const keys = new Map<number, string>([
    ...draft.activities.map((one, at) => [one.handle, document.activities[at]?.key ?? ''] as const),
    ...draft.extensions.map((one, at) => [one.handle, document.extensions[at]?.key ?? ''] as const),
    ...draft.checks
      .filter((one) => one.skill !== null)
      .map((one, at) => [one.handle, document.checks[at]?.key ?? ''] as const),
  ]);
  const editing: Editing = {
    draft,
    edit: setDraft,
    faultOf: (field) => shownFault(faults, field, tried),
    hasFault: (handles) =>
      tried && handles.some((handle) => [...faults.keys()].some((field) => field.startsWith(`${handle}.`))),
    findingsAt: (where) => findings.get(where) ?? [],
    keyOf: (handle) => keys.get(handle) ?? '',
    skills,
  };

  async function save(event: FormEvent) {
    event.preventDefault();
    setTried(true);
    if (busy || faults.size > 0) return;
    const id = draft.id ?? titleToUnitId(draft.title, new Set(units.map((unit) => unit.id)));
    const whole = draftToDocument(draft, id);
    setBusy(true);
    const saved = await onSave(whole, draft);
    setBusy(false);
    if (!saved) return;
    hand.finish();
    onLeave(whole);
  }

  function throwAway() {
    const editor = `${window.location.pathname}${window.location.search}`;
    const keepAgain = hand.giveUp();
    onLeave(null);
    if (keepAgain === null) return;
    showToast({
      text: says.discarded(draft.title.trim()),
      action: {
        label: words.frame.undo,
        act: () => {
          keepAgain();
          navigate(editor);
        },
      },
    });
  }

  const minutes = usualMinutesOf(draft);
  return (
    <form className="form editor" onSubmit={save} noValidate>
      {before?.(document, hand.touched)}
      <EditAbout editing={editing} isNew={place === 'new'} />
      <EditSuits editing={editing} />
      <EditActivities editing={editing} list="activities" />
      <EditChecks editing={editing} />
      <EditActivities editing={editing} list="extensions" />
      <EditAlsoSkills editing={editing} />
      <EditNext editing={editing} units={units} />
      {children?.(hand.finish)}
      <div className="editor-foot">
        <div className="editor-sum">
          <p aria-live="polite">
            {minutes === 0
              ? says.sumNone
              : says.sumSays(
                  format.minutes(minutes),
                  estimateLessons(minutes, 30),
                  estimateLessons(minutes, 45),
                )}
          </p>
          {hand.touched && <p className="faint">{hand.kept ? says.kept : says.notKept}</p>}
        </div>
        {tried && faults.size > 0 && (
          <p className="fault" role="alert">
            {words.frame.mendFirst(faults.size)}
          </p>
        )}
        <div className="editor-deeds">
          <Button kind="plain" onPress={throwAway}>
            {hand.touched ? says.discard : words.frame.cancel}
          </Button>
          <Button kind="primary" type="submit" pending={busy}>
            {saveLabel}
          </Button>
        </div>
      </div>
    </form>
  );
}

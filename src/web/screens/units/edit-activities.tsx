// The activities of a unit, or its extensions: added, ordered, opened for writing.

import { useState } from 'react';
import { Button } from '../../components/button.tsx';
import { MenuButton } from '../../components/menu.tsx';
import { words } from '../../words/index.ts';
import { readWhole } from './draft-to-document.ts';
import { EditActivity } from './edit-activity.tsx';
import type { Editing } from './editing.ts';
import { FindingList } from './finding-list.tsx';
import type { Handle } from './handle.ts';
import { reorder } from './reorder.ts';
import {
  type ActivityDraft,
  type ActivityList,
  emptyActivity,
  takeHandle,
  type UnitDraft,
  withoutRow,
} from './unit-draft.ts';
import { useRowDrag } from './use-row-drag.ts';

const says = words.units.editor;

export interface EditActivitiesProps {
  readonly editing: Editing;
  readonly list: ActivityList;
}

/** Every row of an activity has a handle of its own in the copy, so that the two can be told apart. */
function repeat(draft: UnitDraft, list: ActivityList, one: ActivityDraft): UnitDraft {
  let last = draft.lastHandle;
  const fresh = <Row extends { readonly handle: Handle }>(row: Row): Row => ({ ...row, handle: ++last });
  const copy: ActivityDraft = {
    ...fresh(one),
    key: null,
    variants: one.variants.map((row) => ({
      ...fresh(row),
      materials: row.materials === null ? null : row.materials.map(fresh),
    })),
    materials: one.materials.map(fresh),
  };
  const at = draft[list].findIndex((row) => row.handle === one.handle);
  return { ...draft, [list]: draft[list].toSpliced(at + 1, 0, copy), lastHandle: last };
}

export function EditActivities({ editing, list }: EditActivitiesProps) {
  const { draft, edit } = editing;
  const rows = draft[list];
  const [open, setOpen] = useState<ReadonlySet<Handle>>(new Set());
  const [moved, setMoved] = useState('');
  const isExtension = list === 'extensions';
  const nameOf = (one: ActivityDraft, at: number) =>
    one.title.trim() || `${isExtension ? says.extension(at + 1) : says.activity(at + 1)}, ${says.untitled}`;
  const move = (from: number, to: number) => {
    const row = rows[from];
    const place = Math.min(Math.max(0, to), rows.length - 1);
    if (!row || place === from) return;
    edit((now) => ({ ...now, [list]: reorder(now[list], from, place) }));
    setMoved(says.moved(nameOf(row, from), place + 1, rows.length));
  };
  const drag = useRowDrag(move);
  const turn = (handle: Handle, isOpen: boolean) => {
    const next = new Set(open);
    if (isOpen) next.add(handle);
    else next.delete(handle);
    setOpen(next);
  };
  const add = () => {
    const handle = draft.lastHandle + 1;
    edit((now) => {
      const [taken, fresh] = takeHandle(now);
      return { ...taken, [list]: [...taken[list], emptyActivity(fresh)] };
    });
    turn(handle, true);
  };
  const toOther = (one: ActivityDraft) =>
    edit((now) => {
      const other = isExtension ? 'activities' : 'extensions';
      return { ...now, [list]: withoutRow(now[list], one.handle), [other]: [...now[other], one] };
    });

  return (
    <section className="form-part" aria-label={isExtension ? says.extensions : says.activities}>
      <h2>{isExtension ? says.extensions : says.activities}</h2>
      <p className="faint">
        {isExtension ? says.extensionsLead : rows.length > 1 ? says.activitiesLead : says.noActivities}
      </p>
      <ol className="editor-rows" ref={drag.listRef}>
        {rows.map((one, at) => {
          const inner = [
            ...one.variants,
            ...one.materials,
            ...one.variants.flatMap((variant) => variant.materials ?? []),
          ].map((row) => row.handle);
          const isOpen = open.has(one.handle) || editing.hasFault([one.handle, ...inner]);
          const mark = drag.markOf(at);
          const name = nameOf(one, at);
          const actions = [
            { label: says.up, act: () => move(at, at - 1), off: at === 0 },
            { label: says.down, act: () => move(at, at + 1), off: at === rows.length - 1 },
            { label: says.toFirst, act: () => move(at, 0), off: at === 0 },
            { label: says.toLast, act: () => move(at, rows.length - 1), off: at === rows.length - 1 },
            { label: says.twice, act: () => edit((now) => repeat(now, list, one)), off: false },
            { label: isExtension ? says.toActivity : says.toExtension, act: () => toOther(one), off: false },
            {
              label: says.remove,
              act: () => edit((now) => ({ ...now, [list]: withoutRow(now[list], one.handle) })),
              off: false,
            },
          ];
          return (
            <li
              key={one.handle}
              className={`editor-row${mark ? ` editor-drop-${mark}` : ''}${drag.draggedAt === at ? ' editor-dragged' : ''}`}
            >
              <div className="editor-row-head">
                <button
                  type="button"
                  className="editor-grip"
                  aria-label={says.grip(name, at + 1, rows.length)}
                  {...drag.gripProps(at)}
                >
                  <svg viewBox="0 0 20 20" width="20" height="20" aria-hidden="true">
                    {[5, 10, 15].map((y) => (
                      <line key={y} x1="3" x2="17" y1={y} y2={y} stroke="currentColor" />
                    ))}
                  </svg>
                </button>
                <span className="editor-number" aria-hidden="true">
                  {at + 1}
                </span>
                <h3 className="editor-row-title">
                  {one.title.trim() || <span className="faint">{says.untitled}</span>}
                </h3>
                <span className="faint editor-row-minutes">
                  {Number.isNaN(readWhole(one.minutes.usual)) ? '' : `${readWhole(one.minutes.usual)} min`}
                </span>
                <Button
                  kind="plain"
                  aria-label={isOpen ? says.foldOf(name) : says.openOf(name)}
                  aria-expanded={isOpen}
                  onPress={() => turn(one.handle, !open.has(one.handle))}
                >
                  {isOpen ? says.fold : says.open}
                </Button>
                <MenuButton label={says.menuOf(name)} choices={actions}>
                  <Button kind="plain" aria-label={says.menuOf(name)}>
                    {says.menu}
                  </Button>
                </MenuButton>
              </div>
              {isOpen && <EditActivity editing={editing} list={list} activity={one} name={name} />}
              {one.title.trim() !== '' && (
                <FindingList findings={editing.findingsAt(`activity:${editing.keyOf(one.handle)}`)} />
              )}
            </li>
          );
        })}
      </ol>
      <p className="only-heard" role="status">
        {moved}
      </p>
      {editing.faultOf(list) && <p className="fault">{editing.faultOf(list)}</p>}
      <div>
        <Button onPress={add}>{isExtension ? says.addExtension : says.addActivity}</Button>
      </div>
    </section>
  );
}

// The units that may follow this one.

import type { UnitRow } from '#contract';
import type { UnitId } from '#planning';
import { Button } from '../../components/button.tsx';
import { SelectField } from '../../components/field.tsx';
import { words } from '../../words/index.ts';
import { areaNames } from '../../words/student.ts';
import type { Editing } from './editing.ts';
import { FindingList } from './finding-list.tsx';

const says = words.units.editor;

export interface EditNextProps {
  readonly editing: Editing;
  readonly units: readonly UnitRow[];
}

export function EditNext({ editing, units }: EditNextProps) {
  const { draft, edit } = editing;
  const titleOf = (id: UnitId) => units.find((unit) => unit.id === id)?.title ?? id;
  const offered = units.filter(
    (unit) => !unit.retired && unit.id !== draft.id && !draft.next.includes(unit.id),
  );
  return (
    <section className="form-part" aria-label={says.next}>
      <h2>{says.next}</h2>
      {draft.next.length > 0 && (
        <ul className="skill-chosen">
          {draft.next.map((id) => (
            <li key={id}>
              <span>{titleOf(id)}</span>
              <Button
                kind="plain"
                aria-label={says.removeNext(titleOf(id))}
                onPress={() => edit((now) => ({ ...now, next: now.next.filter((one) => one !== id) }))}
              >
                {words.frame.remove}
              </Button>
            </li>
          ))}
        </ul>
      )}
      <FindingList findings={editing.findingsAt('next')} />
      <SelectField<UnitId | ''>
        label={says.addNext}
        value=""
        onValue={(id) => {
          if (id !== '') edit((now) => ({ ...now, next: [...now.next, id] }));
        }}
        options={[
          { value: '', label: says.chooseUnit },
          ...offered.map((unit) => ({ value: unit.id, label: unit.title, group: areaNames[unit.area] })),
        ]}
        fault={editing.faultOf('next')}
      />
    </section>
  );
}

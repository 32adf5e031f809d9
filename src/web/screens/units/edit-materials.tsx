// The materials of an activity, or of one of its variants, by title.

import { waysHome } from '#planning';
import { Button } from '../../components/button.tsx';
import { SelectField, TextField } from '../../components/field.tsx';
import { words } from '../../words/index.ts';
import type { Editing } from './editing.ts';
import type { Handle } from './handle.ts';
import { changeRow, type MaterialDraft, takeHandle, type UnitDraft, withoutRow } from './unit-draft.ts';

const says = words.units.editor;
const takeHomes = ['always', ...waysHome] as const;

export interface EditMaterialsProps {
  readonly editing: Editing;
  /** Of the activity or the variant that has them. */
  readonly of: Handle;
  readonly label: string;
  readonly materials: readonly MaterialDraft[];
  /** The draft with these materials in place. */
  readonly put: (draft: UnitDraft, materials: readonly MaterialDraft[]) => UnitDraft;
}

export function EditMaterials({ editing, of, label, materials, put }: EditMaterialsProps) {
  const { edit, faultOf } = editing;
  const fault = faultOf(`${of}.materials`);
  const add = () =>
    edit((now) => {
      const [taken, fresh] = takeHandle(now);
      return put(taken, [...materials, { handle: fresh, key: null, title: '' }]);
    });
  return (
    <div className="editor-materials">
      <span className="field-label">{label}</span>
      {materials.map((material) => (
        <div key={material.handle} className="editor-line">
          <TextField
            label={says.materialTitle}
            labelHidden
            placeholder={says.materialTitle}
            value={material.title}
            onValue={(title) => edit((now) => put(now, changeRow(materials, material.handle, { title })))}
            fault={faultOf(`${material.handle}.title`)}
          />
          {/* What only has a name cannot be printed. */}
          {material.spec !== undefined && (
            <SelectField
              label={says.takeHomeOf(material.title)}
              labelHidden
              value={material.takeHome ?? 'always'}
              onValue={(takeHome) => edit((now) => put(now, withTakeHome(materials, material, takeHome)))}
              options={takeHomes.map((value) => ({ value, label: says.takeHomes[value] }))}
            />
          )}
          <Button
            kind="plain"
            aria-label={says.removeOf(material.title || says.materials)}
            onPress={() => edit((now) => put(now, withoutRow(materials, material.handle)))}
          >
            {says.remove}
          </Button>
        </div>
      ))}
      {fault && <p className="field-fault">{fault}</p>}
      <div>
        <Button kind="plain" onPress={add}>
          {says.addMaterial}
        </Button>
      </div>
    </div>
  );
}

/** Going home with every sheet is what a material does of itself, so nothing is written down for it. */
function withTakeHome(
  materials: readonly MaterialDraft[],
  { takeHome: _before, ...material }: MaterialDraft,
  takeHome: (typeof takeHomes)[number],
): readonly MaterialDraft[] {
  const after = takeHome === 'always' ? material : { ...material, takeHome };
  return materials.map((one) => (one.handle === material.handle ? after : one));
}

// How an activity changes for some stages or ages.

import { Button } from '../../components/button.tsx';
import { TextField } from '../../components/field.tsx';
import { Tick } from '../../components/tick.tsx';
import { words } from '../../words/index.ts';
import { EditMaterials } from './edit-materials.tsx';
import type { Editing } from './editing.ts';
import type { Handle } from './handle.ts';
import { HowToField } from './how-to-field.tsx';
import { MinutesFields } from './minutes-fields.tsx';
import { AgeFields, StageTicks } from './suits-fields.tsx';
import {
  type ActivityDraft,
  type ActivityList,
  changeRow,
  emptyVariant,
  takeHandle,
  type UnitDraft,
  type VariantDraft,
  withoutRow,
} from './unit-draft.ts';

const says = words.units.editor;

export interface EditVariantsProps {
  readonly editing: Editing;
  readonly list: ActivityList;
  readonly activity: ActivityDraft;
}

const putVariant = (
  draft: UnitDraft,
  list: ActivityList,
  activity: ActivityDraft,
  handle: Handle,
  change: Partial<VariantDraft>,
): UnitDraft => ({
  ...draft,
  [list]: changeRow(draft[list], activity.handle, {
    variants: changeRow(activity.variants, handle, change),
  }),
});

/** Begins with the activity's own materials, as rows that can be changed apart from them; or leaves them as they are. */
function giveMaterials(
  draft: UnitDraft,
  list: ActivityList,
  activity: ActivityDraft,
  variant: VariantDraft,
  own: boolean,
): UnitDraft {
  let last = draft.lastHandle;
  const materials = own ? activity.materials.map((material) => ({ ...material, handle: ++last })) : null;
  return {
    ...putVariant(draft, list, activity, variant.handle, { materials }),
    lastHandle: last,
  };
}

export function EditVariants({ editing, list, activity }: EditVariantsProps) {
  const { edit, faultOf } = editing;
  const put = (variants: readonly VariantDraft[]) =>
    edit((now) => ({ ...now, [list]: changeRow(now[list], activity.handle, { variants }) }));
  const add = () =>
    edit((now) => {
      const [taken, fresh] = takeHandle(now);
      const variants = [...activity.variants, emptyVariant(fresh)];
      return { ...taken, [list]: changeRow(taken[list], activity.handle, { variants }) };
    });
  return (
    <div className="editor-variants">
      <span className="field-label">{says.variants}</span>
      {activity.variants.length > 0 && <p className="field-help">{says.variantsHelp}</p>}
      {activity.variants.map((variant, at) => {
        const set = (change: Partial<VariantDraft>) =>
          put(changeRow(activity.variants, variant.handle, change));
        return (
          <fieldset key={variant.handle} className="editor-variant">
            <legend className="editor-variant-name">{says.variant(at + 1)}</legend>
            <StageTicks chosen={variant.stages} onChosen={(stages) => set({ stages })} fault={null} />
            <AgeFields
              from={variant.ageFrom}
              to={variant.ageTo}
              onAges={set}
              fault={faultOf(`${variant.handle}.ages`)}
            />
            <TextField
              label={says.variantTitle}
              value={variant.title}
              onValue={(title) => set({ title })}
              fault={faultOf(`${variant.handle}.title`)}
            />
            <HowToField
              label={says.variantHowTo}
              value={variant.howTo}
              onValue={(howTo) => set({ howTo })}
              fault={faultOf(`${variant.handle}.howTo`)}
            />
            <MinutesFields
              minutes={variant.minutes}
              onMinutes={(minutes) => set({ minutes })}
              fault={faultOf(`${variant.handle}.minutes`)}
            />
            <Tick
              ticked={variant.bring !== null}
              onTick={(ticked) => set({ bring: ticked ? activity.bring : null })}
            >
              {says.variantBringTick}
            </Tick>
            {variant.bring !== null && (
              <TextField
                label={says.variantBring}
                help={says.bringHelp}
                rows={2}
                value={variant.bring}
                onValue={(bring) => set({ bring })}
                fault={faultOf(`${variant.handle}.bring`)}
              />
            )}
            <Tick
              ticked={variant.materials !== null}
              onTick={(ticked) => edit((now) => giveMaterials(now, list, activity, variant, ticked))}
            >
              {says.variantMaterialsTick}
            </Tick>
            {variant.materials !== null && (
              <EditMaterials
                editing={editing}
                of={variant.handle}
                label={says.variantMaterials}
                materials={variant.materials}
                put={(now, materials) => putVariant(now, list, activity, variant.handle, { materials })}
              />
            )}
            <div>
              <Button
                kind="plain"
                aria-label={says.removeOf(says.variant(at + 1))}
                onPress={() => put(withoutRow(activity.variants, variant.handle))}
              >
                {says.remove}
              </Button>
            </div>
          </fieldset>
        );
      })}
      {faultOf(`${activity.handle}.variants`) && (
        <p className="field-fault">{faultOf(`${activity.handle}.variants`)}</p>
      )}
      <div>
        <Button kind="plain" onPress={add}>
          {says.addVariant}
        </Button>
      </div>
    </div>
  );
}

// What a recorded take can show of a check: a kind, its few figures, and the sentence they make.

import { type CheckField, type CheckKind, checkableValues, checkFields, nameNotes } from '#listening';
import { sentenceCase } from '../../app/sentence-case.ts';
import { Button } from '../../components/button.tsx';
import { SelectField, TextField } from '../../components/field.tsx';
import { useDescribeCheck } from '../../hooks/use-describe-check.ts';
import { useStudio } from '../../hooks/use-view.ts';
import { words } from '../../words/index.ts';
import type { Editing } from './editing.ts';
import { mostListenFor } from './find-draft-faults.ts';
import type { Handle } from './handle.ts';
import {
  draftToSpec,
  findListenFaults,
  isShare,
  type ListenDraft,
  newListenDraft,
  writtenBounds,
} from './listen-draft.ts';
import { changeRow, takeHandle, withoutRow } from './unit-draft.ts';

const says = words.listenFor;
const kinds = Object.keys(checkFields) as readonly CheckKind[]; // the keys of a record by kind
const groups = [...new Set(Object.values(says.kinds).map(({ group }) => group))];
/** By group, in the order in which the words tell them. */
const kindOptions = groups.flatMap((group) =>
  kinds
    .filter((kind) => says.kinds[kind].group === group)
    .map((kind) => ({ value: kind, label: sentenceCase(says.kinds[kind].name), group })),
);

export interface EditListenForProps {
  readonly editing: Editing;
  /** The check's. */
  readonly handle: Handle;
  readonly listenFor: readonly ListenDraft[];
  readonly onChange: (listenFor: readonly ListenDraft[]) => void;
}

export function EditListenFor({ editing, handle, listenFor, onChange }: EditListenForProps) {
  const add = () => {
    const kind = kindOptions.find(({ value }) => !listenFor.some((one) => one.kind === value))?.value;
    editing.edit((now) => {
      const [taken, fresh] = takeHandle(now);
      const rows = [...listenFor, newListenDraft(fresh, kind ?? 'phraseLengths')];
      return { ...taken, checks: changeRow(taken.checks, handle, { listenFor: rows }) };
    });
  };
  return (
    <div className="editor-listen-for">
      <span className="field-label">{says.title}</span>
      {listenFor.length === 0 && <p className="faint">{says.none}</p>}
      {listenFor.map((spec, at) => (
        <EditSpec
          key={spec.handle}
          editing={editing}
          spec={spec}
          name={says.of(at + 1)}
          onSpec={(change) => onChange(changeRow(listenFor, spec.handle, change))}
          onRemove={() => onChange(withoutRow(listenFor, spec.handle))}
        />
      ))}
      {editing.faultOf(`${handle}.listenFor`) && (
        <p className="field-fault">{editing.faultOf(`${handle}.listenFor`)}</p>
      )}
      {listenFor.length < mostListenFor && (
        <div>
          <Button kind="plain" onPress={add}>
            {says.add}
          </Button>
        </div>
      )}
    </div>
  );
}

interface EditSpecProps {
  readonly editing: Editing;
  readonly spec: ListenDraft;
  readonly name: string;
  readonly onSpec: (change: Partial<ListenDraft>) => void;
  readonly onRemove: () => void;
}

function EditSpec({ editing, spec, name, onSpec, onRemove }: EditSpecProps) {
  const describe = useDescribeCheck();
  const { help } = says.kinds[spec.kind];
  const isRight = findListenFaults(spec).size === 0;
  return (
    <fieldset className="editor-spec">
      <legend className="only-heard">{name}</legend>
      <div className="editor-spec-fields">
        <SelectField<CheckKind>
          label={says.what}
          value={spec.kind}
          onValue={(kind) => onSpec(newListenDraft(spec.handle, kind))}
          options={kindOptions}
        />
        {checkFields[spec.kind].map((field) => (
          <SpecField
            key={field.name}
            kind={spec.kind}
            field={field}
            text={spec.texts[field.name] ?? ''}
            onText={(text) => onSpec({ texts: { ...spec.texts, [field.name]: text } })}
            fault={editing.faultOf(`${spec.handle}.${field.name}`)}
          />
        ))}
      </div>
      {help !== '' && <p className="field-help">{help}</p>}
      <div className="editor-spec-end">
        <p aria-live="polite">{isRight && says.sentence(describe(draftToSpec(spec)))}</p>
        <Button kind="plain" aria-label={words.units.editor.removeOf(name)} onPress={onRemove}>
          {words.units.editor.remove}
        </Button>
      </div>
    </fieldset>
  );
}

interface SpecFieldProps {
  readonly kind: CheckKind;
  readonly field: CheckField;
  readonly text: string;
  readonly onText: (text: string) => void;
  readonly fault: string | null;
}

function SpecField({ kind, field, text, onText, fault }: SpecFieldProps) {
  const naming = useStudio().data?.noteNames ?? 'british';
  const { label, unit } = says.kinds[kind].fields[field.name] ?? { label: field.name };
  if (field.type === 'value')
    return (
      <SelectField
        label={label}
        value={text}
        onValue={onText}
        options={checkableValues.map((value) => ({
          value,
          label: sentenceCase(nameNotes(value, naming)),
        }))}
      />
    );
  const [low, high] = writtenBounds(field);
  return (
    <TextField
      label={label}
      type="number"
      min={low}
      max={high}
      step={field.isWhole || isShare(field) ? 1 : 'any'}
      value={text}
      onValue={onText}
      fault={fault}
      {...(unit === undefined ? {} : { unit })}
    />
  );
}

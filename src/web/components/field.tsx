// Fields of a form: label above, the line to write on, help or fault beneath. The fault is spoken with the field.

import { type ReactNode, useId } from 'react';
import {
  TextField as AriaTextField,
  type TextFieldProps as AriaTextFieldProps,
  FieldError,
  Input,
  Label,
  Text,
  TextArea,
} from 'react-aria-components';
import './field.css';

interface FieldWords {
  readonly label: string;
  /** A sentence under the field. */
  readonly help?: ReactNode;
  /** What is wrong and how to mend it; null or absent when nothing is. */
  readonly fault?: string | null;
  /** Read by screen readers but not drawn, where a table's head says it already. */
  readonly labelHidden?: boolean;
}

export interface TextFieldProps extends FieldWords {
  readonly value: string;
  readonly onValue: (value: string) => void;
  readonly type?: 'text' | 'email' | 'tel' | 'date' | 'time' | 'number' | 'search';
  /** More than one line. */
  readonly rows?: number;
  readonly placeholder?: string;
  readonly required?: boolean;
  readonly autoFocus?: boolean;
  readonly min?: string | number;
  readonly max?: string | number;
  readonly step?: string | number;
  readonly autoComplete?: string;
  readonly onBlur?: () => void;
  /** A unit behind the number: "minutes". */
  readonly unit?: string;
}

export function TextField(props: TextFieldProps) {
  const { label, help, fault, labelHidden, value, onValue, rows, required, autoFocus, onBlur, unit } = props;
  const aria: AriaTextFieldProps = {
    value,
    onChange: onValue,
    isInvalid: Boolean(fault),
    isRequired: required === true,
    validationBehavior: 'aria',
    autoComplete: props.autoComplete ?? 'off',
    ...(onBlur ? { onBlur } : {}),
    ...(autoFocus ? { autoFocus } : {}),
  };
  const { placeholder, min, max, step } = props;
  const given = {
    ...(placeholder === undefined ? {} : { placeholder }),
    ...(min === undefined ? {} : { min }),
    ...(max === undefined ? {} : { max }),
    ...(step === undefined ? {} : { step }),
  };
  return (
    <AriaTextField {...aria} className="field">
      <Label className={labelHidden ? 'only-heard' : 'field-label'}>{label}</Label>
      {rows === undefined ? (
        <span className="field-line">
          <Input className="field-input" type={props.type ?? 'text'} {...given} />
          {unit && <span className="field-unit">{unit}</span>}
        </span>
      ) : (
        <TextArea
          className="field-input field-area"
          rows={rows}
          {...(placeholder === undefined ? {} : { placeholder })}
        />
      )}
      {help && (
        <Text slot="description" className="field-help">
          {help}
        </Text>
      )}
      <FieldError className="field-fault">{fault}</FieldError>
    </AriaTextField>
  );
}

export interface SelectFieldProps<Value extends string> extends FieldWords {
  readonly value: Value;
  readonly onValue: (value: Value) => void;
  readonly options: readonly { readonly value: Value; readonly label: string; readonly group?: string }[];
}

/** One of several, by the platform's own select: it is fast, and every keyboard and screen reader knows it. */
export function SelectField<Value extends string>(props: SelectFieldProps<Value>) {
  const { label, help, fault, labelHidden, value, onValue, options } = props;
  const id = useId();
  const described = [help ? `${id}-help` : '', fault ? `${id}-fault` : ''].filter(Boolean).join(' ');
  const groups = [...new Set(options.map((o) => o.group ?? ''))];
  const list = (group: string) =>
    options
      .filter((o) => (o.group ?? '') === group)
      .map((o) => (
        <option key={o.value} value={o.value}>
          {o.label}
        </option>
      ));
  return (
    <div className="field">
      <label className={labelHidden ? 'only-heard' : 'field-label'} htmlFor={id}>
        {label}
      </label>
      <select
        id={id}
        className="field-input field-select"
        value={value}
        aria-invalid={fault ? true : undefined}
        aria-describedby={described || undefined}
        onChange={(event) => {
          const chosen = options.find((o) => o.value === event.target.value);
          if (chosen) onValue(chosen.value);
        }}
      >
        {groups.map((group) =>
          group === '' ? (
            list(group)
          ) : (
            <optgroup key={group} label={group}>
              {list(group)}
            </optgroup>
          ),
        )}
      </select>
      {help && (
        <span id={`${id}-help`} className="field-help">
          {help}
        </span>
      )}
      {fault && (
        <span id={`${id}-fault`} className="field-fault">
          {fault}
        </span>
      )}
    </div>
  );
}

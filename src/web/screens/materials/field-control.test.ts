import { describe, expect, it } from 'vitest';
import { fieldsByKind, materialKinds, parseMaterialSpec } from '#music';
import { materialFields } from '../../words/materials.ts';
import { fieldControl, furtherFields, mainFields } from './field-control.ts';

const firstFields = { line: { chart: '| C |' }, chart: { chart: '| C |' } };

describe.each(materialKinds)('a %s', (kind) => {
  it('has a label for every field', () => {
    for (const name of Object.keys(fieldsByKind[kind])) expect(materialFields[name], name).toBeTruthy();
  });

  it('shows every field once', () => {
    const shown = [...mainFields[kind], ...furtherFields(kind)];
    expect(shown.toSorted()).toEqual(Object.keys(fieldsByKind[kind]).toSorted());
  });

  it('takes every choice its controls offer', () => {
    const begin = kind === 'line' || kind === 'chart' ? firstFields[kind] : {};
    for (const name of Object.keys(fieldsByKind[kind])) {
      const control = fieldControl(kind, name);
      const values: readonly unknown[] =
        control.kind === 'choice'
          ? control.values
          : control.kind === 'several'
            ? [...control.values.map((value) => [value]), control.values]
            : control.kind === 'number'
              ? [control.low, control.high, 'fit']
              : control.kind === 'tick'
                ? [true, false]
                : [];
      for (const value of values) {
        const read = parseMaterialSpec({ kind, ...begin, [name]: value });
        expect(read.ok ? '' : read.error.message, `${name}: ${JSON.stringify(value)}`).toBe('');
      }
    }
  });

  it('offers the default of every field that is chosen', () => {
    for (const [name, field] of Object.entries(fieldsByKind[kind])) {
      const control = fieldControl(kind, name);
      if (control.kind === 'choice') expect(control.values, name).toContain(field.fallback);
    }
  });
});

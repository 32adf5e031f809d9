import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parseDocument } from 'yaml';
import { findJsonFlaw, formatJsonFault, parseJson } from './json-text.ts';

const told = (text: string) => {
  const read = parseJson(text);
  return read.ok ? null : formatJsonFault('unit.json', read.error);
};

describe('a text written by hand', () => {
  test('is read, also behind a mark of byte order', () => {
    expect(parseJson('\uFEFF{"a": [1, {"b": null}]}')).toEqual({ ok: true, value: { a: [1, { b: null }] } });
  });

  test('shows where it breaks', () => {
    expect(told('{\n  "unit": {},\n  "skills" []\n}')).toBe(
      'unit.json (line 3, column 12) is not JSON. Put a colon here.',
    );
    expect(told('')).toBe('unit.json (line 1, column 1) is not JSON. Put a value here.');
  });

  test('tells whether it was cut off', () => {
    const cutOff = (text: string) => {
      const read = parseJson(text);
      return !read.ok && read.error.atEnd;
    };
    const text = '{"a": [1, {"b": "long"}], "c": true}';
    for (let end = 0; end < text.length; end++)
      // A word that is cut off is no word: that is where it begins.
      if (!/t(ru?)?$/.test(text.slice(0, end))) expect(cutOff(text.slice(0, end)), `${end}`).toBe(true);
    expect(cutOff('{"a" 1}')).toBe(false);
    expect(cutOff('{"a": 1, "a": 2}')).toBe(false);
  });

  test('that says a field twice is refused with its name and place', () => {
    expect(told('{\n  "id": "a",\n  "demand": 3,\n  "id": "b"\n}')).toBe(
      'unit.json (line 4, column 3) says "id" twice. Keep one of the two.',
    );
    expect(told('[{"a": 1}, {"b": {"c": 1, "c": 1}}]')).toContain('says "c" twice');
    expect(told('{"a": 1, "\\u0061": 2}')).toContain('says "a" twice');
    expect(told('{"__proto__": 1, "__proto__": 2}')).toContain('says "__proto__" twice');
  });

  test.each([
    '[{"a": 1}, {"a": 2}]',
    '{"a": {"a": {"a": 1}}}',
    '{"a": {"b": 1}, "b": 2}',
    '{"a": "b", "b": "a"}',
  ])('may say a field again in another object: %s', (text) => expect(told(text)).toBeNull());
});

// The engine's own JSON.parse (ECMA-262, 25.5.1) is the outside judge of what is JSON.
test('what breaks agrees with JSON.parse', () => {
  const signs = fc.constantFrom(...'{}[]",:0-1.eE+\\u tfn\n', 'true', 'null', '"a"', '\u0001');
  const isJson = (text: string) => {
    try {
      JSON.parse(text);
      return true;
    } catch {
      return false;
    }
  };
  const agrees = (text: string) => {
    const flaw = findJsonFlaw(text);
    // What is said twice is found before what breaks behind it.
    if (flaw?.kind !== 'twice') expect(flaw === null).toBe(isJson(text));
    const read = parseJson(text);
    if (read.ok) expect(read.value).toEqual(JSON.parse(text));
  };
  fc.assert(
    fc.property(
      fc.oneof(
        fc.string({ unit: signs }),
        fc.json().map((text) => text.replace('"', '')),
      ),
      agrees,
    ),
    { seed: 20261125, numRuns: 3000 },
  );
  fc.assert(
    fc.property(fc.json(), (text) => {
      expect(findJsonFlaw(text)).toBeNull();
    }),
    { seed: 20261125 },
  );
});

// The yaml library (2.9) is the outside judge of what is said twice: YAML 1.2 takes JSON in, and wants keys unique (3.2.1.1).
test('what is said twice agrees with the yaml library', () => {
  const key = fc.constantFrom('a', 'b', 'c', 'd', '\u00e9', 'long name');
  const { tree } = fc.letrec<{ tree: string }>((tie) => ({
    tree: fc.oneof(
      { maxDepth: 3 },
      fc.constantFrom('1', '"x"', 'null', 'true'),
      fc.array(tie('tree'), { maxLength: 3 }).map((items) => `[${items.join(', ')}]`),
      fc
        .array(fc.tuple(key, tie('tree')), { maxLength: 4 })
        .map(
          (fields) => `{${fields.map(([name, value]) => `${JSON.stringify(name)}: ${value}`).join(', ')}}`,
        ),
    ),
  }));
  let twice = 0;
  fc.assert(
    fc.property(tree, (text) => {
      const { errors } = parseDocument(text, { uniqueKeys: true, schema: 'json', prettyErrors: false });
      const flaw = findJsonFlaw(text);
      if (flaw !== null) twice++;
      expect(flaw !== null).toBe(errors.some(({ code }) => code === 'DUPLICATE_KEY'));
      expect(flaw?.kind ?? 'twice').toBe('twice');
    }),
    { seed: 20261126, numRuns: 2000 },
  );
  expect(twice).toBeGreaterThan(200);
});

import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';

const web = join(import.meta.dirname, '..');

/** Where a style belongs: a screen's folder, or `web` for what all screens share. */
const ownerOf = (file: string) => /screens\/[^/]+/.exec(file)?.[0] ?? file.split('/')[0] ?? '';

/** Class names that a file lays out on their own, wherever they stand; what is only meant for paper is left out. */
function bareClasses(css: string): readonly string[] {
  const plain = css
    .replaceAll(/\/\*[\s\S]*?\*\//g, '')
    .replaceAll(/@media print \{(?:[^{}]*\{[^{}]*\})*[^{}]*\}/g, '');
  return [...plain.matchAll(/([^{}]+)\{/g)]
    .flatMap(([, selectors = '']) => selectors.split(','))
    .flatMap((selector) => /^\.([\w-]+)$/.exec(selector.trim())?.[1] ?? []);
}

// Every screen's styles come to stand beside all the others', so one name must not mean two things.
test('no two screens lay out the same class', () => {
  const owners = new Map<string, Set<string>>();
  const files = readdirSync(web, { recursive: true, encoding: 'utf8' }).filter((file) =>
    file.endsWith('.css'),
  );
  expect(files.length).toBeGreaterThan(20);
  for (const file of files)
    for (const name of bareClasses(readFileSync(join(web, file), 'utf8'))) {
      const known = owners.get(name) ?? new Set();
      owners.set(name, known.add(ownerOf(file.replaceAll('\\', '/'))));
    }
  const shared = [...owners]
    .filter(([, by]) => by.size > 1)
    .map(([name, by]) => `${name}: ${[...by].join(', ')}`);
  expect(shared).toEqual([]);
});

/** Class names written out in a screen's components. */
const usedClasses = (source: string): readonly string[] =>
  [...source.matchAll(/className="([^"]+)"/g)].flatMap(([, names = '']) => names.split(/\s+/));

test('no screen lays out a class that another screen uses', () => {
  const screens = join(web, 'screens');
  const files = readdirSync(screens, { recursive: true, encoding: 'utf8' }).map((file) =>
    file.replaceAll('\\', '/'),
  );
  const screenOf = (file: string) => file.split('/')[0] ?? '';
  const owners = new Map<string, string>();
  for (const file of files.filter((name) => name.endsWith('.css')))
    for (const name of bareClasses(readFileSync(join(screens, file), 'utf8')))
      owners.set(name, screenOf(file));
  const strays = files
    .filter((name) => name.endsWith('.tsx'))
    .flatMap((file) =>
      usedClasses(readFileSync(join(screens, file), 'utf8'))
        .filter((name) => owners.has(name) && owners.get(name) !== screenOf(file))
        .map((name) => `${name} of ${owners.get(name)} in ${file}`),
    );
  expect(owners.size).toBeGreaterThan(100);
  expect(strays).toEqual([]);
});

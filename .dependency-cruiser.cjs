// Which module may import which. Between modules only by door (`#name`); inside a module by relative path.
const arrows = {
  core: [],
  music: ['core'],
  planning: ['core', 'listening'],
  listening: ['core', 'music'],
  engraving: ['core', 'music'],
  sound: ['core', 'music'],
  paper: ['core', 'engraving'],
  contract: ['core', 'music', 'planning', 'listening'],
  studio: ['core', 'music', 'planning', 'listening', 'contract'],
  storage: ['core', 'music', 'planning', 'contract', 'studio'],
  demo: ['core', 'music', 'planning', 'contract', 'studio'],
  server: [
    'core',
    'music',
    'planning',
    'listening',
    'engraving',
    'sound',
    'paper',
    'contract',
    'studio',
    'storage',
    'demo',
  ],
  cli: [
    'core',
    'music',
    'planning',
    'listening',
    'engraving',
    'sound',
    'paper',
    'contract',
    'studio',
    'storage',
    'demo',
    'server',
  ],
  web: ['core', 'music', 'planning', 'listening', 'engraving', 'sound', 'contract'],
};
// A package stands behind the modules that may know it.
const packages = {
  core: ['temporal-polyfill'],
  music: [],
  planning: ['ts-fsrs', 'zod', 'yaml'],
  listening: [],
  engraving: ['verovio'],
  sound: ['spessasynth_core'],
  paper: ['@myriaddreamin/typst-ts-node-compiler', '@fontsource', 'node:'],
  contract: ['zod'],
  studio: ['ical.js', 'papaparse'],
  storage: ['kysely', 'better-sqlite3', 'pg', 'zod', 'node:'],
  demo: [],
  server: ['hono', '@hono/node-server', 'zod', 'node:'],
  cli: ['mediabunny', '@mediabunny', 'node:'],
  web: [
    'react',
    'react-dom',
    'react-aria-components',
    'wouter',
    'markdown-to-jsx',
    '@tanstack/react-query',
    'vite',
    '@vitejs/plugin-react',
    '@fontsource',
    '@fontsource-variable',
  ],
};
const tests = '\\.(test|contract)\\.tsx?$';
const rules = [];
for (const [module, allowed] of Object.entries(arrows)) {
  const inside = `^src/${module}/`;
  rules.push({
    name: `${module}-imports`,
    severity: 'error',
    from: { path: inside, pathNot: tests },
    to: { path: '^src/', pathNot: [inside, ...allowed.map((a) => `^src/${a}/index\\.ts$`)] },
  });
  const known = packages[module]
    .map((p) => (p === 'node:' ? null : `^node_modules/(@types/)?${p}(/|$)`))
    .filter(Boolean);
  rules.push({
    name: `${module}-packages`,
    severity: 'error',
    from: { path: inside, pathNot: tests },
    to: {
      dependencyTypes: ['npm', 'npm-dev', 'npm-optional', 'npm-peer', 'npm-no-pkg', 'npm-unknown'],
      pathNot: known.length ? known : ['^$'],
    },
  });
  if (!packages[module].includes('node:'))
    rules.push({
      name: `${module}-no-node`,
      severity: 'error',
      from: { path: inside, pathNot: tests },
      to: { dependencyTypes: ['core'] },
    });
}
module.exports = {
  forbidden: [
    { name: 'no-cycles', severity: 'error', from: {}, to: { circular: true } },
    { name: 'resolvable', severity: 'error', from: {}, to: { couldNotResolve: true } },
    {
      name: 'web-screens-stand-on-top',
      severity: 'error',
      from: { path: '^src/web/', pathNot: '^src/web/(screens/|app/routes\\.tsx$)' },
      to: { path: '^src/web/screens/' },
    },
    ...rules,
  ],
  options: {
    tsConfig: { fileName: 'tsconfig.base.json' },
    tsPreCompilationDeps: true,
    enhancedResolveOptions: {
      conditionNames: ['levare-source', 'import', 'node', 'default'],
      exportsFields: ['exports'],
    },
    doNotFollow: { path: 'node_modules' },
    exclude: { path: '\\.css$' },
  },
};

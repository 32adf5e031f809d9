import { defineConfig } from 'vitest/config';

// Four suites, one runner. `unit` is seconds; `storage` runs one contract on three databases; `checks` holds our
// answers against outside sources; `e2e` drives a real browser against the built application.
const resolve = { conditions: ['levare-source'] };
// Not 'import': it reaches Node's own require too, and then packages with two builds (pg) load the wrong one.
const ssr = { resolve: { conditions: ['levare-source', 'node'] } };

export default defineConfig({
  test: {
    projects: [
      {
        resolve,
        ssr,
        test: {
          name: 'unit',
          include: ['src/**/*.test.{ts,tsx}'],
          exclude: ['src/storage/**'],
          testTimeout: 300_000,
        },
      },
      {
        resolve,
        ssr,
        test: {
          name: 'storage',
          include: ['src/storage/**/*.test.ts'],
          testTimeout: 120_000,
          hookTimeout: 120_000,
        },
      },
      { resolve, ssr, test: { name: 'checks', include: ['checks/**/*.check.ts'], testTimeout: 600_000 } },
      {
        resolve,
        ssr,
        test: {
          name: 'e2e',
          include: ['e2e/**/*.e2e.ts'],
          testTimeout: 600_000,
          hookTimeout: 300_000,
          fileParallelism: false,
        },
      },
    ],
  },
});

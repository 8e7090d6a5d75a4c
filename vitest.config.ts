import { defineConfig } from 'vitest/config';

const results = process.env.FETTLE_TEST_RESULTS;

/** All cores; and a worker keeps the modules it has loaded from one file to the next, since no test changes them. */
const shared = { maxWorkers: '100%', isolate: false } as const;

export default defineConfig({
  test: {
    reporters: results ? ['default', ['json', { outputFile: results }]] : ['default'],
    // A poll waits for an answer, and is no race: vitest's own limit of a second makes it one on a busy machine.
    // Every other limit is there to end what hangs, far above what a busy machine takes.
    expect: { poll: { timeout: 120_000 } },
    projects: [
      {
        extends: true,
        test: {
          name: 'quick',
          ...shared,
          include: ['tests/**/*.test.ts'],
          exclude: ['tests/long/**', 'tests/goes/**', 'tests/browser/**', 'node_modules/**'],
          testTimeout: 180_000,
          hookTimeout: 180_000,
        },
      },
      {
        extends: true,
        test: {
          name: 'browser',
          ...shared,
          include: ['tests/browser/*.test.ts'],
          globalSetup: 'tests/browser/support/built-pages.ts',
          testTimeout: 300_000,
          hookTimeout: 300_000,
        },
      },
      {
        extends: true,
        test: {
          name: 'long',
          ...shared,
          include: ['tests/long/**/*.test.ts', 'tests/goes/**/*.test.ts', 'tests/browser/long/**/*.test.ts'],
          globalSetup: 'tests/browser/support/built-pages.ts',
          testTimeout: 3_600_000,
          hookTimeout: 300_000,
        },
      },
    ],
  },
});

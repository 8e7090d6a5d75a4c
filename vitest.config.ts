import { defineConfig } from 'vitest/config';

const results = process.env.FETTLE_TEST_RESULTS;

export default defineConfig({
  test: {
    reporters: results ? ['default', ['json', { outputFile: results }]] : ['default'],
    projects: [
      {
        test: {
          name: 'quick',
          include: ['tests/**/*.test.ts'],
          exclude: ['tests/long/**', 'tests/browser/**', 'node_modules/**'],
          testTimeout: 30_000,
        },
      },
      {
        test: {
          name: 'browser',
          include: ['tests/browser/**/*.test.ts'],
          globalSetup: 'tests/browser/support/say-no-browser.ts',
          fileParallelism: false,
          testTimeout: 60_000,
          hookTimeout: 60_000,
          // A poll waits for an answer, and is no race: vitest's own limit of a second makes it one on a busy machine.
          expect: { poll: { timeout: 30_000 } },
        },
      },
      { test: { name: 'long', include: ['tests/long/**/*.test.ts'], testTimeout: 600_000 } },
    ],
  },
});

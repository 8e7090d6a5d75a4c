import { expect, test } from 'vitest';
import type { Setting } from '../support/random-settings.ts';
import { faultsOf } from './fuzz-motion.ts';
import kept from './kept.json' with { type: 'json' };

// Every setting that was once answered wrongly; `fuzzMotion` finds more and gives them in this form.
test.each(kept)('$title', ({ setting }) => {
  expect(faultsOf(setting as Setting)).toEqual([]);
});

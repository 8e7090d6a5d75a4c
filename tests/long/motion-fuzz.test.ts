import { expect, test } from 'vitest';
import { fuzzMotion } from '../fuzz/fuzz-motion.ts';

/** Seconds and first seed can be given by FETTLE_FUZZ_SECONDS and FETTLE_FUZZ_SEED: a day of it, or a case again. */
const seconds = Number(process.env.FETTLE_FUZZ_SECONDS ?? 60);
const firstSeed = Number(process.env.FETTLE_FUZZ_SEED ?? 1);

test(`${seconds} s of random settings from seed ${firstSeed} are all answered rightly`, {
  timeout: (seconds + 3600) * 1000,
}, () => {
  const { tried, found } = fuzzMotion(firstSeed, seconds);
  expect(tried).toBeGreaterThan(0);
  // the whole setting is printed, to be kept in tests/fuzz/kept.json
  expect(found.map((failure) => JSON.stringify(failure))).toEqual([]);
});

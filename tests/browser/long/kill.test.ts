import { afterAll, beforeAll, expect, it } from 'vitest';
import { type Harness, openHarness } from '../support/harness.ts';
import { describeInBrowser } from '../support/in-browser.ts';
import { type KillSeries, killSeries } from '../support/kill-series.ts';

describeInBrowser('a job that is edited when its page is killed', () => {
  let harness: Harness;
  let series: KillSeries;
  beforeAll(async () => {
    harness = await openHarness();
    series = await killSeries();
  });
  afterAll(async () => {
    await series.end();
    harness.close();
  });

  it.each([
    ['page', 1],
    ['page', 2],
    ['page', 3],
    ['browser', 4],
    ['browser', 5],
  ])('has lost its last gesture at most, where one follows the other (%s killed, %i)', async (what, seed) => {
    const killed = await series.kill(harness.fromDisk, seed, { paced: true, all: what === 'browser' });
    expect(killed.whole).toBe(true);
    // a gesture is begun once the one before it is kept
    expect(killed.found).toBeGreaterThanOrEqual(killed.begun - 1);
  });

  it.each([
    ['page', 6],
    ['page', 7],
    ['page', 8],
    ['browser', 9],
    ['browser', 10],
  ])('has all that was said to be kept, however fast edits come (%s killed, %i)', async (what, seed) => {
    const killed = await series.kill(harness.served, seed, { paced: false, all: what === 'browser' });
    expect(killed.whole).toBe(true);
    expect(killed.found).toBeGreaterThanOrEqual(killed.kept);
  });
});

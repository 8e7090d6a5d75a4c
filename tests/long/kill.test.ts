import { afterAll, beforeAll, expect, it } from 'vitest';
import { type Harness, openHarness } from '../browser/support/harness.ts';
import { describeInBrowser } from '../browser/support/in-browser.ts';
import { type KillSeries, killSeries } from '../browser/support/kill-series.ts';

const kills = 100;

describeInBrowser('a job that is edited when its page is killed, many times', () => {
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

  it(`has lost its last gesture at most, and nothing that was said to be kept, in ${kills} of ${kills}`, async () => {
    const lost: unknown[] = [];
    for (let seed = 1001; seed <= 1000 + kills; seed += 1) {
      const [paced, all] = [seed % 2 === 0, seed % 5 === 0];
      const killed = await series.kill(seed % 3 === 0 ? harness.served : harness.fromDisk, seed, { paced, all });
      const least = paced ? Math.max(killed.begun - 1, killed.kept) : killed.kept;
      if (!killed.whole || killed.found < least) lost.push({ seed, ...killed });
    }
    expect(lost).toEqual([]);
  });
});

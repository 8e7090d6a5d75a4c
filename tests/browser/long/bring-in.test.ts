import { afterAll, beforeAll, expect, it } from 'vitest';
import { describeInBrowser } from '../support/in-browser.ts';
import { openWorkedJob, settled, type Viewer } from '../support/viewer-page.ts';

/** Files to be read lie in the worker's letter box until the page says `handOver()`. Runs in the page, before all else. */
function holdUpFiles(): void {
  const held: (() => void)[] = [];
  window.Worker = class extends Worker {
    override postMessage(message: { readonly question?: { readonly kind: string } }): void {
      const post = (): void => super.postMessage(message);
      if (message.question?.kind === 'import') held.push(post);
      else post();
    }
  };
  Object.assign(window, { handOver: () => held.splice(0).map((post) => post()).length });
}

describeInBrowser('a file of outlines that takes long to read', () => {
  let viewer: Viewer;
  beforeAll(async () => {
    viewer = await openWorkedJob({ first: holdUpFiles });
    await viewer.page.locator('.steps [data-step="outlines"] button.line').click();
  }, 120_000);
  afterAll(() => viewer?.context.close());

  it('comes into the part as it is by then: what was changed meanwhile stays', async () => {
    const { page } = viewer;
    await page.locator('.panel .opener input[type="file"]').last().setInputFiles('tests/fixtures/intake/features.csv');
    await page.locator('details.about summary').click();
    const name = page.locator('details.about input[type="text"]').first();
    await name.fill('Renamed meanwhile');
    await name.press('Enter');
    await page.waitForFunction(() => (window as unknown as { handOver: () => number }).handOver() > 0);
    // three outlines of the file, under the name that was given while it was read
    await page.getByText('Renamed meanwhile: 12 outlines').waitFor({ timeout: 20_000 });
    await settled(page);
    expect(viewer.complaints).toEqual([]);
  }, 60_000);
});

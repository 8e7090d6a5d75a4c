import { afterAll, beforeAll, expect, it } from 'vitest';
import { describeInBrowser } from '../support/in-browser.ts';
import { openViewer, settled, type Viewer } from '../support/viewer-page.ts';

describeInBrowser('a job made from nothing on a tablet', () => {
  let viewer: Viewer;
  beforeAll(async () => {
    viewer = await openViewer({ width: 820, height: 1180 });
    await viewer.page.getByRole('button', { name: 'Begin a new job' }).click();
    await settled(viewer.page);
  }, 120_000);
  afterAll(() => viewer?.context.close());

  const open = (step: string): Promise<void> => viewer.page.locator(`.steps [data-step="${step}"] button.line`).click();

  it('says in every step what is needed next, and nothing of files', async () => {
    const { page } = viewer;
    for (const step of ['dowel-up', 'offer-up', 'grind', 'mark-out']) {
      await open(step);
      const line = page.locator(`.steps [data-step="${step}"] button.line span`);
      expect(await line.textContent()).toBe("Trace the Block's face first.");
    }
    expect(await page.locator('#card').textContent()).not.toMatch(/\.json|found nothing/);
  });

  it('leads to where it is done, by targets a finger can hit', async () => {
    const { page } = viewer;
    const wanted = page.getByRole('button', { name: "Trace the Housing's face first." });
    expect((await wanted.boundingBox())?.height).toBeGreaterThanOrEqual(44);
    await wanted.click();
    await page.locator('.outlines button[aria-pressed="true"]', { hasText: 'Housing' }).waitFor();
    expect(viewer.complaints).toEqual([]);
  });
});

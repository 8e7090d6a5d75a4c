import { afterAll, beforeAll, expect, it } from 'vitest';
import { describeInBrowser } from '../support/in-browser.ts';
import { openWorkedJob, settled, type Viewer } from '../support/viewer-page.ts';

describeInBrowser('a cut in both parts', () => {
  let viewer: Viewer;
  beforeAll(async () => {
    viewer = await openWorkedJob();
    const { page } = viewer;
    await page.locator('.steps [data-step="grind"] button.line').click();
    await page.getByRole('combobox', { name: 'Cut', exact: true }).selectOption('both');
    await page.getByRole('checkbox', { name: /^Marsh carrier transfer case: lips$/ }).check();
    await settled(page);
  }, 240_000);
  afterAll(() => viewer?.context.close());

  it('has every section that may be cut named with its part', async () => {
    const labels = await viewer.page
      .locator('fieldset', { hasText: 'May be cut' })
      .locator('label.tick')
      .allTextContents();
    expect(labels).toContain('Iron four: ribs');
    expect(labels.every((label) => /^(Iron four|Marsh carrier transfer case): ./.test(label))).toBe(true);
  });

  it('has what comes off in a table for each, named with its part', async () => {
    const captions = await viewer.page.locator('caption').allTextContents();
    expect(captions).toEqual(['Take off Iron four', 'Take off Marsh carrier transfer case']);
  });

  it('is read off the drawing with the name of the part that is touched', async () => {
    const { page } = viewer;
    const said = page.locator('.panel [aria-live="polite"]');
    const read = new Set<string>();
    for (const place of await page.locator('.labels .place').all()) {
      const box = await place.boundingBox();
      if (box === null) continue;
      await page.mouse.click(box.x + box.width / 2, box.y + box.height / 2);
      await expect.poll(() => said.textContent()).toMatch(/: Place \d+, .*: take off/);
      read.add((await said.textContent())?.split(':')[0] ?? '');
    }
    expect([...read].sort()).toEqual(['Iron four', 'Marsh carrier transfer case']);
  });

  it('has the places to mark out counted for each', async () => {
    const line = viewer.page.locator('.steps [data-step="mark-out"] button.line span');
    expect(await line.textContent()).toMatch(
      /^Iron four: \d+ places to mark out; Marsh carrier transfer case: \d+ places to mark out$/,
    );
    expect(viewer.complaints).toEqual([]);
  });
});

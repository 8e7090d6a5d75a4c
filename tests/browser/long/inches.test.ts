import { readFileSync } from 'node:fs';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { schemaIds } from '../../../src/files/file-text.ts';
import { demoJob } from '../../../viewer/heavy/demo-job.ts';
import { describeInBrowser } from '../support/in-browser.ts';
import { openWorkedJob, settled, toldInFull, type Viewer } from '../support/viewer-page.ts';

describeInBrowser('lengths shown in inches', () => {
  let viewer: Viewer;
  beforeAll(async () => {
    viewer = await openWorkedJob();
    await show('in');
  });
  afterAll(() => viewer?.context.close());

  const show = (units: string) => viewer.page.getByLabel('Show lengths in').selectOption(units);
  const open = async (step: string): Promise<void> => {
    const line = viewer.page.locator(`.steps [data-step="${step}"] button.line`);
    if ((await line.getAttribute('aria-expanded')) === 'false') await line.click();
    await settled(viewer.page);
  };
  const field = (name: RegExp) => viewer.page.locator('.panel').getByRole('textbox', { name }).first();
  const savedJob = async (): Promise<unknown> => {
    await viewer.page.evaluate(() => Object.assign(window, { showSaveFilePicker: undefined }));
    const coming = viewer.page.waitForEvent('download');
    await viewer.page.getByRole('button', { name: 'Save the job' }).click();
    return JSON.parse(readFileSync(await (await coming).path(), 'utf8'));
  };
  const retype = async (name: RegExp): Promise<void> => {
    const shown = await field(name).inputValue();
    await field(name).fill('9999');
    await field(name).fill(shown);
    await field(name).press('Enter');
  };

  it('are those of the job: 190 mm of stand-off are 7.4803 in, and what is told is told in inches', async () => {
    await open('offer-up');
    expect(await field(/^stand-off/).inputValue()).toBe('7.4803');
    const told = await toldInFull(viewer.page);
    expect(told).toContain('0.11 in');
    // a warning is part of the answer, in the units of the job
    expect(told.replace(/\nWarnings\n[\s\S]*?\n\n?(?=What this)/, '\n')).not.toMatch(/\d mm\b/);
    await viewer.page.getByRole('slider', { name: 'The way in' }).press('End');
    await expect
      .poll(() => viewer.page.locator('#way-in output').textContent())
      .toContain('stand-off 0 in: 0.11 in clear');
  });

  it('typed again unchanged, in every field, leave the job as it was to the last digit', async () => {
    await open('offer-up');
    for (const name of [/^stand-off/, /^shift x/]) await retype(name);
    await open('grind');
    for (const name of [/^home/, /^on the way in/, /^radius/]) await retype(name);
    await open('outlines');
    await viewer.page.getByRole('button', { name: /^ribs/ }).click();
    await viewer.page.getByText('Depth, name, how it was got').click();
    for (const name of [/^From/, /^to, from face/, /^Good to/]) await retype(name);
    await settled(viewer.page);
    expect(await savedJob()).toEqual({ $schema: schemaIds['fettle-job/1'], ...demoJob() });
  });

  it('typed anew go into the file in the units of the file', async () => {
    await open('grind');
    await field(/^home/).fill('0.125');
    await field(/^home/).press('Enter');
    await settled(viewer.page);
    expect(await savedJob()).toMatchObject({ fit: { units: 'mm', clearance: { home: 3.175 } } });
  });

  it('are a choice that a page opened anew still knows, and that is taken back at a touch', async () => {
    const { page } = viewer;
    await page.reload();
    await settled(page);
    expect(await page.getByLabel('Show lengths in').inputValue()).toBe('in');
    await show('files');
    await open('grind');
    expect(await field(/^home/).inputValue()).toBe('3.175');
    expect(viewer.complaints).toEqual([]);
  });
});

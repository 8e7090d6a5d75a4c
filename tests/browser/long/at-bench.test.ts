import { afterAll, beforeAll, expect, it } from 'vitest';
import { runCli } from '../../support/run-cli.ts';
import { accessibilityFaults } from '../support/accessibility.ts';
import { describeInBrowser } from '../support/in-browser.ts';
import { openWorkedJob, settled, type Viewer } from '../support/viewer-page.ts';

describeInBrowser('what is worked out at the bench, on a phone', () => {
  let viewer: Viewer;
  const form = (name: string) =>
    viewer.page.locator('details', { has: viewer.page.locator('summary', { hasText: name }) });
  const field = (within: string, name: RegExp) => form(within).getByRole('textbox', { name }).first();
  const enter = async (within: string, name: RegExp, text: string): Promise<void> => {
    await field(within, name).fill(text);
    await field(within, name).press('Enter');
  };
  const openForm = (name: string) => form(name).locator('summary').first().click();
  const openStep = () => viewer.page.locator('.steps [data-step="dowel-up"] button.line').click();
  const lineOf = (name: string) => form(name).getByRole('status').locator('p');

  beforeAll(async () => {
    viewer = await openWorkedJob({ size: { width: 390, height: 844 } });
    await openStep();
  }, 120_000);
  afterAll(() => viewer?.context.close());

  it('is a hole, told as the command tells it', async () => {
    await openForm('A tapped hole');
    await enter('A tapped hole', /^Thread/, 'M12x1.25');
    await enter('A tapped hole', /^Boss/, '20');
    await expect.poll(() => lineOf('A tapped hole').textContent()).toBe('DRILL: drill 10.8 mm for M12x1.25.');
    await form('A tapped hole').getByText('In full').click();
    const { stdout } = await runCli('hole', 'M12x1.25', '--boss', '20');
    await expect.poll(() => form('A tapped hole').locator('pre').textContent()).toBe(stdout.slice(0, -1));
    expect(await accessibilityFaults(viewer.page)).toEqual([]);
  }, 60_000);

  it('what cannot be is said by the name of its field, and put right again', async () => {
    await enter('A tapped hole', /^Thread/, 'M12x9');
    await expect.poll(() => form('A tapped hole').getByRole('alert').textContent()).toContain('Thread: found "M12x9"');
    await enter('A tapped hole', /^Thread/, 'M12x1.25');
    await lineOf('A tapped hole').waitFor();
  }, 60_000);

  it('is a bore, by readings each at its place', async () => {
    await openForm('The bore by a dial');
    for (const [place, read] of [
      ["12 o'clock", '0'],
      ["3 o'clock", '0.06'],
      ["6 o'clock", '0.31'],
      ["9 o'clock", '-0.25'],
    ] as const)
      await enter('The bore by a dial', new RegExp(`^${place}`), read);
    await expect.poll(() => lineOf('The bore by a dial').textContent()).toMatch(/^(UNDECIDED|OUT OF LINE)/);
    await enter('The bore by a dial', /^9 o'clock/, '0.25');
    await expect.poll(() => lineOf('The bore by a dial').textContent()).toMatch(/^OUT OF LINE: .*0\.182 mm/);
    expect(await accessibilityFaults(viewer.page)).toEqual([]);
  }, 60_000);

  it('lengths typed in inches are the same lengths when millimetres are shown again', async () => {
    const show = (units: string) => viewer.page.getByLabel('Show lengths in').selectOption(units);
    await show('in');
    await enter('A tapped hole', /^Boss/, '0.75');
    await show('files');
    await expect.poll(() => field('A tapped hole', /^Boss/).inputValue()).toBe('19.05');
    const { stdout } = await runCli('hole', 'M12x1.25', '--boss', '0.75in');
    await form('A tapped hole').getByText('In full').click();
    await expect.poll(() => form('A tapped hole').locator('pre').textContent()).toBe(stdout.slice(0, -1));
  }, 60_000);

  it('is still there when the page is opened anew, and gone when cleared', async () => {
    await viewer.page.reload();
    await settled(viewer.page);
    const line = viewer.page.locator('.steps [data-step="dowel-up"] button.line');
    if ((await line.getAttribute('aria-expanded')) === 'false') await line.click();
    await openForm('A tapped hole');
    expect(await field('A tapped hole', /^Thread/).inputValue()).toBe('M12x1.25');
    await lineOf('A tapped hole').waitFor();
    await form('A tapped hole').getByRole('button', { name: 'Clear' }).click();
    await expect.poll(() => field('A tapped hole', /^Thread/).inputValue()).toBe('');
    await expect.poll(() => form('A tapped hole').getByRole('status').count()).toBe(0);
    await openForm('Lengths along the crank');
    await enter('Lengths along the crank', /^depth of the bell/, '118');
    await expect.poll(() => lineOf('Lengths along the crank').textContent()).toMatch(/^UNDECIDED/);
    expect(await accessibilityFaults(viewer.page)).toEqual([]);
    expect(viewer.complaints).toEqual([]);
  }, 60_000);
});

import { afterAll, beforeAll, expect, it } from 'vitest';
import { drain } from '../../../src/geometry/progress.ts';
import { jobInFile } from '../../../src/job/read-job-file.ts';
import { analyse } from '../../../src/pipeline/analysis.ts';
import { findWays } from '../../../src/ways/find-ways.ts';
import { waysLine } from '../../../src/words/ways-text.ts';
import { demoJob } from '../../../viewer/heavy/demo-job.ts';
import { accessibilityFaults } from '../support/accessibility.ts';
import { describeInBrowser } from '../support/in-browser.ts';
import { openWorkedJob, settled, type Viewer } from '../support/viewer-page.ts';

/** What the command line says first of the same job. */
function saidByNode(fromDeg: number, toDeg: number): string {
  const job = jobInFile(demoJob(), 'demo.job.json');
  const analysis = job.ok ? analyse(job.value) : job;
  if (!analysis.ok) throw new Error('the demo job reads');
  const { joint } = analysis.value;
  const rad = Math.PI / 180;
  return waysLine(joint, drain(findWays(joint, { fromRad: fromDeg * rad, toRad: toDeg * rad })));
}

const asItWas = ['190 22', '14 22', '14 0'];
const widest = ['190 -16', '13 -16', '13 0'];

describeInBrowser('every way in, on a phone', () => {
  let viewer: Viewer;

  beforeAll(async () => {
    viewer = await openWorkedJob({ size: { width: 390, height: 844 } });
    await viewer.page.locator('.steps [data-step="offer-up"] button.line').click();
  }, 300_000);
  afterAll(() => viewer?.context.close());

  const verdict = () => viewer.page.locator('.every-way .conclusion');
  const line = () => viewer.page.locator('li[data-step="offer-up"] button.line span');
  const grip = (n: number) => viewer.page.getByRole('button', { name: new RegExp(`^Position ${n}:`) });
  const button = (name: string) => viewer.page.getByRole('button', { name, exact: true });
  const met = () => viewer.page.locator('.met');
  /** Stand-off and turn of every position but home, as their fields have them. */
  const positions = (): Promise<string[]> =>
    viewer.page.locator('.positions li').evaluateAll((rows) =>
      rows.flatMap((row) => {
        const [standOff, turn] = [...row.querySelectorAll('input')].map(({ value }) => value);
        return standOff === undefined ? [] : [`${standOff} ${turn}`];
      }),
    );
  const middleOf = async (n: number): Promise<{ x: number; y: number }> => {
    await grip(n).scrollIntoViewIfNeeded();
    const { x, y, width, height } = (await grip(n).boundingBox()) ?? { x: 0, y: 0, width: 0, height: 0 };
    return { x: x + width / 2, y: y + height / 2 };
  };
  const drag = async (n: number, byX: number, byY: number): Promise<void> => {
    const { x, y } = await middleOf(n);
    const { mouse } = viewer.page;
    await mouse.move(x, y);
    await mouse.down();
    for (const part of [0.5, 1]) await mouse.move(x + part * byX, y + part * byY);
    await mouse.up();
  };
  const undo = (): Promise<void> => viewer.page.getByRole('button', { name: 'Undo' }).click();

  it('says nothing until it is asked, and then what the command line says', async () => {
    expect(await verdict().count()).toBe(0);
    await button('Every way in').click();
    await expect.poll(() => verdict().textContent()).toBe(saidByNode(-45, 45));
    expect(await verdict().textContent()).toMatch(/^A WAY WITHOUT CUTTING/);
    expect(await viewer.page.locator('.grounds li').last().textContent()).toMatch(/^Nothing is known of what stands/);
  });

  it('puts the way into the job, where it holds, and undo has the old one back', async () => {
    expect(await positions()).toEqual(asItWas);
    const before = await line().textContent();
    await button('Take this way').click();
    await expect.poll(positions).toEqual(widest);
    await settled(viewer.page);
    expect(await line().textContent()).toMatch(/^(GOES|SHOULD GO):/);
    expect(await viewer.page.locator('.every-way').textContent()).toContain('The job goes this way.');
    await undo();
    await expect.poll(positions).toEqual(asItWas);
    await expect.poll(() => line().textContent()).toBe(before);
    expect(await button('Take this way').count()).toBe(1);
  });

  it('names the sections that meet where the map is touched, and how deep', async () => {
    const plot = viewer.page.locator('.turn-map .plot');
    const { width = 0, height = 0 } = (await plot.boundingBox()) ?? {};
    await plot.click({ position: { x: 0.5 * width, y: 0.5 * height } });
    await expect.poll(() => met().textContent()).toMatch(/flange meets lips, from face [\d.]+ to [\d.]+ mm\./);
    await plot.click({ position: { x: 0.3 * width, y: 0.1 * height } });
    await expect.poll(() => met().textContent()).toContain('Nothing comes nearer than asked.');
  });

  it('moves a position that is dragged, with what shares its turn or its stand-off; one drag is taken back as one', async () => {
    await drag(2, -40, -20);
    const [first = '', second = '', third = ''] = await positions();
    const [off, turn] = second.split(' ').map(Number);
    expect(turn).toBeLessThan(14);
    expect(off).toBeGreaterThan(14);
    expect(first).toBe(`190 ${turn}`);
    expect(third).toBe(`${off} 0`);
    await expect.poll(() => met().textContent()).toContain(`Position 2: turned ${turn?.toFixed(1)}°`);
    await settled(viewer.page);
    await undo();
    await expect.poll(positions).toEqual(asItWas);
  });

  it('moves nothing where a finger trembles on a handle, and none past what it shows', async () => {
    await drag(2, 2, -1);
    expect(await positions()).toEqual(asItWas);
    await drag(1, 0, -30);
    expect(await positions()).toEqual(asItWas);
  });

  it('keeps a turn that is shared with home, and says so', async () => {
    await drag(3, 40, -20);
    const [, , third = ''] = await positions();
    expect(third).toMatch(/ 0$/);
    expect(third).not.toBe('14 0');
    await expect.poll(() => met().textContent()).toContain('It slides home from here');
    await undo();
    await expect.poll(positions).toEqual(asItWas);
  });

  it('marks where the part stands, at home and on its way', async () => {
    const mark = viewer.page.locator('.turn-map .stands');
    const [cx, cy] = await Promise.all(
      ['cx', 'cy'].map(async (name) => Number(await viewer.page.locator('.turn-map .home').getAttribute(name))),
    );
    const slider = viewer.page.locator('#way-in').getByRole('slider');
    await slider.press('End');
    await expect.poll(() => mark.getAttribute('d')).toMatch(new RegExp(`^M${(cx ?? 0) - 7},${cy}l`));
    for (let i = 0; i < 12; i++) await slider.press('ArrowLeft');
    await expect.poll(() => mark.getAttribute('d')).not.toMatch(new RegExp(`^M${(cx ?? 0) - 7},${cy}l`));
    await slider.press('End');
  });

  it('does all of that by key alone', async () => {
    const { keyboard } = viewer.page;
    await grip(2).focus();
    for (const key of ['ArrowLeft', 'ArrowLeft', 'ArrowUp']) await keyboard.press(key);
    await expect.poll(positions).toEqual(['190 21', '14.5 21', '14.5 0']);
    await keyboard.press('Control+z');
    await expect.poll(positions).toEqual(asItWas);
    await viewer.page.locator('.turn-map .plot').focus();
    await keyboard.press('Enter');
    await keyboard.press('ArrowDown');
    await expect.poll(() => met().textContent()).toMatch(/flange meets lips/);
    await button('Take this way').focus();
    await keyboard.press('Enter');
    await expect.poll(positions).toEqual(widest);
    await keyboard.press('Control+z');
    await expect.poll(positions).toEqual(asItWas);
  });

  it('looks again where there is less room to turn', async () => {
    const least = viewer.page.getByRole('textbox', { name: /^least turn/ });
    await least.fill('0');
    await least.press('Enter');
    await expect.poll(() => verdict().textContent()).toBe(saidByNode(0, 45));
    await least.fill('45');
    await least.press('Enter');
    expect(await least.inputValue()).toBe('-45');
    await expect.poll(() => verdict().textContent()).toBe(saidByNode(-45, 45));
  });

  it('has no fault an accessibility check finds, light or dark', async () => {
    const { page } = viewer;
    for (const colorScheme of ['dark', 'light'] as const) {
      await page.emulateMedia({ colorScheme });
      expect(await accessibilityFaults(page)).toEqual([]);
    }
  });

  it('has nothing smaller than a thumb, and nothing beyond the edge of the screen', async () => {
    for (const size of [
      { width: 390, height: 844 },
      { width: 820, height: 1180 },
      { width: 1440, height: 900 },
    ]) {
      await viewer.page.setViewportSize(size);
      const small = await viewer.page.locator('.every-way button').evaluateAll((all) =>
        all
          .map((each) => ({ each, box: each.getBoundingClientRect() }))
          .filter(({ box }) => Math.min(box.height, box.width) < 44)
          .map(({ each }) => each.outerHTML.slice(0, 120)),
      );
      expect(small).toEqual([]);
      expect(await viewer.page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(
        0,
      );
    }
    expect(viewer.complaints).toEqual([]);
  });
});

import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { newFolder } from '../support/harness.ts';
import { describeInBrowser } from '../support/in-browser.ts';
import { openViewer, settled, type Viewer } from '../support/viewer-page.ts';

/** A plate 300 wide with a bore about the axis and four holes, as a table with a turn and a shift of its own. */
function plateTable(
  unit: string,
  turnDeg: number,
  [dx, dy]: readonly [number, number],
  order: readonly number[],
): string {
  const rad = (turnDeg * Math.PI) / 180;
  const at = ([x = 0, y = 0]: readonly number[]): string =>
    [x * Math.cos(rad) - y * Math.sin(rad) + dx, x * Math.sin(rad) + y * Math.cos(rad) + dy]
      .map((value) => value.toFixed(3))
      .join(',');
  const corners = [
    [-150, -120],
    [150, -120],
    [150, 120],
    [-150, 120],
  ];
  const holes = [
    [-120, 0],
    [118, 12],
    [-100, 95],
    [104, -92],
    [60, 100],
  ];
  return [
    `section,loop,kind,x${unit},y,diameter`,
    ...corners.map((corner, i) => `${i === 0 ? 'face' : ''},1,${i === 0 ? 'point' : ''},${at(corner)},`),
    `,,circle,${at([0, 0])},80`,
    ...order.map((i) => `,,circle,${at(holes[i] ?? [])},${i < 2 ? 14 : 11}`),
  ].join('\n');
}

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
    await page.locator('.outlines').getByRole('button', { name: 'Block', exact: true }).click();
    expect(viewer.complaints).toEqual([]);
  });

  const bring = async (name: string, text: string): Promise<void> => {
    const file = join(newFolder(), name);
    writeFileSync(file, text);
    await viewer.page.locator('.panel .opener input[type="file"]').last().setInputFiles(file);
  };

  it('asks in what unit a table is that does not say, and brings in its holes as holes', async () => {
    const { page } = viewer;
    await bring('plate.csv', plateTable('', 0, [0, 0], [0, 1, 2, 3, 4]));
    await page.getByRole('alertdialog', { name: /plate\.csv does not say its unit.*300 × 240/ }).waitFor();
    await page.getByRole('button', { name: 'millimetres' }).click();
    await page.getByRole('button', { name: 'holes · 6' }).waitFor();
    expect(await page.getByText('Block: 2 outlines').count()).toBe(1);
    expect(await page.getByText('told by size and place alone: H1 H2 BORE1 H3 H4 H5').count()).toBe(1);
  });

  it('shows all that was brought in, names the part that is traced, and marks the axis by its name and where figures count from', async () => {
    const { page } = viewer;
    const pane = page.locator('#drawing .pane').first();
    expect(await page.locator('#drawing figcaption').first().textContent()).toBe('Tracing: Block');
    expect(await pane.locator('.handles > text').allTextContents()).toContain('axis, 0, 0');
    const [drawn, room] = [await pane.locator('.drawn-part').boundingBox(), await pane.boundingBox()];
    if (drawn === null || room === null) throw new Error('nothing is drawn');
    expect(drawn.height / room.height).toBeGreaterThan(0.75);
    expect(drawn.height).toBeLessThan(room.height);
    await open('dowel-up');
    await page.locator('.panel').getByRole('textbox', { name: /^x/ }).fill('10');
    await page.locator('.panel').getByRole('textbox', { name: /^x/ }).press('Enter');
    await open('outlines');
    expect(await pane.locator('.handles > text').allTextContents()).toEqual(expect.arrayContaining(['axis', '0, 0']));
    await open('dowel-up');
    await page.getByRole('combobox', { name: 'Crank axis' }).selectOption('BORE1');
    await open('outlines');
    const named = await pane.locator('.handles > text').allTextContents();
    expect(named.some((name) => /^BORE1(, 0, 0)?$/.test(name))).toBe(true);
    expect(named).not.toContain('axis');
    for (let i = 0; i < 2; i += 1) await page.getByRole('button', { name: 'Undo' }).click();
  });

  it('asks which two of them are the dowels until two are said', async () => {
    const { page } = viewer;
    const asked = page.getByRole('group', { name: 'Which two are the dowels?' });
    expect(await asked.getByRole('button', { pressed: true }).count()).toBe(0);
    await asked.getByRole('button', { name: 'H1 · Ø14' }).click();
    expect(await asked.getByRole('button', { pressed: true }).allTextContents()).toEqual(['H1 · Ø14']);
    await asked.getByRole('button', { name: 'H5 · Ø14' }).click();
    await asked.waitFor({ state: 'detached' });
    expect(viewer.complaints).toEqual([]);
  });

  it('proposes the pairs that fit best, whatever the order of the lists, and takes them when told to', async () => {
    const { page } = viewer;
    const part = page.locator('.outlines');
    await page.getByRole('radio', { name: 'I looked at its mating face' }).check();
    await part.getByRole('button', { name: 'Housing', exact: true }).click();
    await bring('case.csv', plateTable(' [mm]', 25, [40, -30], [4, 1, 0, 3, 2]));
    await page.getByRole('button', { name: 'holes · 6' }).waitFor();
    const asked = page.getByRole('group', { name: 'Which two are the dowels?' });
    for (const dowel of await asked.getByRole('button', { name: 'Ø14' }).all()) await dowel.click();
    await page.getByRole('radio', { name: 'I looked through it from behind' }).check();
    await settled(page);
    await open('dowel-up');
    const found = page.getByRole('group', { name: 'These fit best' });
    await found.waitFor();
    expect(await found.getByRole('listitem').count()).toBe(5);
    expect(await found.textContent()).toMatch(/The worst is off by 0\.00 mm, rms 0\.00 mm\./);
    expect(await page.getByRole('button', { name: /^Take away the pair/ }).count()).toBe(0);
    await found.getByRole('button', { name: 'Take these pairs' }).click();
    await settled(page);
    expect(await page.locator('.steps [data-step="dowel-up"] button.line span').textContent()).toMatch(
      /^dowels agree to 0\.00 mm/,
    );
    expect(await page.getByRole('button', { name: /^Take away the pair/ }).count()).toBe(5);
  });

  it('asks how deep each section goes, and says where a minus leads', async () => {
    const { page } = viewer;
    for (const part of ['Housing', 'Block']) {
      await open('dowel-up');
      await page.getByRole('button', { name: `Say how deep face on the ${part} goes` }).click();
      await page.getByRole('button', { name: /^face · at every depth/ }).click();
      await page.getByText('Depth, name, how it was got').click();
      await page.getByText('Minus: stands proud of the face.').waitFor();
      await page.getByRole('textbox', { name: 'From', exact: true }).fill(part === 'Block' ? '0' : '-4');
      await page.getByRole('textbox', { name: 'to, from face' }).fill('12');
      await page.getByRole('textbox', { name: 'to, from face' }).press('Enter');
      await page.getByRole('button', { name: `face · ${part === 'Block' ? '0' : '-4'} to 12 from face` }).waitFor();
    }
    await settled(page);
  });

  it('comes to a verdict, asks for what may be cut, and has the tick for it on the line of the section', async () => {
    const { page } = viewer;
    await open('offer-up');
    const line = page.locator('.steps [data-step="offer-up"] button.line span');
    expect(await line.textContent()).toMatch(/^FOULS/);
    await open('grind');
    expect(await page.getByRole('list', { name: 'Needed next' }).allTextContents()).toEqual(['Tick what may be cut.']);
    await open('outlines');
    const tick = page.getByRole('checkbox', { name: 'face may be cut' });
    expect((await page.locator('label', { has: tick }).boundingBox())?.height).toBeGreaterThanOrEqual(44);
    await tick.check();
    await settled(page);
    await open('grind');
    expect(await page.getByRole('list', { name: 'Needed next' }).count()).toBe(0);
    expect(viewer.complaints).toEqual([]);
  });
});

import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { decode } from 'jpeg-js';
import { PDFDocument } from 'pdf-lib';
import type { Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import type { Vec } from '../../../src/geometry/plane/vec.ts';
import { normal, seenBy, seenInPlane } from '../../support/camera.ts';
import { jpegOf, photographOfSheets } from '../../support/face-photograph.ts';
import { darkMiddle } from '../../support/photograph.ts';
import { camera, catchingHousing, sheetsOfBlock, untracedBlock } from '../../support/photographed-job.ts';
import { Random } from '../../support/random.ts';
import { blockFile, fitFile } from '../../support/small-job.ts';
import { unzipped } from '../../support/unzipped.ts';
import { accessibilityFaults } from '../support/accessibility.ts';
import { newFolder } from '../support/harness.ts';
import { describeInBrowser } from '../support/in-browser.ts';
import { openViewer, settled, toldInFull, type Viewer } from '../support/viewer-page.ts';

const folder = newFolder();

const written = (name: string, data: string | Uint8Array): string => {
  const path = join(folder, name);
  writeFileSync(path, data);
  return path;
};

const holeAt = (id: string): Vec => {
  const [x = 0, y = 0] = untracedBlock.holes.find((hole) => hole.id === id)?.at ?? [];
  return { x, y };
};

const touched = ['D1', 'D2', 'B1', 'B2', 'B3', 'B4'];
/** Standard deviation of a touch whose 95 % limit is the two pixels that the page takes for granted. */
const sigmaPx = 2 / 1.96;

describeInBrowser('a photograph of a block’s face, on the page opened from disk', () => {
  let viewer: Viewer;
  let page: Page;
  let pane: Locator;
  const random = new Random(7);
  const shaken = ({ x, y }: Vec): Vec => ({ x: x + sigmaPx * normal(random), y: y + sigmaPx * normal(random) });
  const grey = photographOfSheets(camera, sheetsOfBlock());

  beforeAll(async () => {
    viewer = await openViewer();
    ({ page } = viewer);
    pane = page.locator('.pane').first();
    const files = { 'job.fit.json': fitFile, 'block.part.json': untracedBlock, 'housing.part.json': catchingHousing };
    await page
      .locator('input[type=file]')
      .first()
      .setInputFiles(Object.entries(files).map(([name, file]) => written(name, JSON.stringify(file))));
    await settled(page);
  });
  afterAll(() => viewer?.context.close());

  /** Where a pixel of the picture is on the screen, as its CSS matrix says. */
  const onScreen = (px: Vec): Promise<Vec> =>
    page.locator('.under img').evaluate((image, { x, y }) => {
      const under = (image.parentElement as HTMLElement).getBoundingClientRect();
      const put = new DOMMatrix(getComputedStyle(image).transform).transformPoint(new DOMPoint(x, y));
      return { x: under.x + put.x / put.w, y: under.y + put.y / put.w };
    }, px);
  const tapPixel = async (px: Vec): Promise<void> => {
    const { x, y } = await onScreen(px);
    await page.mouse.click(x, y);
  };
  const rows = (): Promise<string[]> => page.locator('.touched tbody tr').allTextContents();
  const settingSays = () => page.locator('.photo [role=status]').textContent();
  const bring = (name: string, data: Uint8Array) =>
    page.getByLabel('Add a picture of its face').setInputFiles(written(name, data));
  /** What the browser itself has put on the screen, in grey. */
  const seen = async () => {
    const shot = decode(await page.screenshot({ type: 'jpeg', quality: 100 }), { useTArray: true });
    const { width, height, data } = shot;
    return { width, height, grey: Uint8Array.from({ length: width * height }, (_, k) => data[4 * k] as number) };
  };
  const violations = (): Promise<string[]> => accessibilityFaults(page);

  it.each([
    ['notes.heic', Uint8Array.of(0, 0, 0, 24, 102, 116, 121, 112), 'is no JPEG, PNG or WebP picture'],
    ['broken.jpg', Uint8Array.of(0xff, 0xd8, 0xff, 0xe0, 0, 4, 1, 2), 'cannot be opened as a picture'],
    ['huge.jpg', new Uint8Array(48 * 1024 * 1024), 'may have 47.2 MB together'],
  ])('refuses %s in words that stay when the job is kept, and adds nothing', async (name, data, said) => {
    await bring(name, data);
    const refusedAndKept = new RegExp(`${said}.*Kept in this browser\\.`);
    await expect.poll(() => page.locator('.telling').textContent()).toMatch(refusedAndKept);
    expect(await page.locator('.under img').count()).toBe(0);
  });

  it('is shown upright whichever way the camera was held', async () => {
    const jpeg = [...jpegOf(grey, camera, 6)];
    // dropped on the page, as from a folder
    await page.evaluate((bytes) => {
      const data = new DataTransfer();
      data.items.add(new File([Uint8Array.from(bytes)], 'face.jpg', { type: 'image/jpeg' }));
      document.body.dispatchEvent(new DragEvent('drop', { dataTransfer: data, bubbles: true, cancelable: true }));
    }, jpeg);
    const image = page.locator('.under img');
    await image.waitFor();
    const size = await image.evaluate((img) => [
      (img as HTMLImageElement).naturalWidth,
      (img as HTMLImageElement).naturalHeight,
    ]);
    expect(size).toEqual([camera.width, camera.height]);
    await expect.poll(async () => (await onScreen({ x: 1, y: 0 })).x - (await onScreen({ x: 0, y: 0 })).x).not.toBe(1);
    const hole = seenInPlane(camera, holeAt('B5'));
    const place = await onScreen(hole);
    const found = darkMiddle(await seen(), place, 8);
    expect(Math.hypot(found.x - place.x, found.y - place.y)).toBeLessThan(0.5);
  });

  it('says at every touch what is wanted or what the points make of one another', async () => {
    for (const [i, id] of touched.entries()) {
      await page.getByLabel('What is tapped in the picture next').selectOption(id);
      await tapPixel(shaken(seenInPlane(camera, holeAt(id))));
      await expect.poll(rows).toHaveLength(i + 1);
      if (i === 2) await expect.poll(settingSays).toBe('One more point is wanted.');
      if (i === 3) await expect.poll(settingSays).toContain('Four points leave nothing to check them by');
    }
    await expect.poll(async () => (await rows()).filter((row) => /\d\.\d\d mm/.test(row)).length).toBe(6);
    expect((await rows()).filter((row) => row.includes('worst'))).toHaveLength(1);
    expect(await settingSays()).toMatch(/good to ± \d\.\d+ mm, 95 times in a hundred/);
    expect(await settingSays()).toMatch(
      /The camera stood (9|10|11|12|13)\d0 mm ± \d+ % off the face, found from the points/,
    );
  });

  it('has no fault an accessibility check finds while points are touched', async () => {
    expect(await violations()).toEqual([]);
  });

  it('finds a hole touched in the wrong place, and undo takes that back', async () => {
    const before = await rows();
    await page.getByLabel('What is tapped in the picture next').selectOption('B1');
    await tapPixel(seenInPlane(camera, { x: -58, y: 78 }));
    await expect.poll(settingSays).toContain('The points do not agree. Without B1 the rest do');
    await page.getByRole('button', { name: 'Undo' }).click();
    await expect.poll(rows).toEqual(before);
  });

  it('moves a touched point by keys, a pixel at a time, and undo takes one go of it back', async () => {
    const before = await rows();
    const at = () => page.locator('.touches .touch.now circle').evaluate((c) => Number(c.getAttribute('cx')));
    await page.getByRole('button', { name: 'Choose D2' }).click();
    const from = await at();
    for (let n = 0; n < 3; n++) await page.keyboard.press('ArrowRight');
    const pixel = (await onScreen({ x: 1, y: 0 })).x - (await onScreen({ x: 0, y: 0 })).x;
    await expect.poll(async () => (await at()) - from).toBeCloseTo(3 * pixel, 3);
    await expect.poll(rows).not.toEqual(before);
    await page.getByRole('button', { name: 'Undo' }).click();
    await expect.poll(rows).toEqual(before);
  });

  it('takes a point by keys alone: put in the middle of the view, and deleted there', async () => {
    const before = await rows();
    await page.getByLabel('What is tapped in the picture next').selectOption('B5');
    await page.getByRole('button', { name: 'Put it in the middle of the view' }).press('Enter');
    await expect.poll(rows).toHaveLength(7);
    await pane.focus();
    await page.keyboard.press('Delete');
    await expect.poll(rows).toEqual(before);
  });

  let error = 0;

  it('writes what it is good to as the part’s tracing error, where none was said', async () => {
    error = Number(/± ([\d.]+) mm/.exec((await settingSays()) ?? '')?.[1]);
    await page.getByRole('button', { name: 'Done: trace over it' }).click();
    await expect
      .poll(() => page.locator('.panel > [role=status]').textContent())
      .toBe(`Written: traceError ${error} mm, from the picture.`);
    expect(error).toBeGreaterThan(0.2);
    expect(error).toBeLessThan(2);
  });

  it.each([
    ['as it first lies', 0],
    ['brought nearer', 4],
    ['further off', -3],
  ])('lies beneath the drawing, each hole on its own within the stated error: %s', async (_, steps) => {
    await pane.focus();
    for (let n = 0; n < Math.abs(steps); n++) await page.keyboard.press(steps > 0 ? '+' : '-');
    await page
      .locator('.pane svg')
      .first()
      .evaluate((svg) => {
        (svg as SVGElement).style.visibility = 'hidden';
      });
    await page.locator('.under img').evaluate((img) => {
      img.style.opacity = '1';
    });
    const screen = await seen();
    await page
      .locator('.pane svg')
      .first()
      .evaluate((svg) => {
        (svg as SVGElement).style.visibility = '';
      });
    const box = await pane.boundingBox();
    // D2 and B4 are touched, B5 is not
    for (const id of ['D2', 'B4', 'B5']) {
      const index = untracedBlock.holes.findIndex((hole) => hole.id === id);
      const drawn = await page
        .locator('.drawn-part path.hole')
        .nth(index + untracedBlock.holes.length)
        .evaluate((path) => {
          const { x, y, width, height } = path.getBoundingClientRect();
          return { x: x + width / 2, y: y + height / 2 };
        });
      if (box === null || drawn.x < box.x + 40 || drawn.y < 40 || drawn.x > 1400 || drawn.y > 860) continue;
      const pxPerMm = await page
        .locator('.plane')
        .first()
        .evaluate((plane) => (plane as SVGGElement).transform.baseVal.getItem(0).matrix.a);
      const found = darkMiddle(screen, drawn, 9 * pxPerMm);
      expect(Math.hypot(found.x - drawn.x, found.y - drawn.y) / pxPerMm, id).toBeLessThan(error);
    }
    for (let n = 0; n < Math.abs(steps); n++) await page.keyboard.press(steps > 0 ? '-' : '+');
  });

  it('is traced over: a rib 12 mm behind the face lies within the stated error of where it is', async () => {
    await page.getByRole('button', { name: 'Add a section' }).click();
    await page.getByLabel('From', { exact: true }).fill('12');
    await page.getByLabel('to, from face', { exact: true }).fill('60');
    await page.getByLabel('to, from face', { exact: true }).press('Enter');
    await expect.poll(() => page.locator('.opened-place').textContent()).toContain('12.0 mm behind the touched points');
    await page.getByLabel('May be cut').check();
    await page.getByRole('button', { name: 'Trace an outline' }).click();
    const corners = blockFile.sections[0]?.loops[0] as [number, number][];
    for (const [x, y] of corners) await tapPixel(shaken(seenBy(camera, { x, y, z: -12 })));
    await page.getByRole('button', { name: 'Close it', exact: true }).click();
    await expect.poll(offCorners).toHaveLength(4);
    for (const off of await offCorners()) expect(off).toBeLessThan(error);
  });

  /** How far each traced corner is from where it truly is, by the figures on the page. */
  async function offCorners(): Promise<number[]> {
    const figures = await page
      .locator('.chosen-thing .figures input')
      .evaluateAll((inputs) => inputs.map((input) => Number((input as HTMLInputElement).value)));
    const corners = blockFile.sections[0]?.loops[0] as [number, number][];
    return Array.from({ length: figures.length / 3 }, (_, i) =>
      Math.hypot((figures[3 * i] ?? 0) - (corners[i]?.[0] ?? 0), (figures[3 * i + 1] ?? 0) - (corners[i]?.[1] ?? 0)),
    );
  }

  it('pulls the outline onto its edges, says how far, and undo takes it back in one', async () => {
    const before = await offCorners();
    await page.getByRole('button', { name: 'Pull it onto the picture’s edges' }).click();
    await expect
      .poll(() => page.locator('.over-tools').textContent())
      .toMatch(/On the picture’s edges: moved up to \d\.\d\d mm/);
    const after = await offCorners();
    for (const off of after) expect(off).toBeLessThan(error);
    expect(Math.max(...after)).toBeLessThan(Math.max(...before));
    await page.getByRole('button', { name: 'Undo' }).click();
    await expect.poll(offCorners).toEqual(before);
    await page.getByRole('button', { name: 'Redo' }).click();
    await expect.poll(offCorners).toEqual(after);
  });

  it('does as much for a hollow: it has a depth of its own to be traced at, and is pulled', async () => {
    await page.getByRole('button', { name: 'It is a hollow' }).click();
    await expect.poll(() => page.locator('.opened-place').textContent()).toContain('12.0 mm behind the touched points');
    const depth = page.getByLabel('What you trace lies at, from face');
    await depth.fill('20');
    await depth.press('Enter');
    await expect.poll(() => page.locator('.opened-place').textContent()).toContain('20.0 mm behind the touched points');
    await page.getByRole('button', { name: 'Undo' }).click();
    await page.getByRole('button', { name: 'Pull it onto the picture’s edges' }).click();
    await expect.poll(() => page.locator('.over-tools').textContent()).toMatch(/On the picture’s edges: moved up to/);
    for (const off of await offCorners()) expect(off).toBeLessThan(error);
    for (let i = 0; i < 2; i += 1) await page.getByRole('button', { name: 'Undo' }).click();
    await page.getByRole('button', { name: /^section/ }).click();
    await page
      .locator('.opened-place')
      .getByRole('button', { name: /^outline 1/ })
      .click();
  });

  it('has no fault an accessibility check finds while an outline is traced over it', async () => {
    expect(await violations()).toEqual([]);
  });

  it('leads to the same foul, and on to the sheets that are printed', async () => {
    const open = async (step: string): Promise<void> => {
      await page.locator(`.steps [data-step="${step}"] button.line`).click();
      await settled(page);
    };
    await open('dowel-up');
    await open('offer-up');
    expect(await toldInFull(page)).toContain('foul');
    await open('grind');
    expect(await toldInFull(page)).toMatch(/take off/i);
    await open('mark-out');
    const download = page.waitForEvent('download');
    await page.getByRole('button', { name: 'PDF, true to scale' }).click();
    const [first] = unzipped(readFileSync(await (await download).path()));
    expect((await PDFDocument.load(first?.data ?? '')).getPageCount()).toBeGreaterThan(0);
  });

  it('is set by two points and their distance where it was taken square-on, and says what that cannot show', async () => {
    await page.locator('.steps [data-step="outlines"] button.line').click();
    await page.getByRole('button', { name: /^Housing/ }).click();
    await bring('housing.jpg', jpegOf(grey, camera));
    await page.getByLabel('How it was taken').selectOption('square-on');
    await page.getByLabel('What is tapped in the picture next').selectOption('');
    await expect.poll(() => page.locator('.photo').textContent()).toContain('The first point becomes the origin');
    await tapPixel({ x: 300, y: 600 });
    await expect.poll(settingSays).toBe('One more point is wanted.');
    await tapPixel({ x: 900, y: 600 });
    await expect.poll(() => page.locator('.photo [role=alert]').textContent()).toContain('how far it is');
    await page.getByLabel('Distance between the two').fill('150');
    await page.getByLabel('Distance between the two').press('Enter');
    await tapPixel({ x: 900, y: 600 });
    await expect.poll(settingSays).toContain('Two points cannot show whether the camera leaned. Say how far it was');
    expect(await settingSays()).not.toContain('good to');
    await page.getByText('How well it is known').click();
    await page.getByLabel('Camera to face, if measured').fill('3000');
    await page.getByLabel('Camera to face, if measured').press('Enter');
    await expect.poll(settingSays).toMatch(/good to ± .*one degree puts it \d\.\d\d mm wrong/s);
    await page.getByRole('button', { name: 'Done: trace over it' }).click();
    await expect
      .poll(() => page.getByRole('alertdialog').textContent())
      .toMatch(/^Housing is said to be traced to ± 0.5 mm/);
    await page.getByRole('button', { name: 'Leave ± 0.5 mm' }).click();
    expect(await page.getByRole('alertdialog').count()).toBe(0);
    await page.getByRole('button', { name: /^housing.jpg/ }).click();
    await page.getByRole('button', { name: 'Remove the picture' }).click();
    await page.getByRole('button', { name: /^Block/ }).click();
  });

  it('is kept with the job: a page opened anew has it, set as it was', async () => {
    const again = await viewer.context.newPage();
    await again.goto(page.url());
    await settled(again);
    await again.locator('.steps [data-step="outlines"] button.line').click();
    await expect
      .poll(() => again.locator('.photos .places').textContent())
      .toContain(`face.jpg · set straight by 6 points · good to ± `);
    await again.close();
  });

  it('complained of nothing', () => {
    expect(viewer.complaints).toEqual([]);
  });
});

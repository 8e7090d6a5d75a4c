import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { unzipped } from '../../support/unzipped.ts';
import { accessibilityFaults } from '../support/accessibility.ts';
import { describeInBrowser } from '../support/in-browser.ts';
import { openViewer, settled, type Viewer } from '../support/viewer-page.ts';

const files = ['bracket.fit.json', 'boss.part.json', 'bracket.part.json'].map((name) =>
  resolve('profiles/mount-bracket', name),
);

describeInBrowser('holes to be drilled, on a phone', () => {
  let viewer: Viewer;
  const open = (step: string) => viewer.page.locator(`.steps [data-step="${step}"] button.line`).click();

  beforeAll(async () => {
    viewer = await openViewer({ width: 390, height: 844 });
    await viewer.page.locator('.opener input').setInputFiles(files);
    await settled(viewer.page);
  }, 120_000);
  afterAll(() => viewer?.context.close());

  it('are judged where the dowels are set, what stands against them in words', async () => {
    await open('dowel-up');
    const told = viewer.page.getByRole('group', { name: 'Holes to be drilled' });
    await told.waitFor();
    const text = (await told.textContent()) ?? '';
    expect(text).toContain('NO METAL for "N2" and "N3" as planned.');
    expect(text).toMatch(/"N2".*3\.0 mm to "jacket"/);
    expect(await accessibilityFaults(viewer.page)).toEqual([]);
  }, 60_000);

  it('are handed over as templates, DXF and a table in one zip', async () => {
    await open('mark-out');
    const download = viewer.page.waitForEvent('download');
    await viewer.page.getByRole('button', { name: 'Holes to be drilled' }).click();
    const names = unzipped(readFileSync(await (await download).path())).map(({ name }) => name);
    expect(names.sort()).toEqual(['drill-fixed.dxf', 'drill-fixed.pdf', 'drill-fixed.svg', 'drill.csv']);
    expect(viewer.complaints).toEqual([]);
  }, 60_000);
});

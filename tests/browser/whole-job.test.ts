import { readFileSync } from 'node:fs';
import { PDFDocument } from 'pdf-lib';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { checkJoint } from '../../src/clearance/check.ts';
import { drain } from '../../src/geometry/progress.ts';
import { jobInFile } from '../../src/job/read-job-file.ts';
import { placeJob } from '../../src/joint/place-job.ts';
import { alternativesTo } from '../../src/plan/alternatives/alternatives.ts';
import { planCut } from '../../src/plan/plan-cut.ts';
import { checkText } from '../../src/words/check-text.ts';
import { grindText } from '../../src/words/grind-text.ts';
import { demoJob } from '../../viewer/heavy/demo-job.ts';
import { jobFileName } from '../../viewer/job/job-file-name.ts';
import { unzipped } from '../support/unzipped.ts';
import { accessibilityFaults } from './support/accessibility.ts';
import { describeInBrowser } from './support/in-browser.ts';
import { openViewer, settled, toldInFull, type Viewer } from './support/viewer-page.ts';

/** What the command line says of the same job, by the same calls. */
function saidByNode() {
  const job = jobInFile(demoJob(), jobFileName(demoJob()));
  const joint = job.ok ? placeJob(job.value) : job;
  if (!joint.ok) throw new Error('the demo job reads');
  const check = drain(checkJoint(joint.value));
  const plan = drain(planCut(joint.value));
  return {
    check: checkText(joint.value, check),
    plan: grindText(joint.value, plan, drain(alternativesTo(joint.value, plan)), check),
    firstTouch: check.wayIn?.firstTouch,
  };
}

describeInBrowser('the whole job in one file opened from disk', () => {
  let viewer: Viewer;
  let node: ReturnType<typeof saidByNode>;

  beforeAll(async () => {
    viewer = await openViewer();
    node = saidByNode();
    await viewer.page.getByRole('button', { name: 'Look at a worked job' }).click();
    await settled(viewer.page);
  });
  afterAll(() => viewer?.context.close());

  const open = async (step: string): Promise<void> => {
    await viewer.page.locator(`.steps [data-step="${step}"] button.line`).click();
    await settled(viewer.page);
  };

  it('says of the check word for word what the command line says', async () => {
    await open('offer-up');
    expect(await toldInFull(viewer.page)).toBe(node.check);
  });

  it('goes to the first touch the check names, and says so in words', async () => {
    await viewer.page.getByRole('button', { name: 'First touch' }).click();
    const { leg = 0, turnRad = 0 } = node.firstTouch ?? {};
    const said = viewer.page.locator('#way-in output');
    await expect
      .poll(() => said.textContent())
      .toMatch(new RegExp(`^leg ${leg}, turn ${((turnRad * 180) / Math.PI).toFixed(1)}°.*fouls|touches$`));
  });

  it('lights a place in both views, and names it, wherever it is pointed at', async () => {
    const { page } = viewer;
    const [face, side] = [page.locator('.pane').first(), page.locator('.pane').nth(1)];
    const litIn = (pane: typeof face) =>
      pane.locator('.lit').evaluateAll((all) => all.map((one) => one.getAttribute('data-place')));
    await face.focus();
    await page.keyboard.press('n');
    expect(await page.locator('.lit-name').textContent()).toBe('flange, fixed part');
    expect(await litIn(face)).toEqual(['0']);
    expect(await litIn(side)).toEqual(['0']);
    const box = await side.locator('[data-place="2"]').boundingBox();
    if (box === null) throw new Error('the boss is not in the side view');
    await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
    await expect.poll(() => page.locator('.lit-name').textContent()).toBe('mount boss 1, fixed part');
    expect(await litIn(face)).toEqual(await litIn(side));
    await page.mouse.move(5, 5);
    expect(await page.locator('.lit-name').textContent()).toBe('');
  });

  it('moves the part along the way in by keys alone, and tells where it stands', async () => {
    const slider = viewer.page.getByRole('slider', { name: 'The way in' });
    await slider.focus();
    await viewer.page.keyboard.press('Home');
    await expect.poll(() => slider.getAttribute('aria-valuetext')).toContain('leg 1, turn 22.0°, stand-off 190 mm');
    await viewer.page.keyboard.press('End');
    await expect.poll(() => slider.getAttribute('aria-valuetext')).toContain('stand-off 0 mm: 2.9 mm clear');
  });

  it('says of the plan word for word what the command line says', async () => {
    await open('grind');
    expect(await toldInFull(viewer.page)).toBe(node.plan);
  });

  it('answers a changed clearance, and undo brings the first answer back', async () => {
    const home = viewer.page.getByRole('textbox', { name: /^home/ });
    await home.fill('0.5');
    await home.press('Enter');
    await settled(viewer.page);
    expect(await toldInFull(viewer.page)).not.toBe(node.plan);
    await viewer.page.getByRole('button', { name: 'Undo' }).click();
    await settled(viewer.page);
    expect(await toldInFull(viewer.page)).toBe(node.plan);
  });

  it('claims no clearance for a job that was changed before it is proved anew', async () => {
    const { page } = viewer;
    const said = page.locator('#way-in output');
    await expect.poll(() => said.textContent()).toMatch(/(clear|fouls|touches)$/);
    const home = page.getByRole('textbox', { name: /^home/ });
    await home.fill('1.9');
    const atOnce = await home.evaluate((field) => {
      field.dispatchEvent(new Event('change', { bubbles: true }));
      return document.querySelector('#way-in output')?.textContent;
    });
    expect(atOnce).toMatch(/…$/);
    await expect.poll(() => said.textContent()).toMatch(/(clear|fouls|touches)$/);
    await page.getByRole('button', { name: 'Undo' }).click();
    await settled(page);
  });

  it('takes nothing that is no number, and says that it is wrong', async () => {
    const home = viewer.page.getByRole('textbox', { name: /^home/ });
    await home.fill('two');
    await home.press('Enter');
    expect(await home.getAttribute('aria-invalid')).toBe('true');
    await home.fill('2');
    await home.press('Enter');
    expect(await home.getAttribute('aria-invalid')).toBe('false');
  });

  it('prints its sheets as PDF', async () => {
    await open('mark-out');
    const download = viewer.page.waitForEvent('download');
    await viewer.page.getByRole('button', { name: 'PDF, true to scale' }).click();
    const files = unzipped(readFileSync(await (await download).path()));
    expect(files.length).toBeGreaterThan(1);
    for (const { data } of files) {
      const pages = (await PDFDocument.load(data)).getPages();
      expect(pages.length).toBeGreaterThan(0);
      for (const page of pages)
        expect([page.getWidth(), page.getHeight()].sort((a, b) => a - b)[0]).toBeCloseTo(595.28, 1);
    }
  });

  it.each(['outlines', 'dowel-up', 'offer-up', 'grind', 'mark-out', 'trial-fit'])(
    'has no fault an accessibility check finds: %s',
    async (step) => {
      await open(step);
      expect(await accessibilityFaults(viewer.page)).toEqual([]);
    },
  );

  it('keeps the job: a page opened anew goes on where this one was', async () => {
    const page = await viewer.context.newPage();
    await page.goto(viewer.page.url());
    await settled(page);
    expect(await page.locator('.title').textContent()).toBe(demoJob().fit.title);
    await page.close();
  });

  it('complained of nothing', () => {
    expect(viewer.complaints).toEqual([]);
  });
});

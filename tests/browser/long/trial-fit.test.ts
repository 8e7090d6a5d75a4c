import * as fs from 'node:fs';
import { cpSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { BrowserContext } from 'playwright-core';
import { afterAll, beforeAll, expect, it, onTestFinished } from 'vitest';
import { serve } from '../../../cli/view/serve.ts';
import { foretold } from '../../../src/clearance/foretold.ts';
import { drain } from '../../../src/geometry/progress.ts';
import { jobInFile } from '../../../src/job/read-job-file.ts';
import { analyse } from '../../../src/pipeline/analysis.ts';
import { solveTrial } from '../../../src/pipeline/trial.ts';
import { readTrialFile } from '../../../src/trial/read-trial.ts';
import { foretoldTexts, trialText } from '../../../src/words/trial-text.ts';
import { demoJob } from '../../../viewer/heavy/demo-job.ts';
import { accessibilityFaults } from '../support/accessibility.ts';
import { launchBrowser } from '../support/browser.ts';
import { newFolder } from '../support/harness.ts';
import { describeInBrowser } from '../support/in-browser.ts';
import { heard, openWorkedJob, settled, toldInFull, type Viewer, viewerFile } from '../support/viewer-page.ts';

const found = () => {
  const job = jobInFile(demoJob(), 'demo.job.json');
  const analysis = job.ok ? analyse(job.value) : job;
  if (!analysis.ok) throw new Error('the demo job reads');
  return analysis.value;
};

/** What the command line says of a trial file of the same job. */
function saidByNode(text: string): string {
  const analysis = found();
  const raw = readTrialFile('a.trial.json', text);
  const solved = raw.ok ? drain(solveTrial(analysis, 'a.trial.json', raw.value)) : raw;
  if (!solved.ok) throw new Error(JSON.stringify(solved.findings));
  return trialText(analysis.joint, solved.value);
}

/** On "ribs" of the demo's block, joint frame, mm. */
const places = [
  [161, 66],
  [132.4, 126.9],
  [149.8, 105.8],
] as const;

describeInBrowser('trial fits beside the engine', () => {
  let viewer: Viewer;
  let saved = '';

  beforeAll(async () => {
    viewer = await openWorkedJob({ size: { width: 390, height: 844 } });
    await open();
  }, 300_000);
  afterAll(() => viewer?.context.close());

  const open = async (): Promise<void> => {
    await viewer.page.locator('.steps [data-step="trial-fit"] button.line').click();
    await settled(viewer.page);
  };
  const line = () => viewer.page.locator('li[data-step="trial-fit"] button.line span');
  const field = (name: RegExp) => viewer.page.getByRole('textbox', { name });
  const type = async (name: RegExp, text: string): Promise<void> => {
    await field(name).fill(text);
    await field(name).press('Enter');
  };
  const rows = () => viewer.page.locator('.readings > li');
  const form = () => viewer.page.locator('.new-reading');
  const answered = (): Promise<unknown> =>
    viewer.page.waitForFunction(() => document.querySelector('.trial-answer > [role="status"]')?.textContent === '');
  const tap = async ([x, y]: readonly [number, number]): Promise<void> => {
    const at = await viewer.page.evaluate(
      ([x, y]) => {
        const plane = document.querySelector<SVGGElement>('.pane .plane')?.getScreenCTM();
        return plane === null || plane === undefined ? [0, 0] : [plane.a * x + plane.e, plane.f - plane.d * y];
      },
      [x, y] as const,
    );
    await viewer.page.mouse.click(at[0] ?? 0, at[1] ?? 0);
  };

  it('tells before the first cut where it will stop, as the command line does', async () => {
    const { joint } = found();
    const said = viewer.page.locator('.foretold li');
    await expect.poll(() => said.allTextContents()).toEqual(foretoldTexts(joint, foretold(joint)));
    expect(await line().textContent()).toBe('nothing read yet');
  });

  it('begins a go, and puts down where it stopped once both figures are there', async () => {
    const { page } = viewer;
    await page.getByRole('button', { name: 'Begin go 1' }).click();
    await page.getByLabel('Where it stopped').selectOption('at');
    await type(/^turn/, '13,5');
    await type(/^stand-off/, '14');
    await expect.poll(() => line().textContent()).not.toBe('nothing read yet');
    await answered();
  });

  it('takes the place from a tap, and asks with large fields what is there', async () => {
    for (const [i, place] of places.entries()) {
      await tap(place);
      await form().waitFor();
      expect(await form().locator('p').textContent()).toBe('ribs, where it stopped, 13.5° and 14.0 mm stand-off');
      const clay = form().getByRole('textbox', { name: /^clay/ });
      expect((await clay.boundingBox())?.height).toBeGreaterThanOrEqual(44);
      await clay.fill(`${14 + i}`);
      await clay.press('Enter');
      await form().waitFor({ state: 'detached' });
    }
    expect(await rows().locator('button.place').allTextContents()).toEqual(['1 · ribs', '2 · ribs', '3 · ribs']);
    const marks = viewer.page.locator('.labels .reading-number');
    await expect
      .poll(async () => (await marks.allTextContents()).filter((text) => text !== 'next'))
      .toEqual(['1', '2', '3']);
  });

  const handedOver = async (): Promise<string> => {
    const coming = viewer.page.waitForEvent('download');
    await viewer.page.getByRole('button', { name: 'Save the trial file' }).click();
    const download = await coming;
    expect(download.suggestedFilename()).toBe('transfer-case-to-iron-four.trial.json');
    return readFileSync(await download.path(), 'utf8');
  };
  const savedTrial = async () => JSON.parse(await handedOver());

  it('answers with what the command line says of the trial file it saves', async () => {
    const { page } = viewer;
    await answered();
    saved = await handedOver();
    const text = saidByNode(saved);
    expect(await toldInFull(page)).toBe(text);
    expect(text.replaceAll('\n', ' ').startsWith((await line().textContent()) ?? '–')).toBe(true);
  });

  it('goes from a mark on the drawing to its row', async () => {
    await tap(places[1]);
    await expect
      .poll(() => viewer.page.evaluate(() => document.activeElement?.querySelector('.place')?.textContent))
      .toBe('2 · ribs');
    expect(await form().count()).toBe(0);
  });

  it('refuses beside the reading, in words, what cannot be; nothing is lost, and undo has the answer back', async () => {
    const { page } = viewer;
    const before = await line().textContent();
    const clay = rows().first().getByRole('textbox', { name: /^clay/ });
    await clay.fill('40');
    await clay.press('Enter');
    await expect
      .poll(() => rows().first().getByRole('alert').allTextContents())
      .toEqual(['Not taken: 40. Wanted: the thickness of pressed clay, at most 25 mm.']);
    expect(await line().textContent()).toBe('1 thing to put right in what was read');
    expect(await rows().count()).toBe(3);
    expect(await clay.inputValue()).toBe('40');
    await page.getByRole('button', { name: 'Undo' }).click();
    await expect.poll(() => line().textContent()).toBe(before);
    expect(await clay.inputValue()).toBe('14');
  });

  it('takes a reading out and has it back by undo, and says by a button that it marked', async () => {
    const { page } = viewer;
    await page.getByRole('button', { name: 'Take out reading 3' }).click();
    await expect.poll(() => rows().count()).toBe(2);
    await page.getByRole('button', { name: 'Undo' }).click();
    await expect.poll(() => rows().count()).toBe(3);
    const marked = rows().last().getByRole('button', { name: 'It marked' });
    await marked.click();
    await expect.poll(() => marked.getAttribute('aria-pressed')).toBe('true');
    await page.getByRole('button', { name: 'Undo' }).click();
    await expect.poll(() => marked.getAttribute('aria-pressed')).toBe('false');
  });

  it('takes a place by key alone, and leaves it again', async () => {
    const { page } = viewer;
    await page.locator('.pane').first().focus();
    await page.keyboard.press('Enter');
    await form().waitFor();
    expect(await page.evaluate(() => document.activeElement?.className)).toBe('new-reading');
    await form().getByRole('button', { name: 'Leave it' }).click();
    expect(await form().count()).toBe(0);
    expect(await rows().count()).toBe(3);
  });

  it('puts down a gap between the faces at a bolt', async () => {
    const { page } = viewer;
    await page.getByLabel(/^beside the hole/).selectOption('B3');
    await type(/^feeler gauge/, '0.2');
    await expect.poll(() => page.locator('.gaps li').first().textContent()).toContain('B3: 0.2 mm');
    await page.getByRole('button', { name: 'Undo' }).click();
    await expect.poll(() => page.locator('.gaps').count()).toBe(0);
  });

  it('takes how well a reading was read, and a note of the go, behind more', async () => {
    const { page } = viewer;
    const reading = rows().first();
    expect(await reading.getByRole('textbox', { name: /^read to within/ }).isVisible()).toBe(false);
    await reading.getByText('More').click();
    const limit = reading.getByRole('textbox', { name: /^read to within/ });
    expect(await limit.getAttribute('placeholder')).toBe('0.1');
    await limit.fill('0,3');
    await limit.press('Enter');
    await page.locator('fieldset > .more summary').click();
    const note = page.getByRole('textbox', { name: 'note' });
    await note.fill('Rained. D2 was tight.');
    await note.press('Enter');
    await answered();
    const kept = await savedTrial();
    expect(kept.goes[0].readings[0].error).toBe(0.3);
    expect(kept.goes[0].note).toBe('Rained. D2 was tight.');
    expect(await toldInFull(page)).toBe(saidByNode(JSON.stringify(kept)));
    await limit.fill('');
    await limit.press('Enter');
    await page.getByRole('button', { name: 'Undo' }).click();
    await expect.poll(() => limit.inputValue()).toBe('0.3');
    for (let n = 0; n < 2; n += 1) await page.getByRole('button', { name: 'Undo' }).click();
    await expect.poll(() => limit.inputValue()).toBe('');
    expect(JSON.stringify(await savedTrial())).toBe(JSON.stringify(JSON.parse(saved)));
  });

  it('takes what came off place by place of the table, each place once, and no place it lacks', async () => {
    const { page } = viewer;
    const { tables } = found();
    const last = drain(tables())[0]?.length ?? 0;
    await page.getByLabel('What had come off').selectOption('measured');
    await type(/^place,/, String(last + 1));
    await expect.poll(() => page.locator('.took [role="alert"]').textContent()).toContain(`places 1 to ${last}`);
    const took = async (place: string, off: string): Promise<void> => {
      await type(/^place,/, place);
      await type(/^came off there/, off);
    };
    await took('7', '5,2');
    await took('2', '1');
    await took('7', '5,5');
    const listed = page.locator('.took li');
    await expect
      .poll(async () => (await listed.allTextContents()).map((text) => text.replace('×', '')))
      .toEqual(['Place 2: 1 mm', 'Place 7: 5.5 mm']);
    expect((await savedTrial()).goes[0].cut).toEqual([
      { place: 2, takeOff: 1 },
      { place: 7, takeOff: 5.5 },
    ]);
    await answered();
    await page.getByRole('button', { name: 'Take out place 2' }).click();
    await page.getByRole('button', { name: 'Take out place 7' }).click();
    await expect.poll(() => listed.count()).toBe(0);
    await page.getByLabel('What had come off').selectOption('none');
    expect((await savedTrial()).goes[0].cut).toBe('none');
    for (let n = 0; n < 6; n += 1) await page.getByRole('button', { name: 'Undo' }).click();
    await answered();
  });

  it('keeps it all over a reload', async () => {
    const { page } = viewer;
    await expect.poll(() => page.locator('.telling').textContent()).toContain('Kept');
    await page.reload();
    await settled(page);
    await open();
    await expect.poll(() => rows().count()).toBe(3);
    await answered();
    expect(await toldInFull(page)).toBe(saidByNode(saved));
  });

  it('opens a trial file into the job, and refuses a broken one in words', async () => {
    const { page } = viewer;
    await page.getByRole('button', { name: 'Take out go 1' }).click();
    await expect.poll(() => line().textContent()).toBe('nothing read yet');
    const file = (name: string, text: string) => ({ name, mimeType: 'application/json', buffer: Buffer.from(text) });
    const opener = page.locator('.opener input');
    await opener.setInputFiles(file('a.trial.json', '{"format":"fettle-trial/1","fit":"a"}'));
    await expect.poll(() => page.locator('.telling').textContent()).toContain('a.trial.json, goes');
    expect(await rows().count()).toBe(0);
    await opener.setInputFiles(file('b.trial.json', saved));
    await expect.poll(() => rows().count()).toBe(3);
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
      const small = await viewer.page.locator('.panel button, .panel input, .panel select').evaluateAll((all) =>
        all
          .filter((each) => each.checkVisibility())
          .filter((each) => Math.min(each.clientHeight, each.clientWidth) < 42)
          .map((each) => each.outerHTML.slice(0, 120)),
      );
      expect(small).toEqual([]);
      expect(await viewer.page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(
        0,
      );
    }
    expect(viewer.complaints).toEqual([]);
  });
});

describeInBrowser('a trial file beside a fit that is served', () => {
  let browser: BrowserContext;
  beforeAll(async () => {
    browser = await launchBrowser(newFolder());
  });
  afterAll(() => browser?.close());

  async function served(change: (folder: string) => void) {
    const folder = newFolder();
    cpSync('profiles/marsh-carrier', folder, { recursive: true });
    change(folder);
    const jobFile = join(folder, 'transfer-case.fit.json');
    const html = readFileSync(viewerFile(), 'utf8');
    const serving = await serve({ html, jobFile, disk: fs, mostBytes: 64 * 1024 * 1024 }, 0);
    const page = await browser.newPage();
    onTestFinished(async () => {
      await page.close();
      await serving.close();
    });
    const complaints: string[] = [];
    heard(page, complaints);
    await page.goto(serving.address);
    await settled(page);
    return { page, complaints, said: () => page.locator('.telling').textContent(), file: join(folder, trialName) };
  }
  const trialName = 'transfer-case.trial.json';

  it('is opened with the job, and saved back in its place', async () => {
    const { page, complaints, said, file } = await served(() => {});
    const before = JSON.parse(readFileSync(file, 'utf8'));
    await page.locator('.steps [data-step="trial-fit"] button.line').click();
    await expect.poll(() => page.locator('.readings > li').count()).toBe(before.goes.flatMap(readingsOf).length);
    const clay = page.locator('.readings > li').last().getByRole('textbox', { name: /^clay/ });
    const was = Number(await clay.inputValue());
    await clay.fill(String(was + 0.25));
    await clay.press('Enter');
    await page.getByRole('button', { name: 'Save the job' }).click();
    await expect.poll(said).toContain(`Saved: ${trialName}.`);
    const after = JSON.parse(readFileSync(file, 'utf8'));
    expect({ ...after, goes: [] }).toEqual({ ...before, goes: [] });
    expect(after.goes.flatMap(readingsOf).filter(({ thickness }: Reading) => thickness === was + 0.25).length).toBe(1);
    expect(JSON.parse(readFileSync(`${file}.before`, 'utf8'))).toEqual(before);
    expect(complaints).toEqual([]);
  }, 120_000);

  it('that cannot be read is told of in one line, and the job opens without it', async () => {
    const { page, said, file } = await served((folder) => writeFileSync(join(folder, trialName), '{"format"'));
    expect(await page.locator('.title').textContent()).toContain('Transfer case');
    await expect.poll(said).toContain(`Without its trial fits, which stay as they are: ${trialName}, line 1`);
    expect(readFileSync(file, 'utf8')).toBe('{"format"');
  }, 120_000);
});

interface Reading {
  readonly thickness?: number;
}
const readingsOf = ({ readings = [] }: { readonly readings?: readonly Reading[] }): readonly Reading[] => readings;

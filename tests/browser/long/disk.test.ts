import { readFileSync, rmSync } from 'node:fs';
import type { BrowserContext, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, expect, it } from 'vitest';
import { readJobFile } from '../../../src/job/read-job-file.ts';
import { launchBrowser } from '../support/browser.ts';
import { type Harness, type HarnessWindow, harnessPage, newFolder, openHarness } from '../support/harness.ts';
import { describeInBrowser } from '../support/in-browser.ts';

describeInBrowser('a job saved as one file', () => {
  const folder = newFolder();
  let harness: Harness;
  let browser: BrowserContext;
  let page: Page;
  beforeAll(async () => {
    harness = await openHarness();
    browser = await launchBrowser(folder);
  });
  afterEach(() => page.close());
  afterAll(async () => {
    await browser.close();
    harness.close();
    rmSync(folder, { recursive: true, force: true, maxRetries: 5 });
  });

  const isJobAfter = (text: string, edits: number) =>
    page.evaluate(
      ([held, count]) => {
        const { sameJob, jobAfter } = (window as unknown as HarnessWindow).fettle;
        return sameJob(JSON.parse(held), jobAfter(count));
      },
      [text, edits] as const,
    );

  it('is a download where the browser can do no more, and reads as the job it was, pictures and all', async () => {
    page = await harnessPage(browser, harness.fromDisk);
    const coming = page.waitForEvent('download');
    const saved = await page.evaluate(() => {
      Object.assign(window, { showSaveFilePicker: undefined });
      const { saveJobFile, jobAfter } = (window as unknown as HarnessWindow).fettle;
      return saveJobFile(jobAfter(8));
    });
    const download = await coming;
    expect(saved).toEqual({ how: 'downloaded', name: 'edit-8.job.json' });
    expect(download.suggestedFilename()).toBe('edit-8.job.json');
    const text = readFileSync(await download.path(), 'utf8');
    expect(readJobFile('edit-8.job.json', text).ok).toBe(true);
    expect(await isJobAfter(text, 8)).toBe(true);
  });

  it('goes where the builder says, and there again without asking', async () => {
    page = await harnessPage(browser, harness.served);
    const { seen, text } = await page.evaluate(async () => {
      const { saveJobFile, jobAfter } = (window as unknown as HarnessWindow).fettle;
      const place = await navigator.storage.getDirectory();
      const seen: string[] = [];
      const showSaveFilePicker = async ({ suggestedName }: { suggestedName: string }) => {
        seen.push(suggestedName);
        return place.getFileHandle('mine.job.json', { create: true });
      };
      Object.assign(window, { showSaveFilePicker });
      const first = await saveJobFile(jobAfter(1));
      if (first.how !== 'written') return { seen: [first.how], text: '' };
      const again = await saveJobFile(jobAfter(9), first.file);
      const file = await (await place.getFileHandle('mine.job.json')).getFile();
      return { seen: [...seen, first.name, again.how], text: await file.text() };
    });
    expect(seen).toEqual(['edit-1.job.json', 'mine.job.json', 'written']);
    expect(await isJobAfter(text, 9)).toBe(true);
  });

  it('that cannot be written is said so, and the file that stood there is as it was', async () => {
    page = await harnessPage(browser, harness.served);
    const seen = await page.evaluate(async () => {
      const { saveJobFile, jobAfter, sameJob } = (window as unknown as HarnessWindow).fettle;
      const place = await navigator.storage.getDirectory();
      const file = await place.getFileHandle('stands.job.json', { create: true });
      await saveJobFile(jobAfter(1), file);
      const { write } = FileSystemWritableFileStream.prototype;
      FileSystemWritableFileStream.prototype.write = async function () {
        await write.call(this, '{ "half": ');
        throw new DOMException('no room', 'QuotaExceededError');
      };
      const saved = await saveJobFile(jobAfter(2), file);
      FileSystemWritableFileStream.prototype.write = write;
      const text = await (await file.getFile()).text();
      return { saved, same: sameJob(JSON.parse(text), jobAfter(1)) };
    });
    expect(seen).toEqual({ saved: { how: 'failed', said: 'QuotaExceededError: no room' }, same: true });
  });

  it('may be called off, and one too large to be opened again is not written at all', async () => {
    page = await harnessPage(browser, harness.served);
    const ends = await page.evaluate(async () => {
      const { saveJobFile, jobAfter } = (window as unknown as HarnessWindow).fettle;
      const showSaveFilePicker = () => Promise.reject(new DOMException('', 'AbortError'));
      Object.assign(window, { showSaveFilePicker });
      const job = jobAfter(0);
      const [picture] = job.pictures ?? [];
      const pictures = picture === undefined ? [] : Array.from({ length: 10 }, (_, i) => ({ ...picture, id: `${i}` }));
      return [(await saveJobFile(job)).how, (await saveJobFile({ ...job, pictures })).how];
    });
    expect(ends).toEqual(['called-off', 'too-large']);
  });

  it('opens again from the files chosen; pictures and drawings are handed on, and what cannot be read is said', async () => {
    page = await harnessPage(browser, harness.served);
    const seen = await page.evaluate(async () => {
      const { readChosen } = (window as unknown as HarnessWindow).fettle;
      const [job, photo] = [new File(['{}'], 'a.job.json'), new File(['x'], 'a.jpg')];
      const read = await readChosen([job, photo]);
      const lost = new File(['{}'], 'lost.fit.json');
      lost.text = () => Promise.reject(new DOMException('', 'NotReadableError'));
      const failed = await readChosen([job, lost]);
      return {
        texts: read.ok && read.value.texts,
        others: read.ok && read.value.others.map(({ name }) => name),
        failed: failed.ok ? [] : failed.findings.map(({ file, found }) => [file, found]),
      };
    });
    expect(seen).toEqual({
      texts: [{ name: 'a.job.json', text: '{}' }],
      others: ['a.jpg'],
      failed: [['lost.fit.json', 'a file that could not be read (NotReadableError)']],
    });
  });

  it('and files at home are looked at again when the page is, and it is told once when they change', async () => {
    page = await harnessPage(browser, harness.served);
    const told = await page.evaluate(async () => {
      const { findHome, watchHome } = (window as unknown as HarnessWindow).fettle;
      let version = 'one';
      const files = () => [{ name: 'a.job.json', text: '{}', version }];
      const ask = async (address: string) =>
        Response.json(address === 'versions' ? { 'a.job.json': version } : { open: 'a.job.json', files: files() });
      const reader = {
        opened: async () => ({ ok: false, findings: [] }) as const,
        homeTexts: async () => ({ texts: new Map(), onlyInJob: [], moreInJob: false }),
      };
      const home = await findHome(reader, ask);
      if (home === null) return ['no home'];
      const told: string[] = [];
      const look = async () => {
        window.dispatchEvent(new Event('focus'));
        await home.look();
        await new Promise((done) => setTimeout(done));
      };
      const stop = watchHome(home, (state) => told.push(state));
      await look();
      version = 'two';
      await look();
      await look();
      version = 'one';
      stop();
      await look();
      return told;
    });
    expect(told).toEqual(['changed-on-disk']);
  });
});

import { rmSync } from 'node:fs';
import type { BrowserContext, Page } from 'playwright-core';
import { Random } from '../../support/random.ts';
import { launchBrowser } from './browser.ts';
import { type HarnessWindow, harnessPage, newFolder } from './harness.ts';

/** What was seen of a page before it was killed, and what the browser had of its job after that. */
interface KillResult {
  /** The edits counted when the last gesture was begun, and when the job was last said to be kept. */
  readonly begun: number;
  readonly kept: number;
  readonly found: number;
  /** What was found is a job as it was after so many edits, to the last byte of its pictures. */
  readonly whole: boolean;
}

/** Pages killed one after the other, in one browser with one folder of data. */
export interface KillSeries {
  /**
   * Edits a job, kills the page, or the whole browser where `all` is set, at a moment of the seed's choosing, and
   * opens the job again.
   */
  kill(address: string, seed: number, how: { readonly paced: boolean; readonly all: boolean }): Promise<KillResult>;
  end(): Promise<void>;
}

/** How many lines are read from a page, at most, before it dies; and how long it goes on after that, ms. */
const mostLines = 40;
const longestAfter = 25;

export async function killSeries(): Promise<KillSeries> {
  const folder = newFolder();
  let browser = await launchBrowser(folder);
  return {
    async kill(address, seed, { paced, all }) {
      const job = `job-${seed}`;
      const random = new Random(seed);
      const page = await harnessPage(browser, address);
      const seen = watch(page, random.whole(2, mostLines));
      edit(page, job, seed, paced);
      await seen.enough;
      await new Promise((done) => setTimeout(done, random.between(0, longestAfter)));
      await (all ? killBrowser(browser, page) : killPage(page));
      if (all) browser = await launchBrowser(folder);
      const after = await harnessPage(browser, address);
      const found = await foundOf(after, job);
      await Promise.all(browser.pages().map((each) => each.close()));
      return { ...seen.last, ...found };
    },
    async end() {
      await browser.close();
      rmSync(folder, { recursive: true, force: true, maxRetries: 5 });
    },
  };
}

function watch(page: Page, lines: number) {
  const last = { begun: 0, kept: 0 };
  let left = lines;
  const enough = new Promise<void>((done, fail) => {
    page.on('console', (message) => {
      const [what, count] = message.text().split(' ');
      if (what === 'begun' || what === 'kept') last[what] = Number(count);
      else fail(new Error(message.text()));
      left -= 1;
      if (left === 0) done();
    });
  });
  return { last, enough };
}

function edit(page: Page, job: string, seed: number, paced: boolean): void {
  page
    .evaluate(([id, from, slowly]) => (window as unknown as HarnessWindow).fettle.editWithoutEnd(id, from, slowly), [
      job,
      seed,
      paced,
    ] as const)
    // it ends with the page
    .catch(() => {});
}

async function killPage(page: Page): Promise<void> {
  const gone = new Promise((done) => page.once('crash', done));
  const session = await page.context().newCDPSession(page);
  // there is no answer from the dead
  session.send('Page.crash').catch(() => {});
  await gone;
}

async function killBrowser(browser: BrowserContext, page: Page): Promise<void> {
  const gone = new Promise((done) => browser.once('close', done));
  const session = await browser.newCDPSession(page);
  session.send('Browser.crash').catch(() => {});
  await gone;
}

const foundOf = (page: Page, job: string): Promise<Pick<KillResult, 'found' | 'whole'>> =>
  page.evaluate(async (id) => {
    const { openJob, forget, editsIn, jobAfter, sameJob } = (window as unknown as HarnessWindow).fettle;
    const opened = await openJob(id);
    if (opened === null) return { found: -1, whole: false };
    await forget(id);
    const count = editsIn(opened.kept.job);
    return { found: count, whole: sameJob(opened.kept.job, jobAfter(count)) };
  }, job);

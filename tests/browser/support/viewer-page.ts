import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { BrowserContext, Page } from 'playwright-core';
import { inject } from 'vitest';
import { newUser } from './browser.ts';

/** The viewer's single file, built once a run: its path. */
export const viewerFile = (): string => join(inject('runFolder'), 'viewer/index.html');

export interface Viewer {
  readonly context: BrowserContext;
  readonly page: Page;
  /** Everything the page complained of. */
  readonly complaints: string[];
}

const laptop = { width: 1440, height: 900 };

/** The page opened from disk as a new user has it. */
export async function openViewer(size = laptop, user = newUser): Promise<Viewer> {
  const context = await user();
  const page = await context.newPage();
  await page.setViewportSize(size);
  const complaints: string[] = [];
  heard(page, complaints);
  await page.goto(pathToFileURL(viewerFile()).href);
  return { context, page, complaints };
}

interface WorkedJob {
  readonly size?: { readonly width: number; readonly height: number };
  /** A script of ours that is run in the page before all else. */
  readonly first?: () => void;
  /** Whose browser it is opened in. */
  readonly user?: () => Promise<BrowserContext>;
}

/** The same with a worked job open. */
export async function openWorkedJob({ size, first, user }: WorkedJob = {}): Promise<Viewer> {
  const viewer = await openViewer(size, user);
  if (first !== undefined) {
    await viewer.context.addInitScript(first);
    await viewer.page.goto(viewer.page.url());
  }
  await viewer.page.getByRole('button', { name: 'Look at a worked job' }).click();
  await settled(viewer.page);
  return viewer;
}

/** Writes down everything a page complains of. */
export function heard(page: Page, complaints: string[]): void {
  page.on('pageerror', ({ message }) => complaints.push(message));
  page.on('console', (message) => {
    if (message.type() === 'error' || message.type() === 'warning') complaints.push(message.text());
  });
}

/** Waits until the core has said all it has to say. */
export const settled = (page: Page): Promise<unknown> =>
  page.waitForFunction(() => document.body.classList.contains('has-job') && !('working' in document.body.dataset));

/** All the open step has to say, which it says only while that is unfolded. */
export async function toldInFull(on: Pick<Page, 'locator'>): Promise<string> {
  const details = on.locator('.panel details:not(.more)');
  if ((await details.getAttribute('open')) === null) await details.locator('summary').click();
  return (await details.locator('pre').textContent()) ?? '';
}

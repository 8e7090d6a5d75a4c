import { mkdtempSync, readFileSync } from 'node:fs';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { BrowserContext, Page } from 'playwright-core';
import { inject } from 'vitest';
import type { Fettle } from './harness-page.ts';

/** What a test says to the page: `window.fettle` there. */
export type HarnessWindow = Window & { fettle: Fettle };

/** A page with the viewer's modules on it, opened from a disk or served, until it is closed. */
export interface Harness {
  readonly fromDisk: string;
  readonly served: string;
  close(): void;
}

/** Opens that page, built as one file as the viewer's own is. */
export async function openHarness(): Promise<Harness> {
  const page = join(inject('runFolder'), 'harness/harness.html');
  const server = createServer((_, response) => response.setHeader('Content-Type', 'text/html').end(readFileSync(page)));
  await new Promise<void>((done) => server.listen(0, '127.0.0.1', done));
  return {
    fromDisk: pathToFileURL(page).href,
    served: `http://127.0.0.1:${(server.address() as AddressInfo).port}/`,
    close() {
      server.closeAllConnections();
      server.close();
    },
  };
}

/** A new empty folder, for the data of a browser or a page. */
export const newFolder = (): string => mkdtempSync(join(inject('runFolder'), 'data-'));

/** A page of the browser with the harness on it. */
export async function harnessPage(browser: BrowserContext, address: string): Promise<Page> {
  const page = await browser.newPage();
  await page.goto(address);
  await page.waitForFunction(() => 'fettle' in window);
  return page;
}

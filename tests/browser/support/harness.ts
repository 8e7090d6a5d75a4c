import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { BrowserContext, Page } from 'playwright-core';
import { build } from 'vite';
import { viteSingleFile } from 'vite-plugin-singlefile';
import type { Fettle } from './harness-page.ts';

/** What a test says to the page: `window.fettle` there. */
export type HarnessWindow = Window & { fettle: Fettle };

/** A page with the viewer's modules on it, opened from a disk or served; `close` takes both away. */
export interface Harness {
  readonly fromDisk: string;
  readonly served: string;
  close(): void;
}

/** Builds that page as one file, as the viewer's own is. */
export async function buildHarness(): Promise<Harness> {
  const folder = newFolder();
  await build({
    root: import.meta.dirname,
    configFile: false,
    logLevel: 'error',
    plugins: [viteSingleFile()],
    build: { outDir: folder, rollupOptions: { input: join(import.meta.dirname, 'harness.html') } },
  });
  const page = join(folder, 'harness.html');
  const server = createServer((_, response) => response.setHeader('Content-Type', 'text/html').end(readFileSync(page)));
  await new Promise<void>((done) => server.listen(0, '127.0.0.1', done));
  return {
    fromDisk: pathToFileURL(page).href,
    served: `http://127.0.0.1:${(server.address() as AddressInfo).port}/`,
    close() {
      server.closeAllConnections();
      server.close();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

/** A new empty folder, for the data of a browser or a page. */
export const newFolder = (): string => mkdtempSync(join(tmpdir(), 'fettle-browser-'));

/** A page of the browser with the harness on it. */
export async function harnessPage(browser: BrowserContext, address: string): Promise<Page> {
  const page = await browser.newPage();
  await page.goto(address);
  await page.waitForFunction(() => 'fettle' in window);
  return page;
}

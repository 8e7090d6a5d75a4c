import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { type Browser, type BrowserContext, chromium } from 'playwright-core';

const env = process.env;

/** Where a browser usually lies, by system. */
const usualPlaces: Readonly<Record<string, readonly string[]>> = {
  linux: ['/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome', '/usr/bin/microsoft-edge'],
  darwin: ['Google Chrome', 'Chromium', 'Microsoft Edge'].map(
    (name) => `/Applications/${name}.app/Contents/MacOS/${name}`,
  ),
  win32: [env.PROGRAMFILES, env['PROGRAMFILES(X86)'], env.LOCALAPPDATA].flatMap((folder) =>
    ['Google/Chrome/Application/chrome.exe', 'Microsoft/Edge/Application/msedge.exe'].map((file) =>
      join(folder ?? '', file),
    ),
  ),
};

/** The browser the tests run in: the one `FETTLE_BROWSER` names, else one that is installed; null where there is none. */
export const browserFile: string | null =
  env.FETTLE_BROWSER ?? (usualPlaces[process.platform] ?? []).find((file) => existsSync(file)) ?? null;

const flags = [
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

/** Chromium's own sandbox refuses to run as root. */
const asRoot = process.getuid?.() === 0 ? ['--no-sandbox'] : [];

/** Ends what hangs, far above what a busy machine takes. */
const timeout = 120_000;

const launching = () => {
  if (browserFile === null) throw new Error('no browser found; name one in FETTLE_BROWSER');
  return { executablePath: browserFile, headless: true, args: [...flags, ...asRoot], timeout };
};

/** Starts the browser on a folder of its own data: an empty one is a new user, one used before goes on from there. */
export async function launchBrowser(userDataFolder: string): Promise<BrowserContext> {
  const context = await chromium.launchPersistentContext(userDataFolder, launching());
  context.setDefaultTimeout(timeout);
  return context;
}

let browser: Promise<Browser> | null = null;

/** A new user of the one browser that the files of a worker share; it ends with the worker. */
export async function newUser(): Promise<BrowserContext> {
  browser ??= chromium.launch(launching());
  const context = await (await browser).newContext();
  context.setDefaultTimeout(timeout);
  return context;
}

import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { type Browser, type BrowserContext, chromium, firefox } from 'playwright-core';

const env = process.env;

type Places = Readonly<Record<string, readonly string[]>>;

const windowsFolders = [env.PROGRAMFILES, env['PROGRAMFILES(X86)'], env.LOCALAPPDATA];

/** Where a browser usually lies, by system. */
const usualPlaces: Places = {
  linux: ['/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome', '/usr/bin/microsoft-edge'],
  darwin: ['Google Chrome', 'Chromium', 'Microsoft Edge'].map(
    (name) => `/Applications/${name}.app/Contents/MacOS/${name}`,
  ),
  win32: windowsFolders.flatMap((folder) =>
    ['Google/Chrome/Application/chrome.exe', 'Microsoft/Edge/Application/msedge.exe'].map((file) =>
      join(folder ?? '', file),
    ),
  ),
};

const usualPlacesOfFirefox: Places = {
  linux: ['/usr/bin/firefox-esr', '/usr/bin/firefox'],
  darwin: ['/Applications/Firefox.app/Contents/MacOS/firefox'],
  win32: windowsFolders.map((folder) => join(folder ?? '', 'Mozilla Firefox/firefox.exe')),
};

const foundIn = (places: Places): string | null =>
  (places[process.platform] ?? []).find((file) => existsSync(file)) ?? null;

/** The browser the tests run in: the one `FETTLE_BROWSER` names, else one that is installed; null where there is none. */
export const browserFile: string | null = env.FETTLE_BROWSER ?? foundIn(usualPlaces);

/** The Firefox that a few of them run in as well: the one `FETTLE_FIREFOX` names, else one that is installed. */
export const firefoxFile: string | null = env.FETTLE_FIREFOX ?? foundIn(usualPlacesOfFirefox);

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

/** A new user of a Firefox of its own, that ends with it; what it downloads comes to lie in the folder, by its name. */
export async function newFirefoxUser(downloadsFolder: string): Promise<BrowserContext> {
  if (firefoxFile === null) throw new Error('no Firefox found; name one in FETTLE_FIREFOX');
  // this channel is Firefox as it is sold, by WebDriver BiDi
  const launched = await firefox.launch({
    channel: 'moz-firefox',
    executablePath: firefoxFile,
    downloadsPath: downloadsFolder,
    timeout,
  });
  const context = await launched.newContext();
  context.setDefaultTimeout(timeout);
  context.on('close', () => launched.close());
  return context;
}

import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { type BrowserContext, chromium } from 'playwright-core';

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

/** Starts the browser on a folder of its own data: an empty one is a new user, one used before goes on from there. */
export function launchBrowser(userDataFolder: string, more: readonly string[] = []): Promise<BrowserContext> {
  if (browserFile === null) throw new Error('no browser found; name one in FETTLE_BROWSER');
  return chromium.launchPersistentContext(userDataFolder, {
    executablePath: browserFile,
    headless: true,
    args: [...flags, ...asRoot, ...more],
  });
}

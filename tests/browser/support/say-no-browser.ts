import { browserFile } from './browser.ts';

/** Said once for the whole project. */
export function setup(): void {
  if (browserFile === null)
    process.stdout.write('No browser found for the browser tests: name one in FETTLE_BROWSER.\n');
}

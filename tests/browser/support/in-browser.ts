import { describe } from 'vitest';
import { browserFile, firefoxFile } from './browser.ts';

/**
 * A `describe` whose tests need the browser: with none they are skipped, and counted so; where everything must be
 * tested they fail.
 */
export const describeInBrowser = describe.skipIf(browserFile === null && process.env.CI !== 'true');

/** The same in Firefox. */
export const describeInFirefox = describe.skipIf(firefoxFile === null && process.env.CI !== 'true');

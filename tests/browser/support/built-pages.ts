import { execFile } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { promisify } from 'node:util';
import { build } from 'vite';
import { viteSingleFile } from 'vite-plugin-singlefile';
import type { TestProject } from 'vitest/node';
import { browserFile, firefoxFile } from './browser.ts';

declare module 'vitest' {
  export interface ProvidedContext {
    /** A folder of this run's own, gone when it ends: the pages built for it, and what the browsers write. */
    readonly runFolder: string;
  }
}

const house = resolve(import.meta.dirname, '../../..');

/** Builds the pages the tests open, once a run and anew for a rerun; says once where no browser is to open them. */
export async function setup(project: TestProject): Promise<() => void> {
  if (browserFile === null)
    process.stdout.write('No browser found for the browser tests: name one in FETTLE_BROWSER.\n');
  if (firefoxFile === null)
    process.stdout.write('No Firefox found for its tests of the page: name one in FETTLE_FIREFOX.\n');
  const folder = mkdtempSync(join(tmpdir(), 'fettle-browser-'));
  const buildPages = async (): Promise<void> => {
    await Promise.all([buildHarness(folder), buildViewer(folder)]);
  };
  await buildPages();
  project.onTestsRerun(buildPages);
  project.provide('runFolder', folder);
  return () => rmSync(folder, { recursive: true, force: true, maxRetries: 5 });
}

/** The viewer as `npm run build:viewer` makes it. */
async function buildViewer(folder: string): Promise<void> {
  const vite = join(house, 'node_modules/vite/bin/vite.js');
  const argv = ['build', '--config', 'vite.viewer.config.ts', '--logLevel', 'warn', '--emptyOutDir'];
  const { NODE_ENV: _, ...env } = process.env;
  await promisify(execFile)(process.execPath, [vite, ...argv, '--outDir', join(folder, 'viewer')], {
    cwd: house,
    env,
  });
}

async function buildHarness(folder: string): Promise<void> {
  await build({
    root: import.meta.dirname,
    configFile: false,
    logLevel: 'error',
    plugins: [viteSingleFile()],
    build: {
      outDir: join(folder, 'harness'),
      emptyOutDir: true,
      rollupOptions: { input: join(import.meta.dirname, 'harness.html') },
    },
  });
}

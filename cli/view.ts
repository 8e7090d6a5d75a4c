import * as fs from 'node:fs';
import { basename, dirname } from 'node:path';
import { Command } from 'commander';
import type { Finding } from '../src/files/finding.ts';
import { builtPage } from './built-page.ts';
import { largestFileBytes, loadText } from './load-text.ts';
import { orFail } from './open-job.ts';
import { failWith } from './report-findings.ts';
import { codeOf } from './save.ts';
import { print, say } from './terminal.ts';
import { openBrowser } from './view/open-browser.ts';
import { namesOpen, standing } from './view/opened-files.ts';
import { type Serving, serve } from './view/serve.ts';

const examples = `
The page is served to this machine alone, at an address nobody can guess; nothing leaves the machine. What is saved in
the page is written to the files that were opened, the version before it beside each as NAME.before. Ctrl-C ends it.
Exit code: 0 ended with Ctrl-C, 2 an input is wrong.

Examples:
  fettle view profiles/marsh-carrier/transfer-case.fit.json
  fettle view profiles/starter-boss/starter.fit.json --port 8080 --no-open
  fettle view`;

/** `fettle view [FILE]`: the viewer page in a browser, with a fit or a job open in it. */
export function viewCommand(): Command {
  return new Command('view')
    .description('Opens the viewer in a browser: the fit drawn, checked and planned, and saved back to its files.')
    .argument('[file]', 'the fit, *.fit.json, or a job in one file, *.job.json; without, an empty page')
    .option('--port <number>', 'the port to listen on, 1024 to 65535; default: a free one')
    .option('--no-open', 'print the address only, and open no browser')
    .addHelpText('after', examples)
    .action(view);
}

interface ViewOptions {
  readonly port?: string;
  readonly open: boolean;
}

async function view(file: string | undefined, { port, open }: ViewOptions): Promise<void> {
  const jobFile = file ?? null;
  const asked = portIn(port);
  if (jobFile !== null) orFail(openable(jobFile));
  const shown = { html: orFail(builtPage()), jobFile, disk: fs, mostBytes: largestFileBytes };
  const serving = await serve(shown, asked).catch((error) => failWith([whyDeaf(error, asked)]));
  const ended = endedByHand(serving);
  print(`The viewer is at ${serving.address}\nCtrl-C ends it.`);
  if (jobFile !== null) tellMissing(jobFile);
  if (open) openBrowser(serving.address);
  await ended;
}

function portIn(text: string | undefined): number {
  if (text === undefined) return 0;
  const port = /^\d{4,5}$/.test(text) ? Number(text) : 0;
  if (port >= 1024 && port <= 65535) return port;
  return failWith([{ file: '', at: '--port', found: text, expected: 'a number from 1024 to 65535' }]);
}

/** A file that the viewer can open: its own faults are for the page to show. */
function openable(file: string): ReturnType<typeof loadText> {
  const refused = (found: string, expected: string) =>
    ({ ok: false, findings: [{ file, at: '', found, expected }] }) as const;
  if (!/\.(?:fit|job)\.json$/.test(file)) {
    return refused(`a file called ${basename(file)}`, 'a fit, *.fit.json, or a job, *.job.json');
  }
  const text = loadText(file);
  if (text.ok && standing(file, basename(file)) === null) {
    return refused('a link that leads out of its folder', 'the file it leads to');
  }
  return text;
}

function whyDeaf(error: unknown, port: number): Finding {
  const code = codeOf(error);
  const found = code === 'EADDRINUSE' ? `${port}, which another program listens on` : `${port}, refused (${code})`;
  return { file: '', at: '--port', found, expected: 'a port that is free, or none, to have one chosen' };
}

/** Parts that are missing are the page's to report too, but not why those that are there stay shut. */
function tellMissing(jobFile: string): void {
  const shut = namesOpen(jobFile).filter((name) => standing(jobFile, name) === null);
  const folder = dirname(jobFile);
  for (const name of shut) say(`${name} is not shown: it is no JSON file that can be read in ${folder} or below.`);
}

/** Ctrl-C is how a viewer is meant to end, and so no interruption. */
const endedByHand = (serving: Serving): Promise<void> =>
  new Promise((done) => {
    process.once('SIGINT', () => {
      if (process.stderr.isTTY) say('');
      void serving.close().then(done);
    });
  });

import type { IncomingMessage } from 'node:http';
import { basename } from 'node:path';
import type { Disk } from '../save.ts';
import { namesOpen, standing } from './opened-files.ts';
import { pageReply } from './page.ts';
import { readBody } from './read-body.ts';
import { refusals, wrongMethod } from './refusals.ts';
import { jsonReply, nothingHere, type Reply } from './reply.ts';
import { saveOpened } from './save-opened.ts';

/** What the viewer shows: its page, and the fit or job that is open in it. */
export interface ViewerContent {
  readonly html: string;
  readonly jobFile: string | null;
  readonly disk: Disk;
  readonly mostBytes: number;
}

/** The answer to a request that was let in; `asked` is its address behind the token. */
export async function answerTo(asked: string, request: IncomingMessage, shown: ViewerContent): Promise<Reply> {
  if (asked.startsWith('file/')) {
    return request.method === 'PUT' ? await put(asked.slice('file/'.length), request, shown) : wrongMethod('PUT');
  }
  const get = pages.get(asked);
  if (get === undefined) return nothingHere;
  return request.method === 'GET' || request.method === 'HEAD' ? get(shown) : wrongMethod('GET, HEAD');
}

const pages: ReadonlyMap<string, (shown: ViewerContent) => Reply> = new Map([
  ['', ({ html }) => pageReply(html)],
  ['job', ({ jobFile }) => jsonReply(200, jobOf(jobFile))],
  ['versions', ({ jobFile }) => jsonReply(200, versionsOf(jobFile))],
]);

function jobOf(jobFile: string | null): object {
  if (jobFile === null) return { open: null, files: [] };
  const files = namesOpen(jobFile).flatMap((each) => standing(jobFile, each) ?? []);
  return { open: basename(jobFile), files: files.map(({ name, text, version }) => ({ name, text, version })) };
}

const versionsOf = (jobFile: string | null): object =>
  jobFile === null
    ? {}
    : Object.fromEntries(namesOpen(jobFile).map((name) => [name, standing(jobFile, name)?.version ?? null]));

async function put(encodedName: string, request: IncomingMessage, shown: ViewerContent): Promise<Reply> {
  const { jobFile, disk, mostBytes } = shown;
  const name = decodedOnce(encodedName);
  // only names that are open are known here: there is no path to climb out by
  if (jobFile === null || name === null || !namesOpen(jobFile).includes(name)) return refusals.notOpened;
  const ifMatch = request.headers['if-match'];
  if (ifMatch === undefined) return refusals.noVersion;
  const body = await readBody(request, mostBytes);
  if (body === 'too-large') return refusals.tooLarge;
  return body === 'cut-short' ? refusals.cutShort : saveOpened(jobFile, name, ifMatch, body, disk);
}

function decodedOnce(text: string): string | null {
  try {
    return decodeURIComponent(text);
  } catch {
    return null;
  }
}

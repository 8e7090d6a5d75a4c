import { basename } from 'node:path';
import { largestFileBytes } from '../load-text.ts';
import { codeOf, whyUnwritable } from '../save.ts';
import { jsonReply, type Reply } from './reply.ts';

const refuse = (status: number, code: string, text: string, more: object = {}): Reply =>
  jsonReply(status, { code, text, ...more });

/** Everything the viewer's server says no to, each in one plain sentence for whoever looks at the page. */
export const refusals = {
  wrongHost: refuse(421, 'wrong-host', 'The viewer answers only to the address it printed.'),
  foreign: refuse(403, 'foreign', 'Another page asked for this; the viewer answers only to its own.'),
  notOpened: refuse(403, 'not-opened', 'That is not one of the files that were opened; nothing was written.'),
  noVersion: refuse(428, 'no-version', 'It was not said which version is to be replaced; nothing was written.'),
  notOurs: refuse(400, 'not-fettle', 'That is not a file of Fettle; nothing was written.'),
  cutShort: refuse(400, 'cut-short', 'The file did not arrive whole; nothing was written.'),
  tooLarge: refuse(413, 'too-large', `More than ${largestFileBytes / 1024 / 1024} MB; nothing was written.`),
  longAddress: refuse(414, 'long-address', 'The address asked for is too long.'),
  fault: refuse(500, 'fault', 'This is a fault of Fettle itself; nothing was written.'),
} as const;

export const wrongMethod = (allowed: string): Reply => {
  const reply = refuse(405, 'wrong-method', 'The viewer cannot be asked that.');
  return { ...reply, headers: { ...reply.headers, Allow: allowed } };
};

/** `version` is the one on disk now, null where the file is gone. */
export function changedSince(name: string, version: string | null): Reply {
  const what = version === null ? 'was taken away' : 'was changed on disk by something else';
  return refuse(412, 'changed', `${name} ${what} since it was opened; nothing was overwritten.`, { version });
}

/** What a failing disk said, with the file that stays as it was. */
export function unwritten(error: unknown, file: string): Reply {
  const code = codeOf(error);
  const text = `${basename(file)} was not saved and is as it was: ${whyUnwritable(error, file).found}.`;
  return refuse(statusOf[code] ?? 500, code, text);
}

const statusOf: Readonly<Record<string, number>> = { ENOSPC: 507, EDQUOT: 507, EACCES: 403, EPERM: 403, EROFS: 403 };

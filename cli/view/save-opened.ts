import { statSync } from 'node:fs';
import { type Disk, replaceFile } from '../save.ts';
import { type Standing, standing, versionOf } from './opened-files.ts';
import { changedSince, refusals, unwritten } from './refusals.ts';
import { jsonReply, type Reply } from './reply.ts';

/** What is put behind a file's name for the version before the last save. */
export const beforeSuffix = '.before';

/** Puts a new version in the place of the one named, which is kept beside it; or says why not, with nothing changed. */
export function saveOpened(jobFile: string, name: string, ifMatch: string, content: Uint8Array, disk: Disk): Reply {
  const old = standing(jobFile, name);
  if (old === null || ifMatch !== `"${old.version}"`) return changedSince(name, old?.version ?? null);
  // a fit that names some other program's file must not make it ours to overwrite
  if (!isOurs(old.text) || !isOurs(new TextDecoder().decode(content))) return refusals.notOurs;
  try {
    if (versionOf(content) !== old.version) replaceKeepingOld(old, content, disk);
    return jsonReply(200, { version: versionOf(content) });
  } catch (error) {
    return unwritten(error, old.path);
  }
}

function replaceKeepingOld({ path, bytes }: Standing, content: Uint8Array, disk: Disk): void {
  replaceFile(path + beforeSuffix, bytes, disk, statSync(path).mode & 0o777);
  replaceFile(path, content, disk);
}

const isOurs = (text: string): boolean => /"format"\s*:\s*"fettle-/.test(text);

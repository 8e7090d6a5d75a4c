import { spawnSync } from 'node:child_process';
import type { BenchCase } from '../contest.ts';
import { interleaved } from '../interleaved.ts';
import { withFilesOf } from '../job-files.ts';
import { flangeInRing } from '../outlines.ts';

const peer = 'node -e 0';
const rounds = 11;

/** The whole command as built, in a fresh process each time, against Node starting up to do nothing. */
export function commandCases(): BenchCase[] {
  return [
    checkCase('marsh carrier', null, 'profiles/marsh-carrier/transfer-case.fit.json', 1 / 3.5),
    withFilesOf(flangeInRing('noisy', 10_000), (fit) => checkCase('noisy', 10_000, fit, 1 / 4)),
    withFilesOf(flangeInRing('noisy', 100_000), (fit) => checkCase('noisy', 100_000, fit, null)),
  ];
}

function checkCase(job: string, edges: number | null, fit: string, atLeast: number | null): BenchCase {
  const check = () => exitCodeOf('dist/cli/fettle.js', 'check', fit);
  const [ours, nothing] = interleaved([check, () => exitCodeOf('-e', '0')], rounds);
  const [oursMs, peerMs] = [ours?.medianMs ?? Number.NaN, nothing?.medianMs ?? Number.NaN];
  const name = `fettle check, whole process, ${job}`;
  return { name, edges, oursMs, peer, peerMs, ratio: peerMs / oursMs, atLeast };
}

/** Runs Node and waits; 0, 1 and 3 are answers, anything else a failure. */
function exitCodeOf(...args: readonly string[]): number {
  const { status, stderr } = spawnSync(process.execPath, args, { encoding: 'utf8' });
  if (status === 0 || status === 1 || status === 3) return status;
  throw new Error(`node ${args.join(' ')} ended with ${status}: ${stderr.trim()}`);
}

import { spawnSync } from 'node:child_process';
import type { Contest } from '../contest.ts';

const fit = 'profiles/marsh-carrier/transfer-case.fit.json';
const peer = 'node -e 0';

/** The whole command on a real job, as built, against Node starting up to do nothing. */
export function* commandContests(): Generator<Contest> {
  yield {
    edges: null,
    within: Number.POSITIVE_INFINITY,
    rounds: 15,
    runs: { check: () => exitCodeOf('dist/cli/fettle.js', 'check', fit), [peer]: () => exitCodeOf('-e', '0') },
    cases: [{ name: 'fettle check, whole process, marsh carrier', ours: 'check', peer, atLeast: 1 / 6 }],
  };
}

/** Runs Node and waits; 0, 1 and 3 are answers, anything else a failure. */
function exitCodeOf(...args: readonly string[]): number {
  const { status, stderr } = spawnSync(process.execPath, args, { encoding: 'utf8' });
  if (status === 0 || status === 1 || status === 3) return status;
  throw new Error(`node ${args.join(' ')} ended with ${status}: ${stderr.trim()}`);
}

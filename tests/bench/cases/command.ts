import { spawnSync } from 'node:child_process';
import type { Contest } from '../contest.ts';

const fit = 'profiles/marsh-carrier/transfer-case.fit.json';

/** The whole command on a real job, against Node starting up and doing nothing. */
export function* commandContests(): Generator<Contest> {
  yield {
    name: 'fettle check, whole process, marsh carrier',
    edges: null,
    within: Number.POSITIVE_INFINITY,
    rounds: 15,
    ours: () => exitCodeOf('dist/cli/fettle.js', 'check', fit),
    peers: [{ name: 'node -e 0', run: () => exitCodeOf('-e', '0'), atLeast: 1 / 6 }],
  };
}

/** Runs Node and waits; 0, 1 and 3 are answers, the rest are failures. */
function exitCodeOf(...args: readonly string[]): number {
  const { status, stderr } = spawnSync(process.execPath, args, { encoding: 'utf8' });
  if (status === 0 || status === 1 || status === 3) return status;
  throw new Error(`node ${args.join(' ')} ended with ${status}: ${stderr.trim()}`);
}

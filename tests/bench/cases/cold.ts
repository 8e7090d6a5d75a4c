import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import type { BenchCase } from '../contest.ts';
import { medianOf } from '../interleaved.ts';

const peer = '200 positions, geos-wasm prepared';
const rounds = 9;

/**
 * The clearance over a turn of 15° as a first question, trees and prepared forms built and nothing compiled yet: both
 * sides in a fresh process each time, in turns, timed inside it once their libraries are loaded.
 */
export function coldCases(): BenchCase[] {
  return [10_000, 100_000].map((edges) => {
    const [ours, peers] = [[] as number[], [] as number[]];
    for (let i = 0; i < rounds; i++) {
      ours.push(msOf('ours', edges));
      peers.push(msOf('peer', edges));
    }
    const [oursMs, peerMs] = [medianOf(ours), medianOf(peers)];
    const atLeast = edges === 10_000 ? 8 : null;
    return {
      name: '15° clearance, fresh process, noisy',
      edges,
      oursMs,
      peer,
      peerMs,
      ratio: peerMs / oursMs,
      atLeast,
    };
  });
}

const script = fileURLToPath(new URL('cold-run.js', import.meta.url));

function msOf(who: 'ours' | 'peer', edges: number): number {
  const { status, stdout, stderr } = spawnSync(process.execPath, [script, who, `${edges}`], { encoding: 'utf8' });
  if (status !== 0) throw new Error(`a fresh process ended with ${status}: ${stderr.trim()}`);
  return Number(stdout);
}

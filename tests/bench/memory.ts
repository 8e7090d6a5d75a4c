import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import { buildOutlineTree } from '../../src/geometry/motion/outline-tree.ts';
import { passage } from '../../src/geometry/motion/passage.ts';
import { polarFrame } from '../../src/geometry/motion/polar-frame.ts';
import { identity } from '../../src/geometry/plane/rigid.ts';
import { flangeInRing, turnOf } from './outlines.ts';

/** What one outline takes, and what a thousand checks leave behind after the garbage is collected; bytes. */
export interface MemoryRow {
  readonly name: string;
  readonly edges: number;
  readonly treeBytes: number;
  readonly turnFrameBytes: number;
  readonly bytesPerEdge: number;
  readonly leftBehindBytes: number;
}

const checks = 1000;

export const memory = (): MemoryRow[] => [1000, 10_000, 100_000].map(memoryOf);

function memoryOf(edges: number): MemoryRow {
  const pair = flangeInRing('smooth', edges);
  const [fixed, moving] = [buildOutlineTree(pair.fixed), buildOutlineTree(pair.moving)];
  const check = () => passage(fixed, moving, identity, turnOf(pair));
  check();
  const before = bytesInUse();
  for (let i = 0; i < checks; i++) check();
  const leftBehindBytes = bytesInUse() - before;
  const treeBytes = bufferBytes(moving);
  const turnFrameBytes = bufferBytes(polarFrame(moving, pair.pole));
  const bytesPerEdge = (treeBytes + turnFrameBytes) / edges;
  return { name: 'smooth', edges, treeBytes, turnFrameBytes, bytesPerEdge, leftBehindBytes };
}

const bufferBytes = (holder: object): number =>
  Object.values(holder).reduce<number>((sum, value) => sum + (ArrayBuffer.isView(value) ? value.byteLength : 0), 0);

setFlagsFromString('--expose-gc');
const collectGarbage = runInNewContext('gc') as () => void;

function bytesInUse(): number {
  collectGarbage();
  const { heapUsed, arrayBuffers } = process.memoryUsage();
  return heapUsed + arrayBuffers;
}

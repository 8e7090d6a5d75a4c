import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Loop, Region } from '../../src/geometry/plane/loop.ts';
import { mirrorRegion } from '../../src/geometry/plane/loop.ts';
import type { Pair } from './outlines.ts';

/** A pair as the files of a job: swung 15° home with half a millimetre asked, which it has. By name, as raw values. */
export function jobFilesOf({ fixed, moving, pole }: Pair): Readonly<Record<string, unknown>> {
  const part = (name: string, depth: readonly [number, number], loops: Region) => ({
    format: 'fettle-part/1',
    name,
    units: 'mm',
    viewedFrom: 'face',
    traceError: 0.1,
    depthError: 0.1,
    sections: [{ id: name, depth, mayCut: true, loops: loops.map(written) }],
  });
  return {
    'bench.fit.json': {
      format: 'fettle-fit/1',
      units: 'mm',
      fixed: 'ring.part.json',
      moving: 'flange.part.json',
      axis: [pole.x, pole.y],
      clearance: 0.5,
      offerUp: [{ standOff: 40, turn: 15 }, { standOff: 5, turn: 15 }, { standOff: 5 }, {}],
    },
    'ring.part.json': part('ring', [0, 20], fixed),
    'flange.part.json': part('flange', [-10, 20], mirrorRegion(moving)),
  };
}

/** The same on the disk while `use` runs, in a folder of its own that is gone afterwards. */
export function withFilesOf<T>(pair: Pair, use: (fit: string) => T): T {
  const folder = mkdtempSync(join(tmpdir(), 'fettle-bench-'));
  try {
    for (const [name, raw] of Object.entries(jobFilesOf(pair))) writeFileSync(join(folder, name), JSON.stringify(raw));
    return use(join(folder, 'bench.fit.json'));
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

const written = (loop: Loop): unknown =>
  loop.kind === 'circle'
    ? { circle: [loop.centre.x, loop.centre.y], radius: loop.radius }
    : loop.vertices.map(({ x, y, bulge }) => (bulge === 0 ? [x, y] : [x, y, bulge]));

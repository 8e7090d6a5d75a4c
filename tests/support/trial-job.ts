import { readJob } from '../../src/job/read-job.ts';
import type { Joint } from '../../src/joint/joint.ts';
import { placeJob } from '../../src/joint/place-job.ts';

type Point = readonly [number, number];

/** A box of so many mm outwards and across, its middle so far from the axis at an angle. */
const box = (radius: number, angleDeg: number, outwards: number, across: number): Point[] => {
  const angle = (angleDeg * Math.PI) / 180;
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  return (
    [
      [-1, -1],
      [1, -1],
      [1, 1],
      [-1, 1],
    ] as const
  ).map(([u, v]) => {
    const [r, t] = [radius + (u * outwards) / 2, (v * across) / 2];
    return [r * cos - t * sin, r * sin + t * cos];
  });
};

const part = { format: 'fettle-part/1', units: 'mm', traceError: 0.5, material: 'grey-iron' };
const dowels = (letter: string, more: object) =>
  [-120, 120].map((x, i) => ({ id: `${letter}${i + 1}`, kind: 'dowel', at: [x, 0], ...more }));

/** By their angle; a lip stands outside a rib, or so many degrees beside it. */
const ribs = [
  { id: 'rib 1', angle: 30, beside: 6 },
  { id: 'rib 2', angle: 75, beside: 0 },
  { id: 'rib 3', angle: 125, beside: 6 },
  { id: 'rib 4', angle: 170, beside: -6 },
  { id: 'rib 5', angle: 205, beside: -6 },
  { id: 'rib 6', angle: 240, beside: 0 },
  { id: 'rib 7', angle: 280, beside: 0 },
];

/** Ribs round an axis, each a section of its own, lips of a pump beside them, and a boss that one more lip swings into. */
export const trialFiles: Readonly<Record<string, object>> = {
  'pump.fit.json': {
    format: 'fettle-fit/1',
    title: 'Pump to block',
    units: 'mm',
    fixed: 'block.part.json',
    moving: 'pump.part.json',
    axis: [0, 0],
    dowels: [
      ['D1', 'P1'],
      ['D2', 'P2'],
    ],
    offerUp: [{ standOff: 80, turn: 20 }, { standOff: 14, turn: 20 }, { standOff: 14, turn: 0 }, { standOff: 0 }],
    clearance: { home: 2, wayIn: 1 },
    depthMargin: 1,
  },
  'block.part.json': {
    ...part,
    name: 'Block',
    viewedFrom: 'face',
    holes: dowels('D', { diameter: 12, proud: 8 }),
    sections: [
      ...ribs.map(({ id, angle }) => ({ id, depth: [10, 60], mayCut: true, loops: [box(150, angle, 20, 8)] })),
      { id: 'boss', depth: [10, 60], mayCut: true, loops: [box(166, 315, 8, 12)] },
    ],
  },
  'pump.part.json': {
    ...part,
    name: 'Pump',
    viewedFrom: 'back',
    holes: dowels('P', { diameter: 12 }),
    sections: [
      ...ribs.map(({ angle, beside }, i) => ({
        id: `lip ${i + 1}`,
        depth: [-50, 0],
        loops: [beside === 0 ? box(168, angle, 8, 30) : box(150, angle + beside, 30, 6)],
      })),
      { id: 'lip at the boss', depth: [-50, 0], loops: [box(168, 307.5, 14, 6)] },
    ],
  },
};

/** The files read as a job and dowelled up. */
export function trialJoint(files = trialFiles): Joint {
  const read = readJob('pump.fit.json', (path) => ({ ok: true, value: JSON.stringify(files[path]) }));
  const placed = read.ok ? placeJob(read.value) : read;
  if (!placed.ok) throw new Error(JSON.stringify(placed.findings));
  return placed.value;
}

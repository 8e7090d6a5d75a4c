import type { Reading } from '../../src/files/finding.ts';
import type { Load } from '../../src/job/read-job.ts';

/** A part with something under every key. */
export const fullPart = {
  format: 'fettle-part/1',
  name: 'Block',
  units: 'mm',
  viewedFrom: 'face',
  material: 'grey-iron',
  castingNumber: 'K 114',
  traceError: 0.4,
  depthError: 0.8,
  holes: [
    { id: 'CRANK', kind: 'bore', at: [10, 20], diameter: 100 },
    { id: 'D1', kind: 'dowel', at: [-140, 20], diameter: 14, proud: 9 },
    { id: 'D2', kind: 'dowel', at: [160, 20], diameter: 14, proud: 9 },
    { id: 'B1', kind: 'tapped', at: [60, 150], thread: 'M12x1.75' },
    { id: 'B2', kind: 'tapped', at: [-60, 150], thread: 'M12x1.75' },
  ],
  sections: [
    { id: 'flange', depth: [0, 12], loops: [{ circle: [10, 20], radius: 170 }] },
    {
      id: 'rib',
      depth: [12, 60],
      mayCut: true,
      gotBy: 'rubbing',
      traceError: 0.3,
      depthError: 0.5,
      note: 'fattest end',
      loops: [
        [
          [150, 0],
          [170, 0, 1],
          [170, 8],
          [150, 8],
        ],
      ],
    },
  ],
  hollows: [{ id: 'gallery', depth: [12, 60], loops: [{ circle: [155, 4], radius: 2 }], keepWall: 5, traceError: 0.6 }],
  doNotCut: [{ id: 'ear', depth: [0, 12], loops: [{ circle: [160, 20], radius: 20 }] }],
  wallReadings: [{ at: [150, 4], depth: 30, wall: 7.5, error: 0.2 }],
  traced: { depth: [0, 60], loops: [{ circle: [10, 20], radius: 260 }] },
};

export const plainPart = {
  format: 'fettle-part/1',
  name: 'Housing',
  units: 'mm',
  viewedFrom: 'back',
  holes: [
    { id: 'P1', kind: 'dowel', at: [-150, 0], diameter: 14.1 },
    { id: 'P2', kind: 'dowel', at: [150, 0], diameter: 14.1 },
    { id: 'H1', kind: 'bolt', at: [50, 130], diameter: 13.5 },
    { id: 'H2', kind: 'bolt', at: [-70, 130], diameter: 13.5 },
  ],
  sections: [
    {
      id: 'skirt',
      depth: [-44, 0],
      loops: [
        { circle: [0, 0], radius: 207 },
        { circle: [0, 0], radius: 200 },
      ],
    },
  ],
};

/** A fit with something under every key. */
export const fullFit = {
  format: 'fettle-fit/1',
  title: 'Housing to block',
  units: 'mm',
  fixed: 'block.part.json',
  moving: 'housing.part.json',
  rotating: ['clutch.part.json'],
  axis: 'CRANK',
  dowels: [
    ['D1', 'P1'],
    ['D2', 'P2'],
  ],
  bolts: [
    ['B1', 'H1'],
    ['B2', 'H2'],
  ],
  offerUp: [{ standOff: 100, turn: 22, shift: [1, 2] }, { standOff: 14, turn: 22 }, { standOff: 14 }, {}],
  inputShaft: { engagesAt: 62 },
  clearance: { home: 2, wayIn: 1, rotating: 5 },
  depthMargin: 3,
  cut: 'both',
  share: 0.25,
  cutter: { radius: 6, nose: 'flat', handError: 0.8, runOut: 'leave', stepover: 2 },
  cutters: [4, 6, 8],
  straight: true,
  minWall: 4,
};

export const clutchPart = {
  format: 'fettle-part/1',
  name: 'Clutch',
  units: 'mm',
  viewedFrom: 'face',
  sections: [{ id: 'cover', depth: [-92, -46], loops: [{ circle: [0, 0], radius: 129 }] }],
};

export const fullJob: Readonly<Record<string, unknown>> = {
  'job.fit.json': fullFit,
  'block.part.json': fullPart,
  'housing.part.json': plainPart,
  'clutch.part.json': clutchPart,
};

/** Loads files out of an object, texts as they are and other values as JSON; what it lacks is no such file. */
export const loadFrom =
  (files: Readonly<Record<string, unknown>>): Load =>
  (path): Reading<string> => {
    if (!Object.hasOwn(files, path)) {
      return { ok: false, findings: [{ file: path, at: '', found: 'no such file', expected: 'a file to read' }] };
    }
    const content = files[path];
    return { ok: true, value: typeof content === 'string' ? content : JSON.stringify(content) };
  };

type Step = string | number;

/** A copy of a JSON value with what stands at a path replaced, or taken away where the new value is undefined. */
export function withChange<T>(value: T, path: readonly Step[], replaced: unknown): T {
  const copy = structuredClone(value);
  const holder = path.slice(0, -1).reduce<unknown>((at, step) => (at as Record<Step, unknown>)[step], copy);
  const last = path.at(-1) as Step;
  if (replaced === undefined) delete (holder as Record<Step, unknown>)[last];
  else (holder as Record<Step, unknown>)[last] = replaced;
  return copy;
}

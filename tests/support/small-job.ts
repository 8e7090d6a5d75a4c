import type { JobFile } from '../../src/files/job-file.ts';

/** A small honest job as files: a block with one rib, a housing with one lip that swings past it. */
export const blockFile = {
  format: 'fettle-part/1',
  name: 'Block',
  units: 'mm',
  viewedFrom: 'face',
  material: 'grey-iron',
  traceError: 0.5,
  holes: [
    { id: 'D1', kind: 'dowel', at: [-100, 0], diameter: 14, proud: 9 },
    { id: 'D2', kind: 'dowel', at: [100, 0], diameter: 14, proud: 9 },
    { id: 'CRANK', kind: 'bore', at: [0, 0], diameter: 60 },
  ],
  sections: [
    {
      id: 'rib',
      depth: [12, 60],
      mayCut: true,
      loops: [
        [
          [140, -4],
          [160, -4],
          [160, 4],
          [140, 4],
        ],
      ],
    },
  ],
};

export const housingFile = {
  format: 'fettle-part/1',
  name: 'Housing',
  units: 'mm',
  viewedFrom: 'back',
  material: 'aluminium',
  traceError: 0.5,
  holes: [
    { id: 'P1', kind: 'dowel', at: [-100, 0], diameter: 14 },
    { id: 'P2', kind: 'dowel', at: [100, 0], diameter: 14 },
  ],
  sections: [
    {
      id: 'lip',
      depth: [-40, -20],
      loops: [
        [
          [165, 20],
          [180, 20],
          [180, 40],
          [165, 40],
        ],
      ],
    },
  ],
};

export const fitFile = {
  format: 'fettle-fit/1',
  title: 'Housing to block',
  units: 'mm',
  fixed: 'block.part.json',
  moving: 'housing.part.json',
  axis: 'CRANK',
  dowels: [
    ['D1', 'P1'],
    ['D2', 'P2'],
  ],
  offerUp: [{ standOff: 100, turn: -20 }, { standOff: 14, turn: -20 }, { standOff: 14, turn: 0 }, { standOff: 0 }],
  clearance: 2,
};

/** The job in one file. */
export const smallJob = {
  format: 'fettle-job/1',
  fit: fitFile,
  parts: { 'block.part.json': blockFile, 'housing.part.json': housingFile },
} as unknown as JobFile;

/** The job's three files, any of them replaced or amended. */
export const jobFiles = (
  changed: { readonly fit?: object; readonly block?: object; readonly housing?: object } = {},
): Record<string, unknown> => ({
  'job.fit.json': { ...fitFile, ...changed.fit },
  'block.part.json': { ...blockFile, ...changed.block },
  'housing.part.json': { ...housingFile, ...changed.housing },
});

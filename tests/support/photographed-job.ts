import type { PartFile } from '../../src/files/part-file.ts';
import type { Pinhole } from './camera.ts';
import { insideOf, type Sheet, sheetsOfPart } from './face-photograph.ts';
import { blockFile, housingFile } from './small-job.ts';

/** The small job's block as it is before anything is traced: its holes are measured, six of them round the rim. */
export const untracedBlock = {
  ...blockFile,
  traceError: undefined,
  holes: [
    ...blockFile.holes,
    { id: 'B1', kind: 'tapped', at: [-72, 78], thread: 'M12x1.75' },
    { id: 'B2', kind: 'tapped', at: [68, 84], thread: 'M12x1.75' },
    { id: 'B3', kind: 'tapped', at: [-66, -80], thread: 'M12x1.75' },
    { id: 'B4', kind: 'tapped', at: [74, -76], thread: 'M12x1.75' },
    { id: 'B5', kind: 'tapped', at: [0, 104], thread: 'M12x1.75' },
  ],
  sections: [],
};

/** The small job's housing with a lip that reaches further in, and so catches the rib as it swings home. */
export const catchingHousing = {
  ...housingFile,
  sections: [
    {
      id: 'lip',
      depth: [-40, -20],
      loops: [
        [
          [157, 20],
          [180, 20],
          [180, 40],
          [157, 40],
        ],
      ],
    },
  ],
};

/** What of it a photograph shows: a round flange with the holes, and the rib 12 mm behind the face, beside it. */
export const sheetsOfBlock = (): Sheet[] => {
  const holes = sheetsOfPart({ ...untracedBlock, sections: [] } as unknown as PartFile);
  const flange = insideOf([{ circle: [0, 0], radius: 125 }]);
  const rib = insideOf(blockFile.sections[0]?.loops as [number, number][][]);
  return [...holes, { zMm: 0, grey: 175, covers: flange }, { zMm: -12, grey: 140, covers: rib }];
};

/** From well off to one side, held a little askew. */
export const camera: Pinhole = {
  at: { x: 330, y: -260, z: 1100 },
  aim: { x: 15, y: 0 },
  rollRad: 0.05,
  focalPx: 4800,
  width: 1500,
  height: 1300,
};

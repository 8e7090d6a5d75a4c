import type { LengthName, RowName } from './stack.ts';

/** Lengths added up, each once, those of `minus` taken off. */
export interface Form {
  readonly plus: readonly LengthName[];
  readonly minus: readonly LengthName[];
}

/** A row of the table: the least of its forms. */
export interface RowForms {
  readonly name: RowName;
  readonly forms: readonly Form[];
}

// the gearbox's face from the crank's flange is bell + adapter − flangeProud, and all else is counted from one of the two

/** From the crank's flange to something of the gearbox, and the other way. */
const toGearbox = ['bell', 'adapter'] as const;

/**
 * What the lengths leave: how far the tip reaches into the pilot bearing, no more than that is long; what is then left to
 * the bottom; how much of shaft spline and hub lie over one another, the nearer of the rear ends less the farther of the
 * front ones; and what the release bearing has to the fingers, and of its stroke when they are pushed through.
 */
export const rowForms: readonly RowForms[] = [
  {
    name: 'pilot',
    forms: [
      { plus: ['tip', 'flangeProud'], minus: [...toGearbox, 'pilotMouth'] },
      { plus: ['pilotLength'], minus: [] },
    ],
  },
  { name: 'tipGap', forms: [{ plus: [...toGearbox, 'crankBottom'], minus: ['tip', 'flangeProud'] }] },
  {
    name: 'spline',
    forms: [
      { plus: ['splineTo'], minus: ['splineFrom'] },
      { plus: ['hubTo'], minus: ['hubFrom'] },
      { plus: toGearbox, minus: ['flangeProud', 'splineFrom', 'flywheel', 'hubFrom'] },
      { plus: ['flywheel', 'hubTo', 'splineTo', 'flangeProud'], minus: toGearbox },
    ],
  },
  { name: 'releaseGap', forms: [{ plus: toGearbox, minus: ['flangeProud', 'release', 'flywheel', 'fingers'] }] },
  {
    name: 'strokeLeft',
    forms: [
      {
        plus: ['releaseStroke', 'flangeProud', 'release', 'flywheel', 'fingers'],
        minus: [...toGearbox, 'fingerTravel'],
      },
    ],
  },
];

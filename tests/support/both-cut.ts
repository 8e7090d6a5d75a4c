import { castingOf, disc, dowel, type JobSpec } from './jobs.ts';
import { plannedJob } from './markout-jobs.ts';
import type { PlannedJoint } from './plan-answer.ts';

const spec: JobSpec = {
  title: 'Both give way',
  clearance: 1.5,
  cut: 'both',
  fixed: castingOf({
    name: 'Housing',
    sections: [{ id: 'boss', depth: [0, 28], mayCut: true, loops: [disc(62.5, 0, 17)] }],
    holes: [dowel('D1', [-40, 60], 8, 10), dowel('D2', [70, 60], 8, 10)],
    doNotCut: [{ id: 'ear', depth: [0, 28], loops: [disc(90, 30, 3)] }],
  }),
  moving: castingOf({
    name: 'Starter',
    sections: [{ id: 'body', depth: [-28, 0], mayCut: true, loops: [disc(0, 0, 48)] }],
    holes: [dowel('P1', [-40, 60], 0, 8), dowel('P2', [70, 60], 0, 8)],
  }),
  dowels: [
    ['D1', 'P1'],
    ['D2', 'P2'],
  ],
};

/** A round body Ø96 beside a round boss Ø34, 62.5 apart: each gives way by about half. */
export const bothCut = (): PlannedJoint => plannedJob(spec);

import { type demos, demoToDraw } from './demos.ts';
import { box, castingOf, disc, dowel, type JobSpec, outline, tapped } from './jobs.ts';
import { jointOf } from './joints.ts';
import { type PlannedJoint, planned } from './plan-answer.ts';
import { remembered } from './remembered.ts';

export const plannedJob = remembered((spec: JobSpec): PlannedJoint => planned(jointOf(spec)));

/** A demo with its plan. */
export function plannedDemo(name: keyof typeof demos): PlannedJoint {
  const { joint, plan } = demoToDraw(name);
  if (plan === null) throw new Error(`${name} has no plan`);
  return { joint, plan };
}

/** A demo planned as if any corner could be cut sharp. */
export const plannedWithoutCutter = remembered((name: keyof typeof demos): PlannedJoint => {
  const { joint } = demoToDraw(name);
  return planned({ ...joint, fit: { ...joint.fit, cutter: null } });
});

/** The marsh carrier with the case cut instead of the block: seen from the other side, and proud of its own face. */
export function caseCutInstead(): PlannedJoint {
  const { joint } = demoToDraw('transfer-case');
  const sections = joint.moving.sections.map((section) => ({ ...section, mayCut: section.id === 'lips' }));
  return planned({ ...joint, fit: { ...joint.fit, cut: 'moving' }, moving: { ...joint.moving, sections } });
}

/** A flange that a lug of the other part runs into, right at the face: a cut that begins there. */
export const lugJob: JobSpec = {
  title: 'A lug against the flange',
  fixed: castingOf({
    name: 'Pump housing',
    castingNumber: '4711-A',
    sections: [
      {
        id: 'flange',
        depth: [0, 20],
        mayCut: true,
        loops: [outline([-100, -60], [100, -60], [100, 60], [60, 60, 0.3], [-60, 60], [-100, 60]), disc(0, 0, 35)],
      },
    ],
    holes: [dowel('D1', [-80, 0], 8, 10), dowel('D2', [80, -45], 8, 10), tapped('B1', [0, 48])],
    hollows: [{ id: 'drilling', depth: [0, 20], loops: [disc(84, 5, 4)], keepWallMm: 3 }],
    doNotCut: [{ id: 'ear', depth: [0, 20], loops: [box(-99, 20, -80, 50)] }],
  }),
  moving: castingOf({
    name: 'Bracket',
    sections: [
      { id: 'plate', depth: [0, 8], loops: [disc(0, 0, 60)] },
      { id: 'lug', depth: [-14, 0], loops: [box(96, -18, 112, 14)] },
    ],
    holes: [dowel('P1', [-80, 0], 0, 10), dowel('P2', [80, -45], 0, 10)],
  }),
  dowels: [
    ['D1', 'P1'],
    ['D2', 'P2'],
  ],
  clearance: 2,
};

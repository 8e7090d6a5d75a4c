import type { Joint } from '../joint/joint.ts';

const geometryOnly =
  'This is geometry only: it says nothing of strength. Nothing here approves a part, a load or a vehicle.';

const lifting =
  'Never let a gearbox hang on its input shaft, and never work under a hoist alone. Draw the faces together by hand, not with the bolts.';

const weakened =
  'A ground casting is weaker than it was and a cracked one can fail without warning. Crack-test before and after (iron by magnetic particle, aluminium by dye penetrant) and pressure-test any jacket near the cut. No sharp nicks: they start cracks.';

const bodyAndEngine =
  'Guard eyes and lungs. Seal every opening before you grind and wash out the galleries afterwards: one grain ruins a bearing.';

const twoMetals =
  'Fine aluminium dust can burn and explode. Never grind aluminium and steel or iron on one machine, or into one extractor: their dusts together are worse.';

const burst = 'A clutch or flywheel housing that has been cut is no longer the burst shield it was rated as.';

const road =
  'Before it goes on a road: the local authority or a licensed engineer approves it, not this plan. Local rules and licensed practice come first.';

const likeThisOne =
  'Castings of one number differ by millimetres: what was traced from one is not to be trusted for another.';

/** What can hurt someone while offering up; read under the answer of a check. */
export const checkCautions = ({ rotating }: Pick<Joint, 'rotating'>): readonly string[] => [
  geometryOnly,
  lifting,
  ...(rotating.length > 0
    ? ['Turn the engine over by hand, a full turn with everything bolted up, before it runs.']
    : []),
];

/** What can hurt someone, or the engine, while a casting is being cut; read under a plan. */
export const grindCautions = ({ rotating }: Pick<Joint, 'rotating'>): readonly string[] => [
  geometryOnly,
  weakened,
  bodyAndEngine,
  twoMetals,
  ...(rotating.length > 0 ? [burst] : []),
  likeThisOne,
  lifting,
  road,
];

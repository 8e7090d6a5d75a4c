import type { LengthName } from '../stack/stack.ts';

/** How each length is measured at the bench: common practice. */
export const howMeasured: Readonly<Record<LengthName, string>> = {
  flangeProud: "straightedge across the block's face, depth gauge to the crank's flange; minus where it lies behind",
  bell: "depth gauge through the bell from its block face to a straightedge on the gearbox's face",
  adapter: 'caliper over plate and spacers, gaskets as they are pinched; 0 for none',
  tip: "straightedge on the gearbox's face, rule to the tip of the shaft pulled out to the end of its float",
  splineFrom: "caliper from the gearbox's face to the first full spline",
  splineTo: "caliper from the gearbox's face to the last full spline",
  pilotMouth: "depth gauge from the crank's flange to the bearing; minus where it stands out",
  pilotLength: 'caliper over the bearing or bush, chamfer not counted',
  crankBottom: "depth gauge from the crank's flange to the bottom of its hole",
  flywheel: 'micrometer or caliper from the face that bolts up to the friction face',
  hubFrom: 'disc laid on the flywheel: depth gauge from the friction face to the hub; minus where it reaches in',
  hubTo: 'disc laid on the flywheel: from the friction face to the end of the hub',
  fingers: 'cover bolted down on disc and flywheel: depth gauge from the finger tips to the friction face',
  release: "bearing pushed right back: straightedge on the gearbox's face, depth gauge to the bearing",
  releaseStroke: 'bearing from right back to right forward, gearbox off the engine',
  fingerTravel: "the clutch maker's figure, or the bolted clutch pressed until the disc is free",
};

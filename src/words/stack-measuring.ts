import type { LengthName } from '../stack/stack.ts';

/** What each length is called where its name in the file is not shown. */
export const lengthNames: Readonly<Record<LengthName, string>> = {
  flangeProud: "crank's flange out of the block's face",
  bell: 'depth of the bell housing',
  adapter: 'adapter plates and spacers',
  tip: "shaft's tip from the gearbox's face",
  splineFrom: "splines begin, from the gearbox's face",
  splineTo: "splines end, from the gearbox's face",
  pilotMouth: "pilot bearing's mouth into the crank",
  pilotLength: 'pilot bearing bears over',
  crankBottom: "bottom of the crank's hole",
  flywheel: "crank's flange to friction face",
  hubFrom: "disc's hub begins, from the friction face",
  hubTo: "disc's hub ends, from the friction face",
  fingers: 'friction face to finger tips',
  release: "release bearing from the gearbox's face",
  releaseStroke: 'stroke of the release gear',
  fingerTravel: 'finger travel to release',
};

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

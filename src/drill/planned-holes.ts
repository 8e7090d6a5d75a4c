import { heldToMm } from '../clearance/tolerances.ts';
import type { Hole } from '../job/casting.ts';
import { otherPart, type Part } from '../job/part.ts';
import type { Joint } from '../joint/joint.ts';
import { holeDiameterMm } from '../plan/walls/guards.ts';
import { washerMm } from '../trade/heads.ts';
import { type HeadRoom, headRoom, type Seat } from './head-room.ts';
import { type DrillRules, type HoleMetal, type HoleToDrill, type HoleWall, metalAbout } from './hole-metal.ts';
import { reachesInto, type Slab, slabsOf, treeOfSlab, within } from './metal-about.ts';
import { type SetOut, setOut } from './place.ts';

export type DrillVerdict = 'does' | 'as-traced' | 'does-not' | 'undecided';

/** The metal under a spot face, at the end where a head or a nut sits; mm. */
export interface SpotFace {
  /** The part it is on. */
  readonly part: Part;
  readonly acrossMm: number;
  readonly depthMm: number;
  /** From its edge to that of the metal; less than 0 where it hangs over. */
  readonly spareMm: number;
  readonly errorMm: number;
}

/** A hole that a part is to have, and whether there is metal for it. */
export interface JudgedHole extends SetOut {
  readonly part: Part;
  readonly hole: Hole;
  /** Null where neither diameter nor thread tells its size. */
  readonly diameterMm: number | null;
  readonly verdict: DrillVerdict;
  readonly metal: HoleMetal | null;
  readonly spotFace: SpotFace | null;
  readonly headRoom: HeadRoom | null;
}

/** The joint holes are judged in: as it is, or with the planned cut made. */
export interface DrillJoint {
  readonly joint: Joint;
  /** Of each part the sections that the cut changes. */
  readonly cut: Readonly<Record<Part, readonly string[]>>;
}

/** Every planned hole of both parts. */
export const plannedHoles = (told: DrillJoint, rules: DrillRules): JudgedHole[] =>
  (['fixed', 'moving'] as const).flatMap((part) =>
    told.joint[part].holes
      .filter(({ kind }) => kind === 'planned')
      .map((hole) =>
        judgedHole(told, part, hole, partnerOf(told.joint, part, hole), holeDiameterMm(hole), 0, rules, false),
      ),
  );

/** The hole of the other part that is paired with one. */
function partnerOf({ fit }: Joint, part: Part, { id }: Hole): Hole | null {
  const pair = fit.bolts.find((bolt) => bolt[part].id === id);
  return pair?.[otherPart(part)] ?? null;
}

/** One hole judged, with the one it meets in the other part; `placeErrorMm` of where it comes to stand, `onlyRun` as for `metalAbout`. */
export function judgedHole(
  told: DrillJoint,
  part: Part,
  hole: Hole,
  partner: Hole | null,
  diameterMm: number | null,
  placeErrorMm: number,
  rules: DrillRules,
  onlyRun: boolean,
): JudgedHole {
  const { joint, cut } = told;
  const place = setOut(joint, part, hole.at);
  const nothing = { ...place, part, hole, diameterMm, metal: null, spotFace: null, headRoom: null };
  if (diameterMm === null) return { ...nothing, verdict: 'undecided' };
  const { id, at, depth, keepWallMm } = hole;
  const toDrill: HoleToDrill = { id, at, diameterMm, depth, keepWallMm, placeErrorMm };
  const metal = metalAbout(joint[part], cut[part], toDrill, joint.fit, rules, onlyRun);
  // a bolt goes in through the clearance hole
  const seat =
    partner?.kind === 'bolt'
      ? seatOf(joint, otherPart(part), partner, diameterMm)
      : opensAt(joint, part, hole, diameterMm);
  const spotFace = seat && spotFaceOn(joint, seat, partner?.thread ?? hole.thread, rules);
  const acrossMm = rules.socketMm ?? spotFace?.acrossMm ?? null;
  const room = seat && acrossMm !== null ? headRoom(joint, seat, acrossMm) : null;
  return { ...nothing, verdict: verdictOf(metal, spotFace, room), metal, spotFace, headRoom: room };
}

/** A clearance hole is open as deep as it is stated to go, whatever stands behind it. */
const seatOf = (joint: Joint, part: Part, hole: Hole, diameterMm: number): Seat | null =>
  hole.depth === null ? opensAt(joint, part, hole, diameterMm) : { part, at: hole.at, atMm: hole.depth.toMm };

/** Where a hole comes out of the back of a part; null where it is blind, or stands in no metal. */
function opensAt(joint: Joint, part: Part, { at, depth }: Hole, diameterMm: number): Seat | null {
  const standsIn = (slab: Slab): boolean => reachesInto(slab, at, diameterMm / 2);
  const slabs = slabsOf(joint[part], null);
  const begins = slabs.findIndex(standsIn);
  const ends = slabs.findIndex((slab, i) => i > begins && !standsIn(slab));
  const last = begins < 0 ? undefined : slabs[(ends < 0 ? slabs.length : ends) - 1];
  if (last?.depth == null || (depth !== null && depth.toMm < last.depth.toMm)) return null;
  return { part, at, atMm: last.depth.toMm };
}

function spotFaceOn(
  joint: Joint,
  { part, at, atMm }: Seat,
  thread: string | null,
  { spotFaceMm }: DrillRules,
): SpotFace | null {
  const acrossMm = spotFaceMm ?? washerMm(thread);
  const slab = slabsOf(joint[part], null).find(({ depth }) => depth?.toMm === atMm);
  if (acrossMm === null || slab === undefined) return null;
  const errorMm = Math.max(0, ...slab.sections.map((section) => section.traceErrorMm));
  return { part, acrossMm, depthMm: atMm, spareMm: within(treeOfSlab(slab), at).insideMm - acrossMm / 2, errorMm };
}

/** Whether a wall keeps what is wanted as traced. */
export const keepsWall = ({ wallMm, wantedMm }: HoleWall): boolean => wallMm >= wantedMm - heldToMm;

/** And with every error of tracing and drilling against it. */
export const keepsAtWorst = ({ wallMm, wantedMm, errorMm }: HoleWall): boolean =>
  wallMm - errorMm >= wantedMm - heldToMm;

function verdictOf(
  { stands, walls, without, unsized }: HoleMetal,
  spotFace: SpotFace | null,
  room: HeadRoom | null,
): DrillVerdict {
  if (stands === 'over-the-edge' || stands === 'in-the-air' || !walls.every(keepsWall)) return 'does-not';
  // a head that does not sit, or that no socket gets at
  if ((spotFace?.spareMm ?? 0) < 0 || (room?.gapMm ?? 0) < 0) return 'does-not';
  if (stands !== 'in-metal' || without.length > 0 || unsized.length > 0) return 'undecided';
  const headAtWorst =
    (spotFace === null || spotFace.spareMm >= spotFace.errorMm) && (room === null || room.gapMm >= room.errorMm);
  return walls.every(keepsAtWorst) && headAtWorst ? 'does' : 'as-traced';
}

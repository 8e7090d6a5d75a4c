import { treeOf } from '../clearance/trees.ts';
import { buildOutlineTree } from '../geometry/motion/outline-tree.ts';
import { distance } from '../geometry/plane/vec.ts';
import { metalOnLeft } from '../geometry/polygons/metal-on-left.ts';
import { offset } from '../geometry/polygons/offset.ts';
import { difference, union } from '../geometry/polygons/polygon-engine.ts';
import { loopsOf, outlinesOf } from '../geometry/polygons/polygons.ts';
import type { Hole } from '../job/casting.ts';
import { otherPart, type Part } from '../job/part.ts';
import type { Joint } from '../joint/joint.ts';
import { toleranceMm } from '../plan/bands/tolerance.ts';
import { holeDiameterMm } from '../plan/walls/guards.ts';
import { boltAllowance } from '../trade/bolt-allowance.ts';
import { clearanceHoleFor } from '../trade/clearance-holes.ts';
import { parseThread } from '../trade/threads.ts';
import { type BesideHole, besideHole, type DrillRules, edgeWallMm, type HoleToDrill } from './hole-metal.ts';
import { metalOfSlab, type Slab, slabsOf, treeOfSlab, within } from './metal-about.ts';
import { type DrillJoint, type JudgedHole, judgedHole } from './planned-holes.ts';

/** A hole of one part marked on the other through the dowels. */
export interface TransferredHole extends JudgedHole {
  /** The largest hole that would stand right there, mm; null where it stands right, or none would. */
  readonly largestMm: number | null;
  /** How far its middle would have to go to stand right, mm; null where it does, or no such place is near. */
  readonly moveMm: number | null;
}

/** A hole that is there already where another would be marked; two of them are told once, from the fixed part. */
export interface MetHole {
  /** The part whose hole would be marked, and that hole. */
  readonly of: Part;
  readonly hole: string;
  readonly met: string;
  readonly offMm: number;
}

export interface Transfer {
  readonly marked: readonly TransferredHole[];
  readonly met: readonly MetHole[];
}

const isBolted = ({ kind }: Hole): boolean => kind === 'bolt' || kind === 'tapped' || kind === 'stud';

/** Two holes of which nothing tells how far they may be apart are one below this, mm; common practice, no source. */
const sameHoleMm = 1;

/** The bolt holes of either part that have no partner, marked on the other. */
export function transferred(told: DrillJoint, rules: DrillRules): Transfer {
  const marked: TransferredHole[] = [];
  const met: MetHole[] = [];
  for (const part of ['fixed', 'moving'] as const) {
    const { joint } = told;
    const paired = [...joint.fit.bolts, ...joint.fit.dowels].map((pair) => pair[part].id);
    const alone = joint[part].holes.filter((hole) => isBolted(hole) && !paired.includes(hole.id));
    for (const hole of alone) {
      const there = holeAt(joint, otherPart(part), hole);
      if (there === null) marked.push(markedOn(told, otherPart(part), hole, rules));
      // two that nobody paired are met from either side
      else if (!met.some((one) => one.of !== part && one.hole === there.id && one.met === hole.id))
        met.push({ of: part, hole: hole.id, met: there.id, offMm: distance(hole.at, there.at) });
    }
  }
  return { marked, met };
}

/** The hole that stands already where another comes; a planned one is no less there. */
function holeAt(joint: Joint, part: Part, hole: Hole): Hole | null {
  const near = joint[part].holes.filter(
    (there) => distance(there.at, hole.at) <= (boltAllowance(hole, there)?.mm ?? sameHoleMm),
  );
  return near.toSorted((a, b) => distance(a.at, hole.at) - distance(b.at, hole.at))[0] ?? null;
}

/** What is drilled for a bolt: a clearance hole for one that the other part holds, else as large as there. */
function drilledMm(hole: Hole): number | null {
  const size = hole.thread === null ? null : parseThread(hole.thread);
  const clearance = size === null ? null : clearanceHoleFor(size.majorMm);
  return hole.kind === 'bolt' ? holeDiameterMm(hole) : (clearance?.mediumMm ?? holeDiameterMm(hole));
}

function markedOn(told: DrillJoint, part: Part, hole: Hole, rules: DrillRules): TransferredHole {
  const { joint } = told;
  const placeErrorMm = joint.dowelPlayMm + joint.fitRmsMm;
  // its depth, and the wall it keeps there, are of the part it comes from
  const here: Hole = { ...hole, depth: null, keepWallMm: null };
  const judged = judgedHole(told, part, here, hole, drilledMm(hole), placeErrorMm, rules, true);
  const face = faceOf(slabsOf(joint[part], null));
  if (judged.verdict !== 'does-not' || judged.diameterMm === null || face === null)
    return { ...judged, largestMm: null, moveMm: null };
  const toDrill: HoleToDrill = { ...here, diameterMm: judged.diameterMm, placeErrorMm };
  return {
    ...judged,
    largestMm: largestAt(joint, part, face, toDrill, rules),
    moveMm: moveFrom(joint, part, face, toDrill, rules),
  };
}

/** The slab at the face, whatever stands proud of it; of a part with nothing there the first that has metal. */
function faceOf(slabs: readonly Slab[]): Slab | null {
  const metal = slabs.filter(({ sections }) => sections.length > 0);
  return metal.find(({ depth }) => depth === null || depth.toMm > 0) ?? metal[0] ?? null;
}

/** A diameter is found to this, mm. */
const foundToMm = 1e-7;

/** The largest hole that would stand right there, as traced; null where none does. */
function largestAt(joint: Joint, part: Part, face: Slab, hole: HoleToDrill, rules: DrillRules): number | null {
  const { insideMm } = within(treeOfSlab(face), hole.at);
  const standsRight = (diameterMm: number): boolean => {
    const smaller = { ...hole, diameterMm };
    return (
      insideMm >= diameterMm / 2 + edgeWallMm(smaller, rules) &&
      besideAt(joint, part, face, smaller, rules).every(
        ({ loops, wantedMm }) => -within(treeOf(loops), hole.at).insideMm >= diameterMm / 2 + wantedMm,
      )
    );
  };
  let [does, fails] = [0, hole.diameterMm];
  while (fails - does > foundToMm) {
    const middle = (does + fails) / 2;
    if (standsRight(middle)) does = middle;
    else fails = middle;
  }
  return does === 0 ? null : does;
}

/** What stands beside a hole at the depth of the face. */
const besideAt = (joint: Joint, part: Part, face: Slab, hole: HoleToDrill, rules: DrillRules): BesideHole[] =>
  besideHole(joint[part], hole, joint.fit, rules).filter(({ depth }) => sharesDepth(depth, face));

const sharesDepth = (depth: Hole['depth'], { depth: of }: Slab): boolean =>
  depth === null || of === null || (depth.fromMm < of.toMm && of.fromMm < depth.toMm);

/** A slot longer than so many diameters is none. */
const longestMove = 2;

/** How far the nearest place is at which a hole would stand right, as traced; null where there is none near. */
function moveFrom(joint: Joint, part: Part, face: Slab, hole: HoleToDrill, rules: DrillRules): number | null {
  const radiusMm = hole.diameterMm / 2;
  const keptMm = edgeWallMm(hole, rules) + radiusMm;
  const inner = offset(outlinesOf(metalOfSlab(face.sections)), -keptMm, toleranceMm, 'inside').polygons;
  const taken = besideAt(joint, part, face, hole, rules).flatMap(
    ({ loops, wantedMm }) => offset(metalOnLeft(loops), wantedMm + radiusMm, toleranceMm, 'outside').polygons,
  );
  const free = difference(inner, union(taken));
  if (free.length === 0) return null;
  const { insideMm } = within(buildOutlineTree(loopsOf(free)), hole.at);
  const moveMm = Math.max(0, -insideMm);
  return moveMm <= longestMove * hole.diameterMm ? moveMm : null;
}

import { firstTouch } from '../clearance/first-touch.ts';
import { type Forgiven, forgivenBy } from '../clearance/wander/forgiven.ts';
import { sweptRegion } from '../geometry/motion/swept-region.ts';
import { circleLoop, type Region } from '../geometry/plane/loop.ts';
import { apply, rigid, rotationAbout } from '../geometry/plane/rigid.ts';
import { distance, length, type Vec, vec } from '../geometry/plane/vec.ts';
import { metalOnLeft } from '../geometry/polygons/metal-on-left.ts';
import { offset } from '../geometry/polygons/offset.ts';
import { difference, intersection, pieces, union } from '../geometry/polygons/polygon-engine.ts';
import { polygonise } from '../geometry/polygons/polygonise.ts';
import { loopsOf, outlinesOf, type Polygons } from '../geometry/polygons/polygons.ts';
import type { DepthRange, Hole, Section } from '../job/casting.ts';
import { otherPart } from '../job/part.ts';
import type { Leg } from '../job/path.ts';
import { bandsOf, heldToMm } from '../plan/bands/bands.ts';
import { toleranceMm } from '../plan/bands/tolerance.ts';
import type { Bench } from './marking-out-bench.ts';
import type { Run } from './marking-out-edges.ts';
import { plateRound } from './marking-out-hull.ts';
import { touchedOn } from './marking-out-touch.ts';

/**
 * The passing sections of the other part on a plate that turns about a plug in the crank bore, as they lie at home;
 * positive turns are anticlockwise as the bench is seen, unless it is mirrored.
 */
export interface SwingGauge {
  readonly pieces: readonly SwingPiece[];
  readonly plate: Polygons;
  /** The bore the plug is turned to; null where no hole of known size stands on the axis. */
  readonly bore: Hole | null;
  readonly spigotMm: number;
  readonly legs: readonly Leg[];
  /** Where the plate is cut away for dowels that come up through it. */
  readonly slots: Polygons;
  readonly scale: TurnScale | null;
  /** Where it first touches the casting as it is; null where it swings through. */
  readonly touch: GaugeTouch | null;
  /** Sections of which a piece was left out, too thin to cut from ply. */
  readonly tooThin: readonly string[];
  /** How far one may stray once it is cut as planned; null where the way in touches still. */
  readonly forgives: Forgiven | null;
}

/** The first touch of a swing gauge, which comes before that of the bare part by the clearance round its pieces. */
export interface GaugeTouch {
  readonly piece: string;
  /** Of the casting that is cut. */
  readonly section: string;
  readonly turnRad: number;
  readonly standOffMm: number;
  /** On the plate. */
  readonly at: Vec;
}

export interface SwingPiece {
  readonly name: string;
  readonly section: string;
  readonly depth: DepthRange | null;
  /** The outline as traced, inside the piece. */
  readonly traced: readonly Run[];
  /** The section with the asked clearance round it: what is cut from ply. */
  readonly outline: Polygons;
  readonly clearanceMm: number;
}

/** Where on the plate a hole of the casting shows at each turn. */
export interface TurnScale {
  readonly hole: Hole;
  readonly radiusMm: number;
  readonly at: (turnRad: number) => Vec;
  readonly fromRad: number;
  readonly toRad: number;
}

/** A swing gauge, or in a sentence why there is none. */
export type SwingReading = { readonly gauge: SwingGauge } | { readonly why: string };

/** Diameter of the plug's spigot that the plate turns on, mm. */
const spigotMm = 20;
const roundSpigotMm = 15;
/** A hole nearer to the crank than this stands on it, and a pole nearer than this is it, mm. */
const onAxisMm = 0.05;
/** A slot leaves this round a dowel, and the plate this round a slot, mm. */
const slotRoomMm = 1;
const roundSlotMm = 9;
const roundPieceMm = 8;
const leastDowelRadiusMm = 4;
const roughMm = 0.02;
/** A piece nowhere wider than this cannot be cut from ply and held, mm. */
export const thinnestPieceMm = 3;
/** How far from the cut, as it passes, the swung part is still shown, mm. */
const reachMm = 25;

/** The gauge that proves a cut by hand: the sections that pass it, swung as they are on the way in. */
export function swingGauge(bench: Bench): SwingReading {
  const { legs } = bench.joint.fit;
  const turns = legs.filter(({ motion }) => motion.kind === 'turn');
  if (turns.length === 0) return { why: 'nothing turns on the way in' };
  const swings = turns.filter(({ motion }) => motion.kind === 'turn' && length(motion.pole) < onAxisMm);
  if (swings.length === 0) return { why: 'the way in turns about a point that is not the axis' };
  const passing = piecesFor(bench, swings);
  if (passing.length === 0) return { why: 'nothing passes the cut while it turns' };
  const pieces = passing.filter(isWideEnough).map((piece, i) => ({ ...piece, name: `SW${i + 1}` }));
  if (pieces.length === 0) return { why: 'what passes the cut while it turns is too thin to cut from ply' };
  const thin = passing.filter((piece) => !isWideEnough(piece)).map(({ section }) => section);
  const { judged } = bench.plan;
  const forgives = forgivenBy({ ...judged, fit: bench.joint.fit });
  return { gauge: { ...gaugeOf(bench, swings, pieces), tooThin: [...new Set(thin)], forgives } };
}

/** The other part's sections that pass a cut nearer than asked while they turn. */
function piecesFor(bench: Bench, swings: readonly Leg[]): SwingOutline[] {
  const { joint, cut, own, seen } = bench;
  const turning = new Set(swings.map((leg) => joint.fit.legs.indexOf(leg) + 1));
  const cutSections = joint[cut].sections.filter(({ id }) => own.sections.some((section) => section.id === id));
  const passing = cutSections
    .flatMap((section) => bandsOf(joint, cut, section))
    .flatMap(({ passes }) => passes)
    .filter(({ leg, shortMm }) => shortMm > heldToMm && leg !== null && turning.has(leg))
    .map(({ section }) => section.id);
  const others = joint[otherPart(cut)].sections.filter(({ id }) => passing.includes(id));
  const clearanceMm = joint.fit.clearance.wayInMm;
  const window = reachOfCut(bench, swings);
  return others.flatMap((section) => swingOutlines(section, seen.region(section.loops), clearanceMm, window));
}

type SwingOutline = Omit<SwingPiece, 'name'>;

const isWideEnough = ({ outline }: SwingOutline): boolean =>
  offset(outlinesOf(outline), -thinnestPieceMm / 2, roughMm, 'inside').polygons.length > 0;

/** Where on the swung part anything can come near the cut while it turns: farther off no gauge is needed. */
function reachOfCut({ bands, mirrored }: Bench, swings: readonly Leg[]): Polygons {
  const sign = mirrored ? 1 : -1;
  const swept = swings.flatMap(({ from, to }) => {
    const motion = { kind: 'turn', pole: vec(0, 0), angleRad: sign * (to.turnRad - from.turnRad) } as const;
    const start = rigid(sign * from.turnRad, vec(0, 0));
    return bands.flatMap(({ relief }) => sweptRegion(relief, start, motion, roughMm).polygons);
  });
  return offset(outlinesOf(union(swept)), reachMm, roughMm, 'outside').polygons;
}

/** The separate pieces of a section within reach of the cut, each with the clearance round it. */
function swingOutlines({ id, depth }: Section, loops: Region, clearanceMm: number, window: Polygons): SwingOutline[] {
  const grown = offset(metalOnLeft(loops), clearanceMm, toleranceMm, 'outside').polygons;
  const traced = polygonise(loops, toleranceMm, 'outside');
  return pieces(intersection(grown, window)).map((outline) => {
    const inside = intersection(traced, outline).map((polygon) => [...polygon, polygon[0] as Vec]);
    return { section: id, depth, traced: inside.map((points) => ({ points, closed: true })), outline, clearanceMm };
  });
}

function gaugeOf(
  bench: Bench,
  legs: readonly Leg[],
  pieces: readonly SwingPiece[],
): Omit<SwingGauge, 'tooThin' | 'forgives'> {
  const { present, mirrored } = bench;
  const turns = legs.flatMap(({ from, to }) => [from.turnRad, to.turnRad]);
  const [fromRad, toRad] = [Math.min(...turns), Math.max(...turns)];
  // on the plate, the casting turns the other way
  const onPlate = (p: Vec, turnRad: number): Vec => apply(rotationAbout(vec(0, 0), mirrored ? turnRad : -turnRad), p);
  const scaleOf = (hole: Hole): TurnScale => ({
    hole,
    radiusMm: radiusOf(hole) + slotRoomMm,
    at: (turnRad) => onPlate(hole.at, turnRad),
    fromRad,
    toRad,
  });
  const corners = pieces.flatMap(({ outline }) => outline.flat());
  const scale = nearestScale((bench.holes ?? []).map(scaleOf), corners);
  const plate = plateRound([
    { at: vec(0, 0), radiusMm: spigotMm / 2 + roundSpigotMm },
    ...corners.map((at) => ({ at, radiusMm: roundPieceMm })),
    ...(scale === null ? [] : slotDiscs(scale)),
  ]);
  const dowels = present.holes.filter(({ proudMm }) => proudMm > 0).map(scaleOf);
  const slots = [...(scale === null ? [] : [scale]), ...dowels]
    .filter((slot, i, all) => all.findIndex(({ hole }) => hole.id === slot.hole.id) === i)
    .flatMap((slot) => intersection(slotOf(slot, mirrored), [plate]));
  return {
    pieces,
    plate: difference([plate], slots),
    bore: present.holes.find(({ at, diameterMm }) => length(at) < onAxisMm && diameterMm !== null) ?? null,
    spigotMm,
    legs,
    slots,
    scale,
    touch: gaugeTouch(bench, legs, pieces),
  };
}

/** Where the pieces, in place of the part they are made from, first meet the casting that is cut. */
function gaugeTouch(
  { joint, cut, seen }: Bench,
  legs: readonly Leg[],
  pieces: readonly SwingPiece[],
): GaugeTouch | null {
  const other = otherPart(cut);
  const sections = pieces.flatMap(({ name, section, depth, outline }) =>
    joint[other].sections
      .filter(({ id }) => id === section)
      .slice(0, 1)
      .map((of) => ({ ...of, id: name, depth, loops: seen.region(loopsOf(outline)) })),
  );
  const swung = { ...joint, [other]: { ...joint[other], sections, traced: null } };
  // what the gauge meets, not what it would pass too close behind
  const touch = firstTouch({ ...swung, fit: { ...joint.fit, legs, depthMarginMm: 0 } });
  if (touch === null) return null;
  const [piece, section] =
    cut === 'fixed' ? [touch.movingSection, touch.fixedSection] : [touch.fixedSection, touch.movingSection];
  return {
    piece,
    section,
    turnRad: touch.turnRad,
    standOffMm: touch.standOffMm,
    at: seen.point(touchedOn(other, touch, legs)),
  };
}

const radiusOf = ({ diameterMm }: Hole): number => Math.max(leastDowelRadiusMm, (diameterMm ?? 0) / 2);

const middleOf = ({ at, fromRad, toRad }: TurnScale): Vec => at((fromRad + toRad) / 2);

function nearestScale(scales: readonly TurnScale[], corners: readonly Vec[]): TurnScale | null {
  const toWork = (scale: TurnScale): number => Math.min(...corners.map((p) => distance(p, middleOf(scale))));
  return scales.toSorted((a, b) => toWork(a) - toWork(b))[0] ?? null;
}

const slotDiscs = (scale: TurnScale): { at: Vec; radiusMm: number }[] =>
  [scale.at(scale.fromRad), middleOf(scale), scale.at(scale.toRad)].map((at) => ({
    at,
    radiusMm: scale.radiusMm + roundSlotMm,
  }));

function slotOf({ hole, radiusMm, fromRad, toRad }: TurnScale, mirrored: boolean): Polygons {
  const sign = mirrored ? 1 : -1;
  const start = rigid(sign * fromRad, vec(0, 0));
  const motion = { kind: 'turn', pole: vec(0, 0), angleRad: sign * (toRad - fromRad) } as const;
  return sweptRegion([circleLoop(hole.at, radiusMm)], start, motion, roughMm).polygons;
}

import { motionAt } from '../../../src/geometry/motion/motion.ts';
import { moveRegion } from '../../../src/geometry/plane/loop.ts';
import { apply, compose, type Rigid, rigid } from '../../../src/geometry/plane/rigid.ts';
import { type Vec, vec } from '../../../src/geometry/plane/vec.ts';
import type { Casting, DepthRange, Section } from '../../../src/job/casting.ts';
import type { Joint } from '../../../src/joint/joint.ts';
import type { Complaint } from './complaint.ts';
import type { CutterBody } from './cutter-body.ts';
import type { Box, GeosPlane, PreparedShape, Shape } from './geos-plane.ts';
import { chordMm, depthsOf, type Layer } from './layered-solid.ts';

/** A part with what is planned to go from it, and what a cutter leaves of that; `body` null where there is none. */
export interface CutPart {
  readonly part: 'fixed' | 'moving';
  readonly casting: Casting;
  readonly layers: readonly Layer[];
  readonly body: CutterBody | null;
  readonly isCut: boolean;
}

const instantsPerLeg = 40;

/** How much nearer than asked metal may come: chords on both sides, and the plan's own bound. */
const metalSlackMm = 0.01;

/** The same for fillets, which are told too small already. */
const filletSlackMm = 0.05;

/** Ranges of depth that overlap by less only meet: ends in a plan's JSON are rounded. */
const flushMm = 1e-5;

/** Where the moving part stands at one instant, and what is asked there. */
interface Instant {
  readonly at: Rigid;
  readonly standOffMm: number;
  readonly what: 'home' | 'way-in';
  readonly askedMm: number;
}

/** Metal of a section over a range of depth, as the cut leaves it. */
interface Piece {
  readonly part: CutPart;
  readonly section: Section;
  readonly range: DepthRange;
  readonly shape: Shape;
  readonly bounds: Box;
  readonly isFillet: boolean;
  /** For fillets told too large: as they are, a little less at most. */
  readonly exactly: (() => Shape) | null;
}

/** Where less than the asked clearance is left, at home or at an instant of the way in. */
export function roomComplaints(geos: GeosPlane, { fit }: Joint, fixed: CutPart, moving: CutPart): Complaint[] {
  const instants: Instant[] = [
    { at: rigid(0, vec(0, 0)), standOffMm: 0, what: 'home', askedMm: fit.clearance.homeMm },
    ...fit.legs.flatMap(({ from, to, motion }) =>
      Array.from({ length: instantsPerLeg + 1 }, (_, i): Instant => {
        const at = i / instantsPerLeg;
        return {
          at: compose(motionAt(motion, at), rigid(from.turnRad, from.shift)),
          standOffMm: from.standOffMm + at * (to.standOffMm - from.standOffMm),
          what: 'way-in',
          askedMm: fit.clearance.wayInMm,
        };
      }),
    ),
  ];
  const others = piecesOf(geos, moving);
  const room = new Room(geos, instants, fit.depthMarginMm);
  return piecesOf(geos, fixed).flatMap((piece) =>
    others.flatMap((other) => {
      // fillets told too large first: most are in nobody's way
      const complaints = room.between(piece, other);
      if (complaints.length === 0 || !(piece.exactly || other.exactly)) return complaints;
      return exact(geos, piece).flatMap((p) => exact(geos, other).flatMap((o) => room.between(p, o)));
    }),
  );
}

/** A piece that is told no larger than it is. */
function exact(geos: GeosPlane, piece: Piece): Piece[] {
  if (piece.exactly === null) return [piece];
  return pieceOf(geos, piece.part, piece.section, piece.range, piece.exactly(), true);
}

/** What is left of each section layer by layer, and of the fillets at close depths. */
function piecesOf(geos: GeosPlane, part: CutPart): Piece[] {
  if (!part.isCut) {
    return part.casting.sections.flatMap((section) =>
      pieceOf(geos, part, section, section.depth ?? endless, geos.region(section.loops, chordMm), false),
    );
  }
  return part.layers.flatMap((layer) => [
    ...layer.sections.flatMap(({ section, left }) => pieceOf(geos, part, section, layer, left, false)),
    ...filletsIn(geos, part, layer),
  ]);
}

function filletsIn(geos: GeosPlane, part: CutPart, layer: Layer): Piece[] {
  const { body } = part;
  if (body === null || geos.isEmpty(layer.planned)) return [];
  return depthsOf(layer, body.radiusMm).flatMap((mm) => {
    // the planes are thin slices, so that metal counts only where the other part reaches over them
    const slice = { fromMm: mm - 2 * flushMm, toMm: mm + 2 * flushMm };
    const atMost = body.leftAtMost(mm);
    if (geos.isEmpty(atMost)) return [];
    return layer.sections.flatMap(({ section, metal }) =>
      pieceOf(geos, part, section, slice, geos.intersection(atMost, metal), true).map((piece) => ({
        ...piece,
        exactly: () => geos.intersection(body.leftAt(mm), metal),
      })),
    );
  });
}

const endless: DepthRange = { fromMm: Number.NEGATIVE_INFINITY, toMm: Number.POSITIVE_INFINITY };

function pieceOf(
  geos: GeosPlane,
  part: CutPart,
  section: Section,
  { fromMm, toMm }: DepthRange,
  shape: Shape,
  isFillet: boolean,
): Piece[] {
  const bounds = geos.bounds(shape);
  return bounds === null ? [] : [{ part, section, range: { fromMm, toMm }, shape, bounds, isFillet, exactly: null }];
}

class Room {
  readonly #geos: GeosPlane;
  readonly #instants: readonly Instant[];
  readonly #marginMm: number;
  readonly #prepared = new Map<Shape, PreparedShape>();
  readonly #moved = new Map<string, Shape>();

  constructor(geos: GeosPlane, instants: readonly Instant[], marginMm: number) {
    this.#geos = geos;
    this.#instants = instants;
    this.#marginMm = marginMm;
  }

  /** The worst of what two pieces lack at any instant, at home and on the way in. */
  between(fixed: Piece, moving: Piece): Complaint[] {
    const range = lengthened(moving, fixed, this.#marginMm);
    const slack = fixed.isFillet || moving.isFillet ? filletSlackMm : metalSlackMm;
    const worst = new Map<Instant['what'], Complaint>();
    for (const [i, { at, standOffMm, what, askedMm }] of this.#instants.entries()) {
      const shares =
        standOffMm + range.fromMm < -fixed.range.fromMm - flushMm &&
        -fixed.range.toMm + flushMm < standOffMm + range.toMm;
      const limitMm = Math.min(askedMm - slack, (worst.get(what)?.mm ?? Number.POSITIVE_INFINITY) - 1e-6);
      if (!shares || boxGapMm(fixed.bounds, movedBox(moving.bounds, at)) >= limitMm) continue;
      const shape = this.#movedTo(moving, at, i);
      if (!this.#geos.isWithin(this.#ready(fixed.shape), shape, Math.max(0, limitMm))) continue;
      const mm = this.#geos.distanceMm(fixed.shape, shape);
      // where nothing is asked, only metal in metal is too near
      if (
        limitMm <= 0 &&
        this.#geos.isEmpty(this.#geos.buffer(this.#geos.intersection(fixed.shape, shape), -slack / 2, 4))
      )
        continue;
      worst.set(
        what,
        complaintOf(
          fixed,
          { ...moving, range },
          what,
          mm,
          askedMm,
          this.#geos.nearestPoints(fixed.shape, shape)[0],
          standOffMm,
        ),
      );
    }
    return [...worst.values()];
  }

  #ready(shape: Shape): PreparedShape {
    const ready = this.#prepared.get(shape) ?? this.#geos.prepare(shape);
    this.#prepared.set(shape, ready);
    return ready;
  }

  #movedTo({ shape, section, part }: Piece, at: Rigid, instant: number): Shape {
    const key = `${shape} ${instant}`;
    const known = this.#moved.get(key);
    if (known !== undefined) return known;
    const moved = part.isCut
      ? this.#geos.shape(this.#geos.rings(shape).map((ring) => ring.map((p) => apply(at, p))))
      : this.#geos.region(moveRegion(section.loops, at), chordMm);
    this.#moved.set(key, moved);
    return moved;
  }
}

function complaintOf(
  fixed: Piece,
  moving: Piece,
  what: Instant['what'],
  mm: number,
  askedMm: number,
  { x, y }: Vec,
  standOffMm: number,
): Complaint {
  const name = ({ section, isFillet }: Piece): string => (isFillet ? `${section.id} (fillet)` : section.id);
  const cut = fixed.part.isCut ? fixed : moving;
  // where the two share depth, in the depths of the part that is cut
  const top = Math.min(-fixed.range.fromMm, standOffMm + moving.range.toMm);
  const foot = Math.max(-fixed.range.toMm, standOffMm + moving.range.fromMm);
  const z = Number.isFinite(top) && Number.isFinite(foot) ? (top + foot) / 2 : 0;
  const depthMm = cut === fixed ? -z : z - standOffMm;
  return { what, part: cut.part.part, of: `${name(fixed)} to ${name(moving)}`, where: [x, y], depthMm, mm, askedMm };
}

/**
 * The moving section is lengthened by the depth margin at both ends, but where an end lies at its own mating face and
 * the end of the fixed section that faces it lies at its own as well.
 */
function lengthened({ section, range }: Piece, fixed: Piece, marginMm: number): DepthRange {
  const own = section.depth;
  const facing = fixed.section.depth;
  if (own === null) return range;
  const from = Math.abs(range.fromMm - own.fromMm) < 1e-5 && !(own.fromMm === 0 && facing?.fromMm === 0);
  const to = Math.abs(range.toMm - own.toMm) < 1e-5 && !(own.toMm === 0 && facing?.toMm === 0);
  return { fromMm: range.fromMm - (from ? marginMm : 0), toMm: range.toMm + (to ? marginMm : 0) };
}

/** A rectangle that holds a moved one. */
function movedBox({ x0, y0, x1, y1 }: Box, at: Rigid): Box {
  const corners = [vec(x0, y0), vec(x1, y0), vec(x1, y1), vec(x0, y1)].map((p) => apply(at, p));
  const [xs, ys] = [corners.map(({ x }) => x), corners.map(({ y }) => y)];
  return { x0: Math.min(...xs), y0: Math.min(...ys), x1: Math.max(...xs), y1: Math.max(...ys) };
}

const boxGapMm = (a: Box, b: Box): number =>
  Math.hypot(Math.max(0, a.x0 - b.x1, b.x0 - a.x1), Math.max(0, a.y0 - b.y1, b.y0 - a.y1));

import { distance, length, scale, sub, type Vec } from '../../src/geometry/plane/vec.ts';
import { offset } from '../../src/geometry/polygons/offset.ts';
import { difference, intersection, union } from '../../src/geometry/polygons/polygon-engine.ts';
import { outlinesOf, type Polygons, signedAreaMm2 } from '../../src/geometry/polygons/polygons.ts';
import type { Casting, DepthRange } from '../../src/job/casting.ts';
import type { Part } from '../../src/job/part.ts';
import type { Position } from '../../src/job/path.ts';
import type { Joint } from '../../src/joint/joint.ts';
import { commonDepth } from '../../src/plan/bands/depth-ranges.ts';
import { metalOf } from '../../src/plan/bands/metal.ts';
import { gapFrom } from '../../src/trial/contact.ts';
import { asTraced } from '../../src/trial/correction.ts';
import { surfacePlaceOf, type WrittenPlace } from '../../src/trial/surface-place.ts';
import type { Random } from '../support/random.ts';
import { carried, centreOf, disc } from './castings/outlines.ts';
import { normal, type Wander, type Waves, wander } from './castings/wander.ts';
import type { Drawings } from './joints.ts';
import { allTheWay, type NearPlace, nearestOn, offerUp, type Stopped, standing, type Trial } from './offer-up.ts';
import { castingNow, ground, type Removal, type Workpiece, workpieceOf } from './workpiece.ts';

/** How the hand strays from where it means to grind, along the edge and in depth: limits of ± 0.5 mm. */
const handSigmaMm = 0.25;
const handWaves: Waves = { shortestMm: 15, longestMm: 60 };

/** A patch ground by eye: so far about the mark, and lightly some way beyond. */
const patchHalfMm = 12.5;
const blendHalfMm = 20;
const blendMm = 0.3;
/** Along the crank it runs past the mark by this. */
const pastMm = 5;

/** Clay is read to ± 0.1 mm. Paint marks what stands so near where the part stops. */
const claySigmaMm = 0.1 / 1.96;
const paintMm = 0.15;

/** Rough shapes that only clear the room outside the metal. */
const roughMm = 0.02;

/** A place to be ground, and by how much. */
interface Mark {
  readonly at: NearPlace;
  readonly byMm: number;
}

/** What a patch about a mark takes off each layer it reaches, by the hand that grinds it. */
function patch({ layers }: Workpiece, { at: { at, depth }, byMm }: Mark, hand: Wander): Removal[] {
  const middleMm = (depth.fromMm + depth.toMm) / 2;
  const range = {
    fromMm: wholeSteps(Math.floor, Math.min(depth.fromMm, middleMm - patchHalfMm + pastMm)) - pastMm,
    toMm: wholeSteps(Math.ceil, Math.max(depth.toMm, middleMm + patchHalfMm - pastMm)) + pastMm,
  };
  return layers.flatMap((layer): Removal[] => {
    const shared = commonDepth(layer.depth, range);
    const out = shared && outwardAt(layer.metal, at);
    if (shared === null || out === null) return [];
    const about = intersection(layer.metal, [disc(at, 2 * blendHalfMm)]);
    const moved = (mm: number): Polygons => union(carried(about, (p) => hand(sub(p, scale(out, mm)))));
    const room = union([
      ...difference([disc(at, patchHalfMm)], moved(byMm)),
      ...difference([disc(at, blendHalfMm)], moved(blendMm)),
    ]);
    return [{ section: layer.section.id, depth: shared, room }];
  });
}

/** The way out of the metal about a mark: the face that is touched is ground, not the flanks beside it. */
function outwardAt(metal: Polygons, at: Vec): Vec | null {
  const about = intersection(metal, [disc(at, patchHalfMm)]);
  const [largest] = about.toSorted((a, b) => signedAreaMm2(b) - signedAreaMm2(a));
  if (largest === undefined) return null;
  const away = sub(at, centreOf(largest));
  return length(away) < 1e-6 ? null : scale(away, 1 / length(away));
}

/** Ends of patches fall on whole steps of this, mm, so that a casting stays of few layers. */
const stepMm = 5;
const wholeSteps = (round: (x: number) => number, mm: number): number => stepMm * round(mm / stepMm);

/** All that goes down to a line drawn on a tracing: the metal it was drawn on, and what truly stands outside of that. */
export function downToLine(traced: Casting, id: string, line: Polygons): Polygons {
  const section = traced.sections.find((one) => one.id === id);
  if (section === undefined) throw new Error(`nothing is called ${id}`);
  const outsideMm = 3 * section.traceErrorMm + 1.5;
  const about = offset(outlinesOf(line), outsideMm, roughMm, 'outside').polygons;
  const outside = difference(about, metalOf(section.loops, roughMm, 'outside'));
  // the hair closes the seam along the traced outline
  return offset(outlinesOf(union([...line, ...outside])), 1e-3, 1e-3, 'outside').polygons;
}

const exactly: Wander = (at) => at;

/** A builder at the true castings, with his tracing of them. He grinds, offers up, and reads; the truth he never sees. */
export class Bench {
  /** Offerings up after something was ground. */
  goes = 0;
  /** Of those, the first that went home; 0 where it went before anything was ground, null where none has. */
  wentHomeOn: number | null = null;
  /** For the record: the casting as it was when ground to a line; null where it never was. */
  pieceAtLine: Workpiece | null = null;
  readonly #truth: Joint;
  #tracing: Drawings;
  readonly #random: Random;
  #piece: Workpiece;
  #hasGround = false;

  constructor(truth: Joint, tracing: Drawings, random: Random) {
    this.#tracing = tracing;
    this.#truth = { ...truth, fit: { ...truth.fit, depthMarginMm: 0 } };
    this.#random = random;
    this.#piece = workpieceOf(truth.fixed);
  }

  /** The job as he traced it. */
  get traced(): Joint {
    return this.#tracing.joint;
  }

  /** He goes and traces one section again, with care. */
  retrace(part: Part, section: string): void {
    this.#tracing = this.#tracing.tracedAgain(part, section, this.#random);
  }

  /** For the record, not for the builder. */
  get piece(): Workpiece {
    return this.#piece;
  }

  /** For the record: the true least clearance all the way in. */
  leastClearanceMm(): number | null {
    return nearestOn(this.#truth, this.#piece, allTheWay(this.#truth))?.mm ?? null;
  }

  offerUp(): Trial {
    if (this.#hasGround) this.goes++;
    const trial = offerUp(this.#truth, this.#piece, this.#random);
    if (trial.goes) this.wentHomeOn ??= this.goes;
    return trial;
  }

  /** Clay pressed at a place while the part stands somewhere, mm, read as well as he can; null where none would be. */
  readClay(place: WrittenPlace, position: Position): number | null {
    const offered = { joint: { ...this.#truth, fixed: castingNow(this.#piece) }, isCutAt: () => false };
    const surface = surfacePlaceOf(offered, place);
    const contact = surface && gapFrom(offered, surface, position, asTraced);
    return contact === null || contact.gapMm < 0
      ? null
      : Math.max(0, contact.gapMm + normal(this.#random, claySigmaMm));
  }

  /** Grinds what is laid out from the dowels as traced, over its depth from the face. */
  grindLaidOut(cuts: readonly Removal[]): void {
    // set once, so that bands that adjoin leave no ridge between them
    const strayMm = normal(this.#random, handSigmaMm);
    const removals = cuts.flatMap(({ section, depth: told, room }): Removal[] => {
      const depth = this.#depthOnCasting(section, told, strayMm);
      return depth === null || room.length === 0 ? [] : [{ section, depth, room: this.#roomOf(section, room) }];
    });
    this.#grind(removals);
    this.pieceAtLine = this.#piece;
  }

  /** Grinds where it touches and what else paint marks there, each mark somewhere between two depths. */
  grindPainted(
    { stopsAt, touches }: Stopped,
    { least, most }: { readonly least: number; readonly most: number },
  ): void {
    const depthMm = (): number => this.#random.between(least, most);
    const look = (piece: Workpiece): NearPlace | null => nearestOn(this.#truth, piece, standing(stopsAt));
    this.#grindMarks(this.#marks(look, paintMm, depthMm, [{ at: touches, byMm: depthMm() }]));
  }

  /** Whether clay, stuck on all the way in, reads thinner than `wantedMm` anywhere. */
  isClayThin(wantedMm: number): boolean {
    const near = this.#clayAt(this.#piece);
    return near !== null && near.mm < wantedMm;
  }

  /** Grinds where clay, stuck on all the way in, reads thinner than `wantedMm`; whether there was any such place. */
  grindWhereClayIsThin(wantedMm: number, depthMm: (readMm: number) => number): boolean {
    const marks = this.#marks((piece) => this.#clayAt(piece), wantedMm, depthMm);
    this.#grindMarks(marks);
    return marks.length > 0;
  }

  #clayAt(piece: Workpiece): NearPlace | null {
    const near = nearestOn(this.#truth, piece, allTheWay(this.#truth));
    return near && { ...near, mm: near.mm + normal(this.#random, claySigmaMm) };
  }

  /** All marks of one trial: the nearest place, then the nearest of what would be left with that ground, and so on. */
  #marks(
    look: (piece: Workpiece) => NearPlace | null,
    withinMm: number,
    depthMm: (readMm: number) => number,
    seen: readonly Mark[] = [],
  ): Mark[] {
    const marks = [...seen];
    let piece = seen.reduce((left, mark) => ground(left, patch(left, mark, exactly)), this.#piece);
    for (let near = look(piece); near !== null && near.mm < withinMm; near = look(piece)) {
      const { at } = near;
      // metal that stands end to end is marked once, however much of it there is
      if (marks.some((mark) => distance(mark.at.at, at) < patchHalfMm / 2)) break;
      const mark = { at: near, byMm: depthMm(near.mm) };
      marks.push(mark);
      piece = ground(piece, patch(piece, mark, exactly));
    }
    return marks;
  }

  #grindMarks(marks: readonly Mark[]): void {
    for (const mark of marks) this.#grind(patch(this.#piece, mark, wander(this.#random, handSigmaMm, handWaves)));
  }

  #grind(removals: readonly Removal[]): void {
    this.#piece = ground(this.#piece, removals);
    this.#hasGround = true;
  }

  #roomOf(id: string, line: Polygons): Polygons {
    return union(carried(downToLine(this.traced.fixed, id, line), wander(this.#random, handSigmaMm, handWaves)));
  }

  /** A band that ends where its section does is ground to the section's true end. */
  #depthOnCasting(id: string, band: DepthRange, strayMm: number): DepthRange | null {
    const own = this.traced.fixed.sections.find((one) => one.id === id)?.depth;
    const truth = this.#truth.fixed.sections.find((one) => one.id === id)?.depth;
    if (!own || !truth) return null;
    return {
      fromMm: band.fromMm === own.fromMm ? truth.fromMm : band.fromMm + strayMm,
      toMm: band.toMm === own.toMm ? truth.toMm : band.toMm + strayMm,
    };
  }
}

import { apply, identity, inverse, type Rigid } from '../plane/rigid.ts';
import { type Vec, vec } from '../plane/vec.ts';
import { ClosestPair } from './closest-pair.ts';
import { regionContains } from './containment.ts';
import { CutEdges } from './cut-edges.ts';
import { EdgeSlot } from './edge-slot.ts';
import { nearestOnOutline } from './nearest-point.ts';
import { type OutlineTree, startX, startY } from './outline-tree.ts';
import { forNearPairs } from './search.ts';
import { SlideMeasure } from './slide-measure.ts';

const standing = vec(0, 0);

/** Far enough that most fouls show at once; thinner ones show nearer the contact. */
const farthestProbeMm = 4;

/** A point (fixed frame, mm) of both solids, and how deep it lies inside one of them. */
export interface Overlap {
  readonly point: Vec;
  readonly depthMm: number;
}

/**
 * A point of both solids, one of them placed by `placement`, that lies more than `depthMm` inside at least one of
 * them; null when there is none.
 *
 * Where outlines do not come near one another one solid contains the other or they are apart: one point of every loop
 * tells. Where they do, the edges that meet at a contact part the plane there into sectors, each tried along its
 * bisector; and crossings part each edge into pieces, each tried where it runs deepest. `hint`, a point of the moving
 * solid in its own frame, is tried first.
 */
export function overlapOf(
  fixed: OutlineTree,
  moving: OutlineTree,
  placement: Rigid,
  depthMm: number,
  hint: Vec | null = null,
): Overlap | null {
  if (fixed.edgeCount === 0 || moving.edgeCount === 0) return null;
  const solids = new PlacedSolids(fixed, moving, placement, depthMm);
  return (hint && solids.hintInside(hint)) ?? solids.loopPointInside() ?? solids.pointNearContacts();
}

/** Whether either solid holds a point of a loop of the other: unless their outlines meet, this tells whether they overlap. */
export function startsInside(fixed: OutlineTree, moving: OutlineTree, placement: Rigid): boolean {
  const back = inverse(placement);
  return (
    loopPoints(moving).some((p) => containsPoint(fixed, apply(placement, p))) ||
    loopPoints(fixed).some((p) => containsPoint(moving, apply(back, p)))
  );
}

const containsPoint = (tree: OutlineTree, p: Vec): boolean => regionContains(tree, p.x, p.y);

const loopPoints = (tree: OutlineTree): Vec[] =>
  Array.from(tree.loopStarts, (edge) => vec(startX(tree, edge), startY(tree, edge)));

class PlacedSolids {
  readonly #fixed: OutlineTree;
  readonly #moving: OutlineTree;
  readonly #placement: Rigid;
  readonly #back: Rigid;
  readonly #depthMm: number;
  readonly #f = new EdgeSlot();
  readonly #m = new EdgeSlot();

  constructor(fixed: OutlineTree, moving: OutlineTree, placement: Rigid, depthMm: number) {
    this.#fixed = fixed;
    this.#moving = moving;
    this.#placement = placement;
    this.#back = inverse(placement);
    this.#depthMm = depthMm;
  }

  hintInside(hint: Vec): Overlap | null {
    return this.#deepInFixed(apply(this.#placement, hint));
  }

  loopPointInside(): Overlap | null {
    const moving = loopPoints(this.#moving).map((p) => apply(this.#placement, p));
    return (
      firstOf(moving, (p) => this.#deepInFixed(p)) ?? firstOf(loopPoints(this.#fixed), (p) => this.#deepInMoving(p))
    );
  }

  pointNearContacts(): Overlap | null {
    const leg = new SlideMeasure(this.#fixed, this.#moving, this.#placement, standing);
    const pair = new ClosestPair();
    const fixedPieces = new CutEdges(this.#fixed, identity);
    const movingPieces = new CutEdges(this.#moving, this.#placement);
    let found: Overlap | null = null;
    forNearPairs({ fixed: this.#fixed, moving: this.#moving, leg }, this.#depthMm, (fixedEdge, movingEdge) => {
      this.#f.load(this.#fixed, fixedEdge, identity);
      this.#m.load(this.#moving, movingEdge, this.#placement);
      pair.reset();
      pair.measure(this.#f, this.#m);
      if (pair.distanceMm > this.#depthMm) return false;
      found = this.#inSectors(vec(pair.px, pair.py), fixedEdge, movingEdge);
      fixedPieces.cut(fixedEdge, this.#f, this.#m);
      movingPieces.cut(movingEdge, this.#m, this.#f);
      return found !== null;
    });
    return (
      found ??
      firstOf(
        movingPieces.places((p) => this.#inFixed(p)),
        (p) => this.#deepInFixed(p),
      ) ??
      firstOf(
        fixedPieces.places((p) => this.#inMoving(p)),
        (p) => this.#deepInMoving(p),
      )
    );
  }

  #inSectors(at: Vec, fixedEdge: number, movingEdge: number): Overlap | null {
    const rays = [
      ...raysThrough(this.#fixed, fixedEdge, identity, at, this.#depthMm),
      ...raysThrough(this.#moving, movingEdge, this.#placement, at, this.#depthMm),
    ].sort((a, b) => a - b);
    const bisectors = rays.map((ray, i) => (ray + (rays[i + 1] ?? (rays[0] as number) + 2 * Math.PI)) / 2);
    for (let away = farthestProbeMm; away > 2 * this.#depthMm; away /= 4) {
      const found = firstOf(
        bisectors.map((angle) => vec(at.x + away * Math.cos(angle), at.y + away * Math.sin(angle))),
        (p) => (this.#inFixed(p) && this.#inMoving(p) ? (this.#deepInFixed(p) ?? this.#deepInMoving(p)) : null),
      );
      if (found) return found;
    }
    return null;
  }

  #inFixed(p: Vec): boolean {
    return containsPoint(this.#fixed, p);
  }

  #inMoving(p: Vec): boolean {
    return containsPoint(this.#moving, apply(this.#back, p));
  }

  /** For a point of the moving solid. */
  #deepInFixed(p: Vec): Overlap | null {
    return this.#inFixed(p) ? this.#deeper(p, nearestOnOutline(this.#fixed, p).distanceMm) : null;
  }

  /** For a point of the fixed solid. */
  #deepInMoving(p: Vec): Overlap | null {
    return this.#inMoving(p) ? this.#deeper(p, nearestOnOutline(this.#moving, apply(this.#back, p)).distanceMm) : null;
  }

  #deeper(point: Vec, depthMm: number): Overlap | null {
    return depthMm > this.#depthMm ? { point, depthMm } : null;
  }
}

function firstOf(points: Iterable<Vec>, judge: (p: Vec) => Overlap | null): Overlap | null {
  for (const p of points) {
    const found = judge(p);
    if (found) return found;
  }
  return null;
}

/** Directions (rad) in which the outline leaves a point of one of its edges, with its neighbour's where it is an end. */
function raysThrough(tree: OutlineTree, edge: number, placement: Rigid, at: Vec, nearMm: number): number[] {
  const slot = new EdgeSlot();
  slot.load(tree, edge, placement);
  const forward = tangentRad(slot, at);
  const rays = [forward, forward + Math.PI];
  if (Math.hypot(slot.ax - at.x, slot.ay - at.y) <= 4 * nearMm) {
    slot.load(tree, tree.previous[edge] as number, placement);
    rays.push(tangentRad(slot, at) + Math.PI);
  } else if (Math.hypot(slot.bx - at.x, slot.by - at.y) <= 4 * nearMm) {
    slot.load(tree, tree.next[edge] as number, placement);
    rays.push(tangentRad(slot, at));
  }
  return rays.map((ray) => ray - 2 * Math.PI * Math.floor(ray / (2 * Math.PI)));
}

const tangentRad = (slot: EdgeSlot, at: Vec): number =>
  slot.arc
    ? Math.atan2(Math.sign(slot.sweepRad) * (at.x - slot.cx), Math.sign(slot.sweepRad) * (slot.cy - at.y))
    : Math.atan2(slot.dy, slot.dx);

import type { Loop } from '../../src/geometry/plane/loop.ts';
import { squaredToSegment } from '../../src/geometry/plane/segment.ts';
import type { Vec } from '../../src/geometry/plane/vec.ts';
import type { Part } from '../../src/job/part.ts';
import { home, positionAlong } from '../../src/job/path.ts';
import type { Joint } from '../../src/joint/joint.ts';
import type { Stopped, Trial, TrialReading } from '../../src/trial/trial.ts';
import { normal } from './camera.ts';
import type { Random } from './random.ts';

/** How castings of straight edges truly are against their tracings; mm, and radians. */
export interface Truth {
  readonly shift: Vec;
  readonly turnRad: number;
  /** How the fixed outlines lie; as drawn where it is not said. */
  readonly fixed?: { readonly shift: Vec; readonly turnRad: number };
  readonly offsetMm: (part: Part, section: string) => number;
  /** Standard deviation of an outline's wander, on top of its offset. */
  readonly wanderMm: number;
}

type Polygon = readonly Vec[];

const polygonOf = (loop: Loop): Polygon => (loop.kind === 'path' ? loop.vertices : []);

/** A convex polygon run anticlockwise, every side moved out by `mm`, corners staying corners. */
function grown(polygon: Polygon, mm: number): Polygon {
  const at = (i: number): Vec => polygon[(i + polygon.length) % polygon.length] as Vec;
  const out = (a: Vec, b: Vec): Vec => {
    const long = Math.hypot(b.x - a.x, b.y - a.y);
    return { x: (b.y - a.y) / long, y: (a.x - b.x) / long };
  };
  return polygon.map((p, i) => {
    const [m, n] = [out(at(i - 1), p), out(p, at(i + 1))];
    const share = mm / (1 + m.x * n.x + m.y * n.y);
    return { x: p.x + share * (m.x + n.x), y: p.y + share * (m.y + n.y) };
  });
}

const turned = ({ x, y }: Vec, rad: number): Vec => ({
  x: Math.cos(rad) * x - Math.sin(rad) * y,
  y: Math.sin(rad) * x + Math.cos(rad) * y,
});

function inside({ x, y }: Vec, polygon: Polygon): boolean {
  let odd = false;
  polygon.forEach((a, i) => {
    const b = polygon[(i + 1) % polygon.length] as Vec;
    if (a.y > y !== b.y > y && x < a.x + ((y - a.y) / (b.y - a.y)) * (b.x - a.x)) odd = !odd;
  });
  return odd;
}

const toPolygon = (p: Vec, polygon: Polygon): number =>
  Math.sqrt(
    Math.min(
      ...polygon.map((a, i) => {
        const b = polygon[(i + 1) % polygon.length] as Vec;
        return squaredToSegment(p.x, p.y, a.x, a.y, b.x, b.y);
      }),
    ),
  ) * (inside(p, polygon) ? -1 : 1);

/** The true castings as polygons, by nothing but corners and sides. */
export class TrueCastings {
  readonly #joint: Joint;
  readonly #truth: Truth;
  readonly #fixed: readonly Polygon[];
  readonly #moving: readonly Polygon[];

  constructor(joint: Joint, truth: Truth) {
    this.#joint = joint;
    this.#truth = truth;
    const trulyGrown = (part: Part): Polygon[] =>
      joint[part].sections.flatMap(({ id, loops }) =>
        loops.map((loop) => grown(polygonOf(loop), truth.offsetMm(part, id))),
      );
    this.#fixed = trulyGrown('fixed').map((polygon) => polygon.map((p) => this.onFixed(p)));
    this.#moving = trulyGrown('moving').map((polygon) =>
      polygon.map((p) => {
        const q = turned(p, truth.turnRad);
        return { x: q.x + truth.shift.x, y: q.y + truth.shift.y };
      }),
    );
  }

  /** Where a point of the fixed drawing truly is. */
  onFixed(p: Vec): Vec {
    const { shift, turnRad } = this.#truth.fixed ?? { shift: { x: 0, y: 0 }, turnRad: 0 };
    const q = turned(p, turnRad);
    return { x: q.x + shift.x, y: q.y + shift.y };
  }

  /** From a point to the nearest moving metal, home. */
  thicknessFrom(at: Vec): number {
    return Math.min(...this.#moving.map((polygon) => toPolygon(at, polygon)));
  }

  #meetsAt(turnRad: number): boolean {
    const moving = this.#moving.map((polygon) => polygon.map((p) => turned(p, turnRad)));
    return this.#fixed.some((f) => moving.some((m) => f.some((p) => inside(p, m)) || m.some((p) => inside(p, f))));
  }

  /** The turn at which it stops on its second leg, which turns about the axis: by small steps, then by halves. */
  stopTurnRad(): number | null {
    const leg = this.#joint.fit.legs[1];
    if (leg === undefined) return null;
    const turnAt = (at: number): number => positionAlong(leg, at).turnRad;
    const steps = 200;
    for (let k = 1; k <= steps; k++) {
      if (!this.#meetsAt(turnAt(k / steps))) continue;
      let [free, met] = [(k - 1) / steps, k / steps];
      for (let half = 0; half < 20; half++) {
        const middle = (free + met) / 2;
        if (this.#meetsAt(turnAt(middle))) met = middle;
        else free = middle;
      }
      return turnAt(met);
    }
    return null;
  }

  get truth(): Truth {
    return this.#truth;
  }
}

/** A place on an outline, its way out of the metal, and the section it is of. */
export interface Spot {
  readonly section: string;
  readonly at: Vec;
  readonly out: Vec;
}

/** Whether metal that grew here would come nearer to the moving part by most of what it grew. */
const faces = (drawn: TrueCastings, at: Vec, out: Vec): boolean =>
  drawn.thicknessFrom(at) - drawn.thicknessFrom({ x: at.x + 0.1 * out.x, y: at.y + 0.1 * out.y }) > 0.09;

/** Places along the sides of a fixed part that face the moving part, nearer than `mm` to it home, by the drawings. */
export function spotsNear(joint: Joint, mm: number, perSide = 3): Spot[] {
  const drawn = new TrueCastings(joint, { shift: { x: 0, y: 0 }, turnRad: 0, offsetMm: () => 0, wanderMm: 0 });
  return joint.fixed.sections.flatMap(({ id, loops }) =>
    loops.flatMap((loop) => {
      const polygon = polygonOf(loop);
      return polygon.flatMap((a, i) => {
        const b = polygon[(i + 1) % polygon.length] as Vec;
        const long = Math.hypot(b.x - a.x, b.y - a.y);
        const out = { x: (b.y - a.y) / long, y: (a.x - b.x) / long };
        return Array.from({ length: perSide }, (_, k) => (k + 1) / (perSide + 1))
          .map((t) => ({ section: id, at: { x: a.x + t * (b.x - a.x), y: a.y + t * (b.y - a.y) }, out }))
          .filter(({ at }) => drawn.thicknessFrom(at) < mm && faces(drawn, at, out));
      });
    }),
  );
}

export interface ReadingErrors {
  /** ± limits; errors are normal with 95 % within. */
  readonly clayMm: number;
  readonly stopRad: number;
}

/** What a builder would read of the true castings: clay at the spots, home, and where it stops. */
export function readOff(
  joint: Joint,
  castings: TrueCastings,
  spots: readonly Spot[],
  errors: ReadingErrors,
  random: Random,
): Trial {
  const { truth } = castings;
  const readings = spots.map(({ section, at, out }, i): TrialReading => {
    const beyondMm = truth.offsetMm('fixed', section) + truth.wanderMm * normal(random);
    const lies = castings.onFixed(at);
    const surface = { x: lies.x + beyondMm * out.x, y: lies.y + beyondMm * out.y };
    const thicknessMm =
      castings.thicknessFrom(surface) + truth.wanderMm * normal(random) + (errors.clayMm / 1.96) * normal(random);
    const depthMm = 30;
    return { kind: 'clay', id: `c${i + 1}`, section, at, depthMm, position: home, errorMm: errors.clayMm, thicknessMm };
  });
  const turnRad = castings.stopTurnRad();
  const leg = joint.fit.legs[1];
  const stopped: Stopped | null =
    turnRad === null || leg === undefined
      ? null
      : {
          kind: 'at',
          position: { ...leg.from, turnRad: turnRad + (errors.stopRad / 1.96) * normal(random) },
          error: errors.stopRad,
          leg: 2,
          at: (turnRad - leg.from.turnRad) / (leg.to.turnRad - leg.from.turnRad),
          per: 'turn',
        };
  return { file: '', goes: [{ go: 1, cut: { kind: 'none' }, stopped, readings, faces: [] }] };
}

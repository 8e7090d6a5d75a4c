import { type Vec, vec } from '../../geometry/plane/vec.ts';

/** The map of the plane (x, y) ↦ (a·x + c·y + e, b·x + d·y + f); the letters are SVG's. */
export interface Affine {
  readonly a: number;
  readonly b: number;
  readonly c: number;
  readonly d: number;
  readonly e: number;
  readonly f: number;
}

export const affine = (a: number, b: number, c: number, d: number, e = 0, f = 0): Affine => ({ a, b, c, d, e, f });

export const unmoved: Affine = affine(1, 0, 0, 1);

export const moved = (by: Vec): Affine => affine(1, 0, 0, 1, by.x, by.y);

export const scaled = (x: number, y = x): Affine => affine(x, 0, 0, y);

/** A turn about the origin, positive from x towards y. */
export function turned(angleRad: number): Affine {
  const [cos, sin] = [Math.cos(angleRad), Math.sin(angleRad)];
  return affine(cos, sin, -sin, cos);
}

export const mapped = ({ a, b, c, d, e, f }: Affine, p: Vec): Vec => vec(a * p.x + c * p.y + e, b * p.x + d * p.y + f);

/** One map after another: `chained(p, q, r)` does r first. */
export const chained = (...maps: readonly Affine[]): Affine => maps.reduce(after, unmoved);

function after(second: Affine, first: Affine): Affine {
  const { a, b, c, d } = second;
  const { x, y } = mapped(second, vec(first.e, first.f));
  return affine(
    a * first.a + c * first.b,
    b * first.a + d * first.b,
    a * first.c + c * first.d,
    b * first.c + d * first.d,
    x,
    y,
  );
}

const determinant = ({ a, b, c, d }: Affine): number => a * d - b * c;

export const mirrors = (map: Affine): boolean => determinant(map) < 0;

/** How much longer the map makes things, where it keeps circles round. */
export const stretch = (map: Affine): number => Math.sqrt(Math.abs(determinant(map)));

/** Whether circles stay round, to the six digits that drawings write their matrices with. */
export function keepsCircles({ a, b, c, d }: Affine): boolean {
  const [first, second] = [a * a + b * b, c * c + d * d];
  const within = 2e-6 * Math.max(first, second);
  return Math.abs(first - second) <= within && Math.abs(a * c + b * d) <= within / 2;
}

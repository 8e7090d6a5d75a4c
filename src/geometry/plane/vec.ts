/** A point or vector in the plane; lengths in mm. */
export interface Vec {
  readonly x: number;
  readonly y: number;
}

export const vec = (x: number, y: number): Vec => ({ x, y });

export const add = (a: Vec, b: Vec): Vec => vec(a.x + b.x, a.y + b.y);

export const sub = (a: Vec, b: Vec): Vec => vec(a.x - b.x, a.y - b.y);

export const scale = (a: Vec, factor: number): Vec => vec(a.x * factor, a.y * factor);

export const dot = (a: Vec, b: Vec): number => a.x * b.x + a.y * b.y;

export const cross = (a: Vec, b: Vec): number => a.x * b.y - a.y * b.x;

export const length = (a: Vec): number => Math.hypot(a.x, a.y);

export const distance = (a: Vec, b: Vec): number => Math.hypot(a.x - b.x, a.y - b.y);

/** The point a fraction `t` of the way from `a` to `b`. */
export const lerp = (a: Vec, b: Vec, t: number): Vec => vec(a.x + (b.x - a.x) * t, a.y + (b.y - a.y) * t);

/** The point at `radius` mm and `angleRad` from `centre`, anticlockwise from +x. */
export const polar = (centre: Vec, radius: number, angleRad: number): Vec =>
  vec(centre.x + radius * Math.cos(angleRad), centre.y + radius * Math.sin(angleRad));

/** The direction of `a` in (−π, π]. */
export const angleOf = (a: Vec): number => Math.atan2(a.y, a.x);

/** The unit vector to the left of the way between two points: into the metal, for an outline run as metal has it. */
export function leftOf(from: Vec, to: Vec): Vec {
  const along = sub(to, from);
  return scale(vec(0 - along.y, along.x), 1 / distance(from, to));
}

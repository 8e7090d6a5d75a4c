import type { Vec } from './vec.ts';

/** Which way an approximation may err: `outside` never loses metal, `inside` never adds any. */
export type Side = 'outside' | 'inside';

/** An arc no higher than this over its chord is its chord: far below the engine's grid. */
const flatMm = 1e-7;

/**
 * Appends points that stand for an arc run from `from` about `centre`, both its ends left out: chords where the arc
 * must not be overstepped to the right, tangents where it must not be cut to the left. With metal on the left,
 * `outside` keeps the polyline on or right of the arc and `inside` on or left of it, within `toleranceMm`.
 *
 * Points are `from` + (R − I)·(`from` − `centre`) with R − I through 2 sin²(½θ), so a far centre loses no digits.
 */
export function appendArc(to: Vec[], from: Vec, centre: Vec, sweepRad: number, toleranceMm: number, side: Side): void {
  const dx = from.x - centre.x;
  const dy = from.y - centre.y;
  const radius = Math.hypot(dx, dy);
  const pieces = pieceCount(radius, Math.abs(sweepRad), toleranceMm);
  const step = sweepRad / pieces;
  if (pieces === 1 && radius * step * step < 8 * flatMm) return;
  const tangents = sweepRad > 0 === (side === 'outside');
  // a tangent apex stands at half a step, farther out by 1/cos(½ step)
  const lift = tangents ? 1 / Math.cos(step / 2) - 1 : 0;
  for (let i = tangents ? 0.5 : 1; i < pieces; i++) {
    const sin = Math.sin(step * i);
    const fall = 2 * Math.sin((step * i) / 2) ** 2;
    const px = from.x - fall * dx - sin * dy;
    const py = from.y + sin * dx - fall * dy;
    to.push({ x: px + lift * (dx - fall * dx - sin * dy), y: py + lift * (dy + sin * dx - fall * dy) });
  }
}

/** Pieces of at most a sixth of a turn whose tangent apexes stand off by no more than the tolerance: 1/cos ½δ = 1 + lift. */
function pieceCount(radius: number, sweepRad: number, toleranceMm: number): number {
  const lift = toleranceMm / radius;
  const widest = Math.min(Math.PI / 3, 2 * Math.atan(Math.sqrt(lift * (2 + lift))));
  return Math.max(1, Math.ceil(sweepRad / widest));
}

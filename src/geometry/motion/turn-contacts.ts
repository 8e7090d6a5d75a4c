import type { EdgeSlot } from './edge-slot.ts';

/**
 * Every angle by which an edge must turn about the origin to touch a fixed edge: vertex on edge, line tangent to arc,
 * arc tangent to arc. The list errs on the long side (touch points are not checked against the edges' ends), so each
 * candidate is to be confirmed by measuring the two edges there; that a pair overlaps when it starts must be seen
 * apart.
 *
 * Angles are appended to `out` in radians, not reduced to any range. `slackMm` is how far short of touching a
 * tangency may be and still count.
 */
export function turnContacts(fixed: EdgeSlot, moving: EdgeSlot, slackMm: number, out: number[]): void {
  vertexOnEdge(moving.ax, moving.ay, fixed, 1, slackMm, out);
  vertexOnEdge(moving.bx, moving.by, fixed, 1, slackMm, out);
  vertexOnEdge(fixed.ax, fixed.ay, moving, -1, slackMm, out);
  vertexOnEdge(fixed.bx, fixed.by, moving, -1, slackMm, out);
  if (moving.arc) {
    if (fixed.arc) arcOnArc(fixed, moving, slackMm, out);
    else lineOnArc(fixed, moving, 1, slackMm, out);
  } else if (fixed.arc) lineOnArc(moving, fixed, -1, slackMm, out);
}

/** A vertex's circle about the origin meets the edge; `sign` +1: the vertex turns, −1: the edge does. */
function vertexOnEdge(x: number, y: number, edge: EdgeSlot, sign: number, slackMm: number, out: number[]): void {
  const radius = Math.sqrt(x * x + y * y);
  // a vertex on the pole stays where it is
  if (radius === 0) return;
  const from = Math.atan2(y, x);
  if (edge.arc) circleOnArc(radius, from, edge, sign, slackMm, out);
  else circleOnLine(radius, from, edge, sign, slackMm, out);
}

function circleOnLine(
  radius: number,
  from: number,
  line: EdgeSlot,
  sign: number,
  slackMm: number,
  out: number[],
): void {
  const { dx, dy } = line;
  const squared = dx * dx + dy * dy;
  const len = Math.sqrt(squared);
  const height = Math.abs(line.ax * dy - line.ay * dx) / len;
  if (height > radius + slackMm) return;
  const foot = -(line.ax * dx + line.ay * dy) / squared;
  const half = Math.sqrt(Math.max(0, (radius - height) * (radius + height))) / len;
  const slack = tangentReachMm(radius, slackMm) / len;
  for (let side = -1; side <= 1; side += 2) {
    const t = foot + side * half;
    if (t < -slack || t > 1 + slack) continue;
    out.push(sign * (Math.atan2(line.ay + t * dy, line.ax + t * dx) - from));
  }
}

function circleOnArc(radius: number, from: number, arc: EdgeSlot, sign: number, slackMm: number, out: number[]): void {
  const away = Math.sqrt(arc.cx * arc.cx + arc.cy * arc.cy);
  if (away === 0) return;
  const gap = Math.max(radius - away - arc.radius, Math.abs(away - arc.radius) - radius, away - radius - arc.radius);
  if (gap > slackMm) return;
  const spread = angleBetween(radius, away, arc.radius);
  const toCentre = Math.atan2(arc.cy, arc.cx);
  const slack = tangentReachMm(radius, slackMm);
  for (let side = -1; side <= 1; side += 2) {
    const angle = toCentre + side * spread;
    if (arc.spans(radius * Math.cos(angle), radius * Math.sin(angle), slack)) out.push(sign * (angle - from));
  }
}

/**
 * A line at height h from the origin (unit normal n) and an arc about c touch where n·c = h ± ρ, c turned;
 * `sign` +1: the arc turns, −1: the line does.
 */
function lineOnArc(line: EdgeSlot, arc: EdgeSlot, sign: number, slackMm: number, out: number[]): void {
  const away = Math.sqrt(arc.cx * arc.cx + arc.cy * arc.cy);
  if (away === 0) return;
  const { dx, dy } = line;
  const len = Math.sqrt(dx * dx + dy * dy);
  const nx = dy / len;
  const ny = -dx / len;
  const height = nx * line.ax + ny * line.ay;
  const apart = Math.atan2(ny, nx) - Math.atan2(arc.cy, arc.cx);
  for (let side = -1; side <= 1; side += 2) {
    const reach = height + side * arc.radius;
    if (Math.abs(reach) > away + slackMm) continue;
    const spread = Math.acos(Math.max(-1, Math.min(1, reach / away)));
    out.push(sign * (apart + spread), sign * (apart - spread));
  }
}

/** Two arcs touch where their centres are ρ1 + ρ2 or |ρ1 − ρ2| apart. */
function arcOnArc(fixed: EdgeSlot, moving: EdgeSlot, slackMm: number, out: number[]): void {
  const a = Math.sqrt(moving.cx * moving.cx + moving.cy * moving.cy);
  const b = Math.sqrt(fixed.cx * fixed.cx + fixed.cy * fixed.cy);
  if (a === 0 || b === 0) return;
  const apart = Math.atan2(fixed.cy, fixed.cx) - Math.atan2(moving.cy, moving.cx);
  for (let side = -1; side <= 1; side += 2) {
    const reach = Math.abs(fixed.radius + side * moving.radius);
    if (reach > a + b + slackMm || reach < Math.abs(a - b) - slackMm) continue;
    const spread = angleBetween(a, b, reach);
    out.push(apart + spread, apart - spread);
  }
}

/**
 * The angle between sides a and b of a triangle whose third side is c, clamped where the sides do not quite meet:
 * tan²(½γ) = (c² − (a − b)²) / ((a + b)² − c²), which keeps its digits where a, b are nearly equal and where they
 * are nearly in line.
 */
function angleBetween(a: number, b: number, c: number): number {
  const opposite = Math.max(0, (c - a + b) * (c + a - b));
  const adjacent = Math.max(0, (a + b - c) * (a + b + c));
  return 2 * Math.atan2(Math.sqrt(opposite), Math.sqrt(adjacent));
}

/** How far along a tangent one may be and still be within the slack of the circle: √(2·r·slack), generously. */
const tangentReachMm = (radius: number, slackMm: number): number => 4 * Math.sqrt(radius * slackMm) + slackMm;

import { orient2d } from 'robust-predicates';
import type { EdgeSlot } from './edge-slot.ts';

/**
 * Where two edges cross or touch with common points: x, y of at most two of them are written to `out`; returns how
 * many numbers. Lines that overlap along a stretch, and arcs of one circle, have no such points.
 */
export function edgeCrossings(p: EdgeSlot, q: EdgeSlot, out: Float64Array): number {
  if (p.arc) return q.arc ? arcArc(p, q, out) : lineArc(q, p, out);
  return q.arc ? lineArc(p, q, out) : lineLine(p, q, out);
}

/** Decided by robust predicates, so that a crossing is never missed for rounding. */
function lineLine(p: EdgeSlot, q: EdgeSlot, out: Float64Array): number {
  const pa = orient2d(q.ax, q.ay, q.bx, q.by, p.ax, p.ay);
  const pb = orient2d(q.ax, q.ay, q.bx, q.by, p.bx, p.by);
  if (!opposite(pa, pb)) return 0;
  const qa = orient2d(p.ax, p.ay, p.bx, p.by, q.ax, q.ay);
  const qb = orient2d(p.ax, p.ay, p.bx, p.by, q.bx, q.by);
  if (!opposite(qa, qb)) return 0;
  // the signs are sure, the values are not: found along the shorter edge, held to the longer, it is near both
  const pIsShorter = p.dx * p.dx + p.dy * p.dy < q.dx * q.dx + q.dy * q.dy;
  const [e, t, longer] = pIsShorter ? [p, pa / (pa - pb), q] : [q, qa / (qa - qb), p];
  const { ax, ay, dx, dy } = longer;
  const along = ((e.ax + t * e.dx - ax) * dx + (e.ay + t * e.dy - ay) * dy) / (dx * dx + dy * dy);
  const held = Math.min(1, Math.max(0, along));
  out[0] = ax + held * dx;
  out[1] = ay + held * dy;
  return 2;
}

function lineArc(line: EdgeSlot, arc: EdgeSlot, out: Float64Array): number {
  const { dx, dy } = line;
  const squared = dx * dx + dy * dy;
  const foot = ((arc.cx - line.ax) * dx + (arc.cy - line.ay) * dy) / squared;
  const fx = line.ax + foot * dx - arc.cx;
  const fy = line.ay + foot * dy - arc.cy;
  const height = Math.sqrt(fx * fx + fy * fy);
  if (height > arc.radius) return 0;
  const half = Math.sqrt(((arc.radius - height) * (arc.radius + height)) / squared);
  let count = 0;
  for (let side = -1; side <= 1; side += 2) {
    const t = foot + side * half;
    if (t < 0 || t > 1) continue;
    const x = line.ax + t * dx;
    const y = line.ay + t * dy;
    if (!arc.spans(x, y)) continue;
    out[count++] = x;
    out[count++] = y;
  }
  return count;
}

function arcArc(p: EdgeSlot, q: EdgeSlot, out: Float64Array): number {
  const dx = q.cx - p.cx;
  const dy = q.cy - p.cy;
  const apart = Math.sqrt(dx * dx + dy * dy);
  if (apart === 0 || apart > p.radius + q.radius || apart < Math.abs(p.radius - q.radius)) return 0;
  const along = (apart + ((p.radius - q.radius) * (p.radius + q.radius)) / apart) / 2;
  const across = Math.sqrt(Math.max(0, (p.radius - along) * (p.radius + along)));
  let count = 0;
  for (let side = -1; side <= 1; side += 2) {
    const x = p.cx + (along * dx - side * across * dy) / apart;
    const y = p.cy + (along * dy + side * across * dx) / apart;
    if (!p.spans(x, y) || !q.spans(x, y)) continue;
    out[count++] = x;
    out[count++] = y;
  }
  return count;
}

const opposite = (a: number, b: number): boolean => (a < 0 && b > 0) || (a > 0 && b < 0);

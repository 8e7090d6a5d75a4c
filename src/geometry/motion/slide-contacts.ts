import type { EdgeSlot } from './edge-slot.ts';

/**
 * Every distance (mm, along +x) by which an edge must slide to touch a fixed edge: vertex on edge, line tangent to
 * arc, arc tangent to arc. As for a turn the list errs on the long side and each candidate is to be confirmed by
 * measuring the two edges there.
 */
export function slideContacts(fixed: EdgeSlot, moving: EdgeSlot, slackMm: number, out: number[]): void {
  vertexOnEdge(moving.ax, moving.ay, fixed, 1, slackMm, out);
  vertexOnEdge(moving.bx, moving.by, fixed, 1, slackMm, out);
  vertexOnEdge(fixed.ax, fixed.ay, moving, -1, slackMm, out);
  vertexOnEdge(fixed.bx, fixed.by, moving, -1, slackMm, out);
  if (moving.arc) {
    if (fixed.arc) arcOnArc(fixed, moving, slackMm, out);
    else lineOnArc(fixed, moving, 1, out);
  } else if (fixed.arc) lineOnArc(moving, fixed, -1, out);
}

/** A vertex's path along x meets the edge; `sign` +1: the vertex slides, −1: the edge does. */
function vertexOnEdge(x: number, y: number, edge: EdgeSlot, sign: number, slackMm: number, out: number[]): void {
  if (edge.arc) {
    chordAtHeight(edge.radius, y - edge.cy, edge.cx - x, sign, slackMm, out);
    return;
  }
  const { dy } = edge;
  // a line along the slide is met at its ends, which belong to its neighbours too
  if (dy === 0) return;
  const t = (y - edge.ay) / dy;
  const slack = slackMm / Math.abs(dy);
  if (t < -slack || t > 1 + slack) return;
  out.push(sign * (edge.ax + t * edge.dx - x));
}

/** A line's normal distance from the arc's centre is ±ρ; `sign` +1: the arc slides, −1: the line does. */
function lineOnArc(line: EdgeSlot, arc: EdgeSlot, sign: number, out: number[]): void {
  const { dx, dy } = line;
  if (dy === 0) return;
  const len = Math.sqrt(dx * dx + dy * dy);
  const height = dy * (line.ax - arc.cx) - dx * (line.ay - arc.cy);
  out.push((sign * (height + len * arc.radius)) / dy, (sign * (height - len * arc.radius)) / dy);
}

/** The centres are ρ1 + ρ2 or |ρ1 − ρ2| apart. */
function arcOnArc(fixed: EdgeSlot, moving: EdgeSlot, slackMm: number, out: number[]): void {
  const along = fixed.cx - moving.cx;
  const height = fixed.cy - moving.cy;
  chordAtHeight(fixed.radius + moving.radius, height, along, 1, slackMm, out);
  chordAtHeight(Math.abs(fixed.radius - moving.radius), height, along, 1, slackMm, out);
}

function chordAtHeight(
  radius: number,
  height: number,
  along: number,
  sign: number,
  slackMm: number,
  out: number[],
): void {
  if (Math.abs(height) > radius + slackMm) return;
  const half = Math.sqrt(Math.max(0, (radius - height) * (radius + height)));
  out.push(sign * (along + half), sign * (along - half));
}

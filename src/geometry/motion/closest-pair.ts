import { edgeCrossings } from './edge-crossings.ts';
import type { EdgeSlot } from './edge-slot.ts';

/**
 * The closest points found so far between edges p and edges q. Every candidate put to it is a pair of points that lie
 * on the two edges, so its distance is never less than the true one; the candidates of an edge pair are complete, so
 * it is never more: end–line, end–arc, line–arc and arc–arc on the common normal, and the crossings (two lines that
 * do not cross are nearest at an end of one of them).
 */
export class ClosestPair {
  squaredMm2 = Number.POSITIVE_INFINITY;
  px = 0;
  py = 0;
  qx = 0;
  qy = 0;
  readonly #crossings = new Float64Array(4);

  get distanceMm(): number {
    return Math.sqrt(this.squaredMm2);
  }

  reset(): void {
    this.squaredMm2 = Number.POSITIVE_INFINITY;
  }

  consider(px: number, py: number, qx: number, qy: number): void {
    const squared = (px - qx) ** 2 + (py - qy) ** 2;
    if (squared >= this.squaredMm2) return;
    this.squaredMm2 = squared;
    this.px = px;
    this.py = py;
    this.qx = qx;
    this.qy = qy;
  }

  /** Takes in the least distance between two edges. */
  measure(p: EdgeSlot, q: EdgeSlot): void {
    const crossings = edgeCrossings(p, q, this.#crossings);
    if (crossings > 0) {
      const [x = 0, y = 0] = this.#crossings;
      this.consider(x, y, x, y);
      return;
    }
    this.#pointEdge(p.ax, p.ay, q, false);
    this.#pointEdge(p.bx, p.by, q, false);
    this.#pointEdge(q.ax, q.ay, p, true);
    this.#pointEdge(q.bx, q.by, p, true);
    if (p.arc && q.arc) this.#arcArc(p, q);
    else if (q.arc) this.#lineArc(p, q, false);
    else if (p.arc) this.#lineArc(q, p, true);
  }

  /** Takes in the least distance from a point (as p) to an edge. */
  measurePoint(x: number, y: number, q: EdgeSlot): void {
    this.#pointEdge(x, y, q, false);
  }

  /** The foot of the arc's centre on the line, where the line passes outside the circle. */
  #lineArc(line: EdgeSlot, arc: EdgeSlot, arcIsP: boolean): void {
    const { dx, dy } = line;
    const foot = ((arc.cx - line.ax) * dx + (arc.cy - line.ay) * dy) / (dx * dx + dy * dy);
    if (foot <= 0 || foot >= 1) return;
    const fx = line.ax + foot * dx;
    const fy = line.ay + foot * dy;
    const hx = fx - arc.cx;
    const hy = fy - arc.cy;
    const height = Math.sqrt(hx * hx + hy * hy);
    if (height < arc.radius) return;
    const x = arc.cx + (hx * arc.radius) / height;
    const y = arc.cy + (hy * arc.radius) / height;
    if (arc.spans(x, y)) this.#considerSided(fx, fy, x, y, arcIsP);
  }

  /** The four pairs of points on the line of centres. */
  #arcArc(p: EdgeSlot, q: EdgeSlot): void {
    const dx = q.cx - p.cx;
    const dy = q.cy - p.cy;
    const apart = Math.sqrt(dx * dx + dy * dy);
    if (apart === 0) return;
    const ux = dx / apart;
    const uy = dy / apart;
    for (let i = 0; i < 4; i++) {
      const s = i & 1 ? p.radius : -p.radius;
      const t = i & 2 ? q.radius : -q.radius;
      const px = p.cx + s * ux;
      const py = p.cy + s * uy;
      const qx = q.cx + t * ux;
      const qy = q.cy + t * uy;
      if (p.spans(px, py) && q.spans(qx, qy)) this.consider(px, py, qx, qy);
    }
  }

  #pointEdge(x: number, y: number, edge: EdgeSlot, edgeIsP: boolean): void {
    if (edge.arc) this.#pointArc(x, y, edge, edgeIsP);
    else this.#pointLine(x, y, edge, edgeIsP);
  }

  #pointLine(x: number, y: number, line: EdgeSlot, lineIsP: boolean): void {
    const { dx, dy } = line;
    const t = ((x - line.ax) * dx + (y - line.ay) * dy) / (dx * dx + dy * dy);
    if (t <= 0) this.#considerSided(x, y, line.ax, line.ay, lineIsP);
    else if (t >= 1) this.#considerSided(x, y, line.bx, line.by, lineIsP);
    else this.#considerSided(x, y, line.ax + t * dx, line.ay + t * dy, lineIsP);
  }

  #pointArc(x: number, y: number, arc: EdgeSlot, arcIsP: boolean): void {
    const dx = x - arc.cx;
    const dy = y - arc.cy;
    const away = Math.sqrt(dx * dx + dy * dy);
    // at the centre every point of the arc is as near: its ends serve
    if (away > 0) {
      const nx = arc.cx + (dx * arc.radius) / away;
      const ny = arc.cy + (dy * arc.radius) / away;
      if (arc.spans(nx, ny)) {
        this.#considerSided(x, y, nx, ny, arcIsP);
        return;
      }
    }
    this.#considerSided(x, y, arc.ax, arc.ay, arcIsP);
    this.#considerSided(x, y, arc.bx, arc.by, arcIsP);
  }

  /** Considers a point and a point of the other edge, which is p when `otherIsP`. */
  #considerSided(x: number, y: number, otherX: number, otherY: number, otherIsP: boolean): void {
    if (otherIsP) this.consider(otherX, otherY, x, y);
    else this.consider(x, y, otherX, otherY);
  }
}

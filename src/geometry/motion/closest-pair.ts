import { orient2d } from 'robust-predicates';
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
    if (p.arc) {
      if (q.arc) this.#arcArc(p, q);
      else this.#lineArc(q, p, true);
    } else if (q.arc) this.#lineArc(p, q, false);
    else this.#lineLine(p, q);
  }

  /** Takes in the least distance from a point (as p) to an edge. */
  measurePoint(x: number, y: number, q: EdgeSlot): void {
    if (q.arc) this.#pointArc(x, y, q, false);
    else this.#pointLine(x, y, q, false);
  }

  #lineLine(p: EdgeSlot, q: EdgeSlot): void {
    const pa = orient2d(q.ax, q.ay, q.bx, q.by, p.ax, p.ay);
    const pb = orient2d(q.ax, q.ay, q.bx, q.by, p.bx, p.by);
    if (pa > 0 !== pb > 0 || pa === 0 || pb === 0) {
      const qa = orient2d(p.ax, p.ay, p.bx, p.by, q.ax, q.ay);
      const qb = orient2d(p.ax, p.ay, p.bx, p.by, q.bx, q.by);
      if ((pa < 0 && pb > 0) || (pa > 0 && pb < 0)) {
        if ((qa < 0 && qb > 0) || (qa > 0 && qb < 0)) {
          const t = pa / (pa - pb);
          const x = p.ax + t * (p.bx - p.ax);
          const y = p.ay + t * (p.by - p.ay);
          this.consider(x, y, x, y);
          return;
        }
      }
    }
    this.#pointLine(p.ax, p.ay, q, false);
    this.#pointLine(p.bx, p.by, q, false);
    this.#pointLine(q.ax, q.ay, p, true);
    this.#pointLine(q.bx, q.by, p, true);
  }

  #lineArc(line: EdgeSlot, arc: EdgeSlot, arcIsP: boolean): void {
    this.#pointArc(line.ax, line.ay, arc, arcIsP);
    this.#pointArc(line.bx, line.by, arc, arcIsP);
    this.#pointLine(arc.ax, arc.ay, line, !arcIsP);
    this.#pointLine(arc.bx, arc.by, line, !arcIsP);
    const dx = line.bx - line.ax;
    const dy = line.by - line.ay;
    const squaredLength = dx * dx + dy * dy;
    const foot = ((arc.cx - line.ax) * dx + (arc.cy - line.ay) * dy) / squaredLength;
    const fx = line.ax + foot * dx;
    const fy = line.ay + foot * dy;
    const height = Math.hypot(fx - arc.cx, fy - arc.cy);
    if (height >= arc.radius) {
      if (foot <= 0 || foot >= 1) return;
      const x = arc.cx + ((fx - arc.cx) * arc.radius) / height;
      const y = arc.cy + ((fy - arc.cy) * arc.radius) / height;
      if (arc.spans(x, y)) this.#considerSided(fx, fy, x, y, arcIsP);
      return;
    }
    const half = Math.sqrt((arc.radius - height) * (arc.radius + height) / squaredLength);
    for (const t of [foot - half, foot + half]) {
      if (t < 0 || t > 1) continue;
      const x = line.ax + t * dx;
      const y = line.ay + t * dy;
      if (arc.spans(x, y)) this.consider(x, y, x, y);
    }
  }

  #arcArc(p: EdgeSlot, q: EdgeSlot): void {
    this.#pointArc(p.ax, p.ay, q, false);
    this.#pointArc(p.bx, p.by, q, false);
    this.#pointArc(q.ax, q.ay, p, true);
    this.#pointArc(q.bx, q.by, p, true);
    const dx = q.cx - p.cx;
    const dy = q.cy - p.cy;
    const apart = Math.hypot(dx, dy);
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
    if (apart > p.radius + q.radius || apart < Math.abs(p.radius - q.radius)) return;
    const along = (apart + ((p.radius - q.radius) * (p.radius + q.radius)) / apart) / 2;
    const across = Math.sqrt(Math.max(0, (p.radius - along) * (p.radius + along)));
    for (const side of [across, -across]) {
      const x = p.cx + along * ux - side * uy;
      const y = p.cy + along * uy + side * ux;
      if (p.spans(x, y) && q.spans(x, y)) this.consider(x, y, x, y);
    }
  }

  #pointLine(x: number, y: number, line: EdgeSlot, lineIsP: boolean): void {
    const dx = line.bx - line.ax;
    const dy = line.by - line.ay;
    const t = ((x - line.ax) * dx + (y - line.ay) * dy) / (dx * dx + dy * dy);
    if (t <= 0) this.#considerSided(x, y, line.ax, line.ay, lineIsP);
    else if (t >= 1) this.#considerSided(x, y, line.bx, line.by, lineIsP);
    else this.#considerSided(x, y, line.ax + t * dx, line.ay + t * dy, lineIsP);
  }

  #pointArc(x: number, y: number, arc: EdgeSlot, arcIsP: boolean): void {
    const dx = x - arc.cx;
    const dy = y - arc.cy;
    const away = Math.hypot(dx, dy);
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

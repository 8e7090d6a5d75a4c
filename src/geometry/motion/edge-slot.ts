import type { Rigid } from '../plane/rigid.ts';
import type { OutlineTree } from './outline-tree.ts';

/**
 * One edge of a tree, carried to where it stands: scratch space that the hot loops fill again and again, so that
 * measuring a pair of edges allocates nothing.
 */
export class EdgeSlot {
  arc = false;
  /** A whole circle: every direction lies in its span. */
  whole = false;
  ax = 0;
  ay = 0;
  bx = 0;
  by = 0;
  /** b − a, taken before the edge is carried far from the origin, where it would lose its digits. */
  dx = 0;
  dy = 0;
  cx = 0;
  cy = 0;
  radius = 0;
  sweepRad = 0;

  load(tree: OutlineTree, edge: number, at: Rigid): void {
    const { cos, sin, shift } = at;
    const { ends, arcs } = tree;
    const i = 4 * edge;
    const ax = ends[i] as number;
    const ay = ends[i + 1] as number;
    const bx = ends[i + 2] as number;
    const by = ends[i + 3] as number;
    this.ax = cos * ax - sin * ay + shift.x;
    this.ay = sin * ax + cos * ay + shift.y;
    this.bx = cos * bx - sin * by + shift.x;
    this.by = sin * bx + cos * by + shift.y;
    this.dx = cos * (bx - ax) - sin * (by - ay);
    this.dy = sin * (bx - ax) + cos * (by - ay);
    this.radius = arcs.length === 0 ? 0 : (arcs[i + 2] as number);
    this.arc = this.radius > 0;
    if (!this.arc) {
      this.whole = false;
      return;
    }
    const cx = arcs[i] as number;
    const cy = arcs[i + 1] as number;
    this.cx = cos * cx - sin * cy + shift.x;
    this.cy = sin * cx + cos * cy + shift.y;
    this.sweepRad = arcs[i + 3] as number;
    this.whole = ax === bx && ay === by;
  }

  /**
   * Whether a point of the arc's circle lies in its span, to within `slackMm`: an arc lies wholly on one side of its
   * chord, to the right of it when it runs anticlockwise.
   */
  spans(x: number, y: number, slackMm = 0): boolean {
    if (this.whole) return true;
    const side = this.dx * (y - this.ay) - this.dy * (x - this.ax);
    const slack = slackMm === 0 ? 0 : slackMm * Math.hypot(this.dx, this.dy);
    return this.sweepRad > 0 ? side <= slack : side >= -slack;
  }
}

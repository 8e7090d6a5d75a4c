import { withinReach } from '../files/far-lengths.ts';
import type { Finding } from '../files/finding.ts';
import type { Vec } from '../geometry/plane/vec.ts';
import type { DrawnShape } from './drawing.ts';
import { inReach } from './outlines/reach.ts';
import type { Shape } from './outlines/shape.ts';

const mostFindings = 20;

/** Shapes that lie farther out, in a drawing whose unit is so many mm; up to a few. */
export function farShapes(file: string, shapes: readonly DrawnShape[], mm: number): Finding[] {
  const findings: Finding[] = [];
  for (const { shape, place } of shapes) {
    const far = telling(shape).find(({ x, y }) => !inReach({ x: x * mm, y: y * mm }));
    if (far !== undefined) findings.push({ file, at: place, found: `(${far.x}, ${far.y})`, expected: withinReach(mm) });
    if (findings.length >= mostFindings) break;
  }
  return findings;
}

/** Points that tell how far a shape reaches; what lies between them is checked with the part. */
function telling(shape: Shape): Vec[] {
  if (shape.kind === 'circle') {
    const { centre, radius } = shape;
    return [centre, { x: centre.x + radius, y: centre.y + radius }, { x: centre.x - radius, y: centre.y - radius }];
  }
  return shape.strokes.flatMap((stroke) =>
    stroke.kind === 'edge' ? [stroke.a, stroke.b] : [stroke.at(0), stroke.at(0.5), stroke.at(1)],
  );
}

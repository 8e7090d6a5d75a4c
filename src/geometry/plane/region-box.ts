import { edgeOfBulge } from './edge.ts';
import { type Box, boxOfEdge } from './edge-box.ts';
import type { Region, Vertex } from './loop.ts';

/** The least box round outlines, arcs included; of none, one that holds nothing. */
export function boxOfRegion(region: Region): Box {
  const grown = { minX: Infinity, minY: Infinity, maxX: -Infinity, maxY: -Infinity };
  for (const loop of region) {
    if (loop.kind === 'circle') {
      const { centre, radius } = loop;
      grow(grown, centre.x - radius, centre.y - radius, centre.x + radius, centre.y + radius);
      continue;
    }
    const { vertices } = loop;
    for (let i = 0; i < vertices.length; i++) {
      const a = vertices[i] as Vertex;
      grow(grown, a.x, a.y, a.x, a.y);
      if (a.bulge === 0) continue;
      const { minX, minY, maxX, maxY } = boxOfEdge(
        edgeOfBulge(a, vertices[(i + 1) % vertices.length] as Vertex, a.bulge),
      );
      grow(grown, minX, minY, maxX, maxY);
    }
  }
  return grown;
}

function grow(
  box: { -readonly [side in keyof Box]: number },
  minX: number,
  minY: number,
  maxX: number,
  maxY: number,
): void {
  box.minX = Math.min(box.minX, minX);
  box.minY = Math.min(box.minY, minY);
  box.maxX = Math.max(box.maxX, maxX);
  box.maxY = Math.max(box.maxY, maxY);
}

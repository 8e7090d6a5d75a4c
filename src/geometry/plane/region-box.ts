import { edgeOfBulge, edgeOfCircle } from './edge.ts';
import { type Box, boxOfEdge, GrowingBox } from './edge-box.ts';
import type { Region, Vertex } from './loop.ts';

/** The least box round outlines, arcs included; of none, one that holds nothing. Of straight edges none is made. */
export function boxOfRegion(region: Region): Box {
  const around = new GrowingBox();
  for (const loop of region) {
    if (loop.kind === 'circle') {
      around.takeIn(boxOfEdge(edgeOfCircle(loop.centre, loop.radius)));
      continue;
    }
    const { vertices } = loop;
    for (let i = 0; i < vertices.length; i++) {
      const a = vertices[i] as Vertex;
      around.takeInPoint(a);
      const next = vertices[(i + 1) % vertices.length] as Vertex;
      if (a.bulge !== 0) around.takeIn(boxOfEdge(edgeOfBulge(a, next, a.bulge)));
    }
  }
  return around.box();
}

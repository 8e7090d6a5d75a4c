import { parseString, toPolylines } from 'dxf';
import DxfParser, { type IArcEntity, type ICircleEntity, type ILineEntity, type ILwpolylineEntity } from 'dxf-parser';
import { arcSegments, type Segment } from './even-odd-area.ts';

/** What dxf-parser 1.1.2 reads, as segments; only kinds it reads soundly, anything else is an error. */
export function segmentsByDxfParser(text: string): Segment[] {
  const { entities } = new DxfParser().parseSync(text) ?? { entities: [] };
  return entities.flatMap((entity): Segment[] => {
    switch (entity.type) {
      case 'LINE': {
        const [a, b] = (entity as ILineEntity).vertices;
        return a && b ? [[a.x, a.y, b.x, b.y]] : [];
      }
      case 'CIRCLE': {
        const { center, radius } = entity as ICircleEntity;
        return arcSegments(center.x, center.y, radius, 0, 2 * Math.PI);
      }
      case 'ARC': {
        const { center, radius, startAngle, endAngle } = entity as IArcEntity;
        const sweep = endAngle > startAngle ? endAngle - startAngle : endAngle - startAngle + 2 * Math.PI;
        return arcSegments(center.x, center.y, radius, startAngle, sweep);
      }
      case 'LWPOLYLINE':
        return polylineSegments(entity as ILwpolylineEntity);
      case 'MTEXT':
        return [];
      default:
        throw new Error(`no ${entity.type} by this peer`);
    }
  });
}

function polylineSegments({ vertices, shape }: ILwpolylineEntity): Segment[] {
  return vertices.flatMap((a, i): Segment[] => {
    const b = vertices[i + 1] ?? (shape ? vertices[0] : undefined);
    if (b === undefined) return [];
    return a.bulge ? bulgeSegments(a.x, a.y, b.x, b.y, a.bulge) : [[a.x, a.y, b.x, b.y]];
  });
}

/** By the sagitta: an arc rises bulge × half its chord, on the right of the chord where the bulge is positive. */
function bulgeSegments(x1: number, y1: number, x2: number, y2: number, bulge: number): Segment[] {
  const half = Math.hypot(x2 - x1, y2 - y1) / 2;
  const radius = (half * (1 + bulge ** 2)) / (2 * Math.abs(bulge));
  const off = radius - Math.abs(bulge) * half;
  const side = Math.sign(bulge) / (2 * half);
  const [x, y] = [(x1 + x2) / 2 - side * off * (y2 - y1), (y1 + y2) / 2 + side * off * (x2 - x1)];
  return arcSegments(x, y, radius, Math.atan2(y1 - y, x1 - x), 4 * Math.atan(bulge));
}

/** What dxf 5.3.1 reads, its blocks spread out; its arcs are coarse, so for straight lines alone. */
export function segmentsByDxf(text: string): Segment[] {
  return toPolylines(parseString(text)).polylines.flatMap(({ vertices }) =>
    vertices.slice(1).map((b, i): Segment => [...(vertices[i] as readonly [number, number]), ...b]),
  );
}

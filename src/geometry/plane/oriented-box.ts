import { bulgeOf, type Edge } from './edge.ts';

/**
 * Rectangles that lie any way round, in a row, flat: of each the centre x, y, a unit direction x, y, half its length
 * along that and half its width across it, mm. They fit long slender things that lie askew, where a box along the axes
 * is mostly empty.
 */
export type OrientedBoxes = Float64Array;

const boxSize = 6;

export const orientedBoxes = (count: number): OrientedBoxes => new Float64Array(boxSize * count);

export const alongOf = (boxes: OrientedBoxes, i: number): number => boxes[boxSize * i + 4] as number;

/** Puts at `i` a rectangle round an edge: round its chord and how far an arc bows from it, or the circle beyond a half. */
export function storeBoxOfEdge(boxes: OrientedBoxes, i: number, edge: Edge): void {
  const { a, b } = edge;
  if (edge.kind === 'arc' && Math.abs(edge.sweepRad) > Math.PI) {
    storeBox(boxes, i, edge.centre.x, edge.centre.y, 1, 0, edge.radius, edge.radius);
    return;
  }
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  const chord = Math.sqrt(dx * dx + dy * dy);
  const x = dx / chord;
  const y = dy / chord;
  // the arc bows by ½·chord·tan(¼ sweep), to the right where it runs anticlockwise
  const bow = (chord / 2) * bulgeOf(edge);
  const middleX = (a.x + b.x) / 2;
  const middleY = (a.y + b.y) / 2;
  storeBox(boxes, i, middleX + (y * bow) / 2, middleY - (x * bow) / 2, x, y, chord / 2, Math.abs(bow) / 2);
}

function storeBox(
  boxes: OrientedBoxes,
  i: number,
  centreX: number,
  centreY: number,
  directionX: number,
  directionY: number,
  along: number,
  across: number,
): void {
  const at = boxSize * i;
  boxes[at] = centreX;
  boxes[at + 1] = centreY;
  boxes[at + 2] = directionX;
  boxes[at + 3] = directionY;
  boxes[at + 4] = along;
  boxes[at + 5] = across;
}

/** Puts at `i` a rectangle round those at `a` and `b`, lying as the longer of them. */
export function storeBoxAround(boxes: OrientedBoxes, i: number, a: number, b: number): void {
  const isLonger = alongOf(boxes, a) >= alongOf(boxes, b);
  const [longer, other] = isLonger ? [boxSize * a, boxSize * b] : [boxSize * b, boxSize * a];
  const [x, y] = [boxes[longer + 2] as number, boxes[longer + 3] as number];
  const [dx, dy] = [
    (boxes[other] as number) - (boxes[longer] as number),
    (boxes[other + 1] as number) - (boxes[longer + 1] as number),
  ];
  const [u, v] = [dx * x + dy * y, dy * x - dx * y];
  const [along, across] = [boxes[longer + 4] as number, boxes[longer + 5] as number];
  const [otherAlong, otherAcross] = [boxes[other + 4] as number, boxes[other + 5] as number];
  const cosine = Math.abs((boxes[other + 2] as number) * x + (boxes[other + 3] as number) * y);
  const sine = Math.abs((boxes[other + 2] as number) * y - (boxes[other + 3] as number) * x);
  const [reachU, reachV] = [otherAlong * cosine + otherAcross * sine, otherAlong * sine + otherAcross * cosine];
  const [fromU, toU] = [Math.min(-along, u - reachU), Math.max(along, u + reachU)];
  const [fromV, toV] = [Math.min(-across, v - reachV), Math.max(across, v + reachV)];
  const [midU, midV] = [(fromU + toU) / 2, (fromV + toV) / 2];
  const at = boxSize * i;
  boxes[at] = (boxes[longer] as number) + x * midU - y * midV;
  boxes[at + 1] = (boxes[longer + 1] as number) + y * midU + x * midV;
  boxes[at + 2] = x;
  boxes[at + 3] = y;
  boxes[at + 4] = (toU - fromU) / 2;
  boxes[at + 5] = (toV - fromV) / 2;
}

/** Whether two rectangles of a row come within a distance of one another: no side of either parts them by more. */
export const boxesComeWithin = (boxes: OrientedBoxes, a: number, b: number, withinMm: number): boolean =>
  !isPartedBySidesOf(boxes, boxSize * a, boxSize * b, withinMm) &&
  !isPartedBySidesOf(boxes, boxSize * b, boxSize * a, withinMm);

function isPartedBySidesOf(boxes: OrientedBoxes, a: number, b: number, withinMm: number): boolean {
  const x = boxes[a + 2] as number;
  const y = boxes[a + 3] as number;
  const dx = (boxes[b] as number) - (boxes[a] as number);
  const dy = (boxes[b + 1] as number) - (boxes[a + 1] as number);
  const along = boxes[b + 4] as number;
  const across = boxes[b + 5] as number;
  const cosine = Math.abs((boxes[b + 2] as number) * x + (boxes[b + 3] as number) * y);
  const sine = Math.abs((boxes[b + 2] as number) * y - (boxes[b + 3] as number) * x);
  return (
    Math.abs(dx * x + dy * y) > (boxes[a + 4] as number) + (along * cosine + across * sine) + withinMm ||
    Math.abs(dy * x - dx * y) > (boxes[a + 5] as number) + (along * sine + across * cosine) + withinMm
  );
}

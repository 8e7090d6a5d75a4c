import { type Edge, pointOnEdge } from '../../geometry/plane/edge.ts';
import { type Box, boxesMeet } from '../../geometry/plane/edge-box.ts';
import { edgesOfRegion } from '../../geometry/plane/loop.ts';
import { distance, type Vec, vec } from '../../geometry/plane/vec.ts';
import { boxOfPoint, boxOfPoints, grown, middleOf } from './frame.ts';
import { crossingsAt } from './hatch.ts';
import { boxOfMark, boxOfText } from './marks.ts';
import { type Layer, type Mark, onSheet, type Scene, type View } from './scene.ts';
import { styleOf } from './styles.ts';
import type { WidthOfText } from './text-size.ts';

/** A tile of a drawing; columns count from the left and rows from the top, from 1. */
export interface Tile {
  readonly column: number;
  readonly row: number;
}

interface Cell extends Tile {
  /** On the sheet, mm. */
  readonly box: Box;
}

/** The tiles between joins, in mm from the left and from the top, on which a drawing leaves any ink, row by row. */
export function inkedTiles(
  { widthMm, heightMm, views }: Pick<Scene, 'widthMm' | 'heightMm' | 'views'>,
  columnJoins: readonly number[],
  rowJoins: readonly number[],
  widthOf: WidthOfText,
): Tile[] {
  const [lefts, rights] = [
    [0, ...columnJoins],
    [...columnJoins, widthMm],
  ];
  const [tops, feet] = [
    [0, ...rowJoins],
    [...rowJoins, heightMm],
  ];
  const cells = tops.flatMap((top, r) =>
    lefts.map((left, c): Cell => {
      const [minX, maxX] = [left, rights[c] as number];
      return {
        column: c + 1,
        row: r + 1,
        box: { minX, maxX, minY: heightMm - (feet[r] as number), maxY: heightMm - top },
      };
    }),
  );
  let blank: readonly Cell[] = cells;
  for (const view of views) {
    for (const layer of view.layers) {
      for (const mark of layer.marks) {
        const near = blank.filter(({ box }) => mayReach(mark, layer, view, box));
        const inked = new Set(inkedBy(mark, layer, view, near, widthOf));
        blank = blank.filter((cell) => !inked.has(cell));
      }
    }
  }
  return cells.filter((cell) => !blank.includes(cell)).map(({ column, row }) => ({ column, row }));
}

const sheetBox = (view: View, { minX, minY, maxX, maxY }: Box): Box =>
  boxOfPoints([onSheet(view, vec(minX, minY)), onSheet(view, vec(maxX, maxY))]);

/** Whether a mark, as far as its view's clip lets it show, could leave ink in a box of the sheet. */
function mayReach(mark: Mark, { role }: Layer, view: View, box: Box): boolean {
  const { clip } = view;
  if (!boxesMeet(sheetBox(view, boxOfMark(mark, view.scale)), box, 0)) return false;
  if (clip === null || !styleOf(role).clipped) return true;
  return boxesMeet(sheetBox(view, grown(boxOfPoint(clip.centre), clip.radiusMm)), box, 0);
}

/** Lines are looked at in steps as long as this, mm on the sheet. */
const stepMm = 2;

function inkedBy(
  mark: Mark,
  { role }: Layer,
  view: View,
  cells: readonly Cell[],
  widthOf: WidthOfText,
): readonly Cell[] {
  if (cells.length === 0) return [];
  if (mark.kind === 'text') {
    const words = sheetBox(view, boxOfText(mark, view.scale, widthOf));
    return cells.filter(({ box }) => boxesMeet(words, box, 0));
  }
  const edges = edgesOfMark(mark);
  const isFilled = mark.kind === 'hatch' || (mark.kind === 'outline' && (styleOf(role).fill?.opacity ?? 0) > 0);
  const steps = edges.flatMap((edge) => stepsAlong(edge, view));
  return cells.filter(
    ({ box }) => steps.some((step) => boxesMeet(step, box, 0)) || (isFilled && isInside(edges, view, middleOf(box))),
  );
}

function edgesOfMark(mark: Exclude<Mark, { kind: 'text' }>): readonly Edge[] {
  const joined = (points: readonly Vec[]): Edge[] =>
    points.slice(1).map((b, i) => ({ kind: 'line', a: points[i] as Vec, b }));
  switch (mark.kind) {
    case 'outline':
    case 'hatch':
      return edgesOfRegion(mark.loops);
    case 'run':
      return mark.edges;
    case 'polyline':
      return joined(mark.points);
    case 'arrow':
      return joined([mark.from, mark.to]);
  }
}

function stepsAlong(edge: Edge, view: View): Box[] {
  const lengthMm = edge.kind === 'line' ? distance(edge.a, edge.b) : edge.radius * Math.abs(edge.sweepRad);
  const count = Math.max(1, Math.ceil((lengthMm * view.scale) / stepMm));
  const at = (i: number): Vec => onSheet(view, pointOnEdge(edge, i / count));
  return Array.from({ length: count }, (_, i) => boxOfPoints([at(i), at(i + 1)]));
}

/** Whether a place of the sheet lies inside what some edges bound; a cell no edge runs through lies all in or all out. */
function isInside(edges: readonly Edge[], { at, scale }: View, { x, y }: Vec): boolean {
  const left = crossingsAt(edges, (y - at.y) / scale).filter((crossing) => at.x + scale * crossing < x);
  return left.length % 2 === 1;
}

import type { Edge } from '../../geometry/plane/edge.ts';
import { type Box, boxAround, boxAroundEdges } from '../../geometry/plane/edge-box.ts';
import { circleLoop, polygonLoop, type Region } from '../../geometry/plane/loop.ts';
import { boxOfRegion } from '../../geometry/plane/region-box.ts';
import { type Vec, vec } from '../../geometry/plane/vec.ts';
import { boxOfPoints, grown, rectangle } from './frame.ts';
import {
  type Layer,
  type Mark,
  type OutlineMark,
  onSheet,
  type PolylineMark,
  type Scene,
  type TextMark,
  type View,
} from './scene.ts';
import type { Role } from './styles.ts';
import { textWidthMm, type WidthOfText } from './text-size.ts';

export const outline = (loops: Region): OutlineMark => ({ kind: 'outline', loops });

export const box = (box: Box): OutlineMark => outline([polygonLoop(rectangle(box))]);

export const circle = (centre: Vec, radius: number): OutlineMark => outline([circleLoop(centre, radius)]);

export const line = (...points: readonly Vec[]): PolylineMark => ({ kind: 'polyline', points });

export const run = (edges: readonly Edge[]): Mark => ({ kind: 'run', edges });

/** Two lines that cross at a point, so far each way. */
export const cross = (at: Vec, reachMm: number): readonly PolylineMark[] => [
  line(vec(at.x - reachMm, at.y), vec(at.x + reachMm, at.y)),
  line(vec(at.x, at.y - reachMm), vec(at.x, at.y + reachMm)),
];

interface TextOptions {
  readonly anchor?: TextMark['anchor'];
  readonly bold?: boolean;
}

export const text = (
  at: Vec,
  words: string,
  sizeMm: number,
  { anchor = 'start', bold = false }: TextOptions = {},
): TextMark => ({ kind: 'text', at, text: words, sizeMm, anchor, bold });

export const layer = (role: Role, marks: readonly Mark[]): Layer => ({ role, marks });

/** From the base line up and down, in font sizes. */
const ascent = 0.78;
const descent = 0.24;

/** The room a line of text takes up in its view's own frame. */
export function boxOfText(
  { at, text, sizeMm, anchor, bold }: TextMark,
  scale = 1,
  widthOf: WidthOfText = textWidthMm,
): Box {
  const size = sizeMm / scale;
  const width = widthOf(text, size, bold);
  const minX = at.x - (anchor === 'start' ? 0 : anchor === 'middle' ? width / 2 : width);
  return { minX, maxX: minX + width, minY: at.y - descent * size, maxY: at.y + ascent * size };
}

/** Between words and hatching, in font sizes. */
const aroundEms = 0.2;

/** The room that hatching leaves to the words of a view, in its own frame. */
export const groundsOfWords = ({ layers, scale }: Pick<View, 'layers' | 'scale'>): Box[] =>
  layers.flatMap(({ marks }) =>
    marks.flatMap((mark) =>
      mark.kind === 'text' ? [grown(boxOfText(mark, scale), (aroundEms * mark.sizeMm) / scale)] : [],
    ),
  );

/** The room that every line of text of a scene takes up on its sheet. */
export const wordBoxes = ({ views }: Pick<Scene, 'views'>, widthOf: WidthOfText = textWidthMm): Box[] =>
  views.flatMap((view) =>
    view.layers.flatMap(({ marks }) =>
      marks.flatMap((mark) => {
        if (mark.kind !== 'text') return [];
        return [boxOfText({ ...mark, at: onSheet(view, mark.at) }, 1, widthOf)];
      }),
    ),
  );

/** The room a mark takes up in its view's own frame, width of lines aside. */
export function boxOfMark(mark: Mark, scale = 1): Box {
  switch (mark.kind) {
    case 'outline':
    case 'hatch':
      return boxOfRegion(mark.loops);
    case 'run':
      return boxAroundEdges(mark.edges);
    case 'polyline':
      return boxOfPoints(mark.points);
    case 'arrow':
      return boxOfPoints([mark.from, mark.to]);
    case 'text':
      return boxOfText(mark, scale);
  }
}

export const boxOfLayers = (layers: readonly Layer[], scale = 1): Box =>
  boxAround(layers.flatMap(({ marks }) => marks.map((mark) => boxOfMark(mark, scale))));

/** Layers without empty ones, those of one role made one at the place of the last. */
export function gathered(layers: readonly Layer[]): readonly Layer[] {
  const marksOf = new Map<Role, Mark[]>();
  for (const { role, marks } of layers) {
    if (marks.length === 0) continue;
    const all = [...(marksOf.get(role) ?? []), ...marks];
    marksOf.delete(role);
    marksOf.set(role, all);
  }
  return [...marksOf].map(([role, marks]) => ({ role, marks }));
}

/** A view at true scale that takes up what its layers take up. */
export function viewOf(id: string, layers: readonly Layer[]): View {
  const all = gathered(layers);
  return { id, at: vec(0, 0), scale: 1, frame: boxOfLayers(all), clip: null, layers: all };
}

import type { PDFFont } from 'pdf-lib';
import type { Box } from '../../geometry/plane/edge-box.ts';
import { circleLoop, edgesOf } from '../../geometry/plane/loop.ts';
import { add, type Vec, vec } from '../../geometry/plane/vec.ts';
import { hatchSegments } from '../scene/hatch.ts';
import { groundsOfWords } from '../scene/marks.ts';
import {
  type ArrowMark,
  type Layer,
  type Mark,
  onSheet,
  type Scene,
  type TextMark,
  type View,
} from '../scene/scene.ts';
import { dashesMm, type Ink, paperInks, type Style, styleOf } from '../scene/styles.ts';
import { headPoints } from '../svg/svg-marks.ts';
import { number } from '../svg/svg-paint.ts';
import { edgesPath, linePath, type PointMap, pair } from './pdf-path.ts';
import { winAnsi } from './pdf-text.ts';

/** The fonts of a document, and the names its content knows them by. */
export interface Lettering {
  readonly plain: PDFFont;
  readonly bold: PDFFont;
  readonly slanted: PDFFont;
}

export const fontNames = { plain: 'F1', bold: 'F2', slanted: 'F3' } as const;

/** Every opacity a scene fills with, by the name its content knows it by. */
export const opacitiesOf = (scene: Scene): ReadonlyMap<string, number> =>
  new Map(
    scene.views
      .flatMap(({ layers }) => layers.map(({ role }) => styleOf(role).fill?.opacity ?? 1))
      .filter((opacity) => opacity < 1)
      .map((opacity) => [opacityName(opacity), opacity]),
  );

const opacityName = (opacity: number): string => `O${Math.round(opacity * 1000)}`;

/** A scene as PDF operators in its own mm, y up, arcs as cubic curves. */
export const sceneOperators = (scene: Scene, fonts: Lettering): string =>
  scene.views
    .flatMap((view) => {
      const words = groundsOfWords(view);
      return view.layers.map((layer) => layerOperators(layer, view, words, scene, fonts));
    })
    .join('\n');

interface Painting {
  readonly place: PointMap;
  readonly scale: number;
  readonly penMm: number;
  readonly style: Style;
  readonly words: readonly Box[];
  readonly fonts: Lettering;
}

function layerOperators(
  { role, marks }: Layer,
  view: View,
  words: readonly Box[],
  { penMm }: Scene,
  fonts: Lettering,
): string {
  const style = styleOf(role);
  const painting = { place: (p: Vec) => onSheet(view, p), scale: view.scale, penMm, style, words, fonts };
  return [
    'q 1 j',
    ...(view.clip !== null && style.clipped
      ? [edgesPath(edgesOf(circleLoop(view.clip.centre, view.clip.radiusMm)), painting.place, view.scale), 'h W n']
      : []),
    ...linePaint(style, penMm),
    ...fillPaint(style),
    ...marks.map((mark) => markOperators(mark, painting)),
    'Q',
  ].join('\n');
}

function linePaint({ line }: Style, penMm: number): string[] {
  if (line === null) return [];
  const dashes = dashesMm(line.kind, penMm).map(number).join(' ');
  const cap = line.kind === 'dotted' ? ['1 J'] : [];
  return [`${colour(line.ink)} RG`, `${number(line.pens * penMm)} w`, `[${dashes}] 0 d`, ...cap];
}

function fillPaint({ fill }: Style): string[] {
  if (fill === null) return [];
  return [`${colour(fill.ink)} rg`, ...(fill.opacity < 1 ? [`/${opacityName(fill.opacity)} gs`] : [])];
}

/** An ink as red, green and blue from 0 to 1. */
export const colour = (ink: Ink): string =>
  [1, 3, 5].map((i) => number(Number.parseInt(paperInks[ink].slice(i, i + 2), 16) / 255)).join(' ');

function markOperators(mark: Mark, painting: Painting): string {
  const { place, scale, style } = painting;
  switch (mark.kind) {
    case 'outline':
      return `${mark.loops.map((loop) => `${edgesPath(edgesOf(loop), place, scale)}\nh`).join('\n')}\n${closedPaint(style)}`;
    case 'run':
      return `${edgesPath(mark.edges, place, scale)}\nS`;
    case 'polyline':
      return `${linePath(mark.points, place)}\nS`;
    case 'hatch': {
      const lines = hatchSegments(mark.loops, mark.angleRad, mark.pitchMm / scale, painting.words);
      return lines.length === 0 ? '' : `${lines.map((line) => linePath(line, place)).join('\n')}\nS`;
    }
    case 'arrow':
      return arrowOperators(mark, painting);
    case 'text':
      return textOperators(mark, painting);
  }
}

const closedPaint = ({ line, fill }: Style): string => {
  if (fill === null || fill.opacity === 0) return line === null ? 'n' : 'S';
  return line === null ? 'f*' : 'B*';
};

function arrowOperators({ from, to, heads }: ArrowMark, { place, penMm }: Painting): string {
  const [a, b] = [place(from), place(to)];
  const points = [headPoints(a, b, penMm), ...(heads === 'both' ? [headPoints(b, a, penMm)] : [])];
  const there: PointMap = (p) => p;
  return [`${linePath([a, b], there)}\nS`, ...points.map((head) => `${linePath(head, there)}\nh f`)].join('\n');
}

function textOperators({ at, text, sizeMm, anchor, bold }: TextMark, { place, style, fonts }: Painting): string {
  const face = bold ? 'bold' : style.slanted ? 'slanted' : 'plain';
  const words = winAnsi(text);
  const width = fonts[face].widthOfTextAtSize(words, sizeMm);
  const back = anchor === 'start' ? 0 : anchor === 'middle' ? width / 2 : width;
  const start = add(place(at), vec(-back, 0));
  const shown = `/${fontNames[face]} ${number(sizeMm)} Tf ${pair(start)} Td ${fonts[face].encodeText(words).toString()} Tj`;
  // a rim of paper first, so that letters stay legible where they cross a line
  return [`q ${colour('paper')} RG ${number(0.2 * sizeMm)} w [] 0 d BT 1 Tr ${shown} ET Q`, `BT 0 Tr ${shown} ET`].join(
    '\n',
  );
}

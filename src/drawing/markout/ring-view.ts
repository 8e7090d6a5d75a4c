import { boxAround, boxesMeet } from '../../geometry/plane/edge-box.ts';
import { type Vec, vec } from '../../geometry/plane/vec.ts';
import { boxOfPoint, grown } from '../scene/frame.ts';
import { boxOfMark, boxOfText, circle, gathered, layer, text } from '../scene/marks.ts';
import type { Layer, View } from '../scene/scene.ts';
import { wrapText } from '../scene/text-size.ts';
import { sheetSizes } from './template-sheet.ts';

/** A round part of the casting that is shown larger. */
export interface Ring {
  readonly id: string;
  readonly centre: Vec;
  /** On paper, mm. */
  readonly ringMm: number;
  readonly scale: number;
  readonly title: string;
  readonly words: string;
}

/** What some layers show in a ring, with its title and scale and some words under it; `over` is not cut off by it. */
export function ringView(ring: Ring, layers: readonly Layer[], over: readonly Layer[] = []): View {
  const { id, centre, ringMm, scale, title, words } = ring;
  const { textMm, smallMm } = sheetSizes;
  const radiusMm = ringMm / scale;
  const within = grown(boxOfPoint(centre), radiusMm);
  const at = vec(centre.x - radiusMm, centre.y - radiusMm - (1.5 * textMm) / scale);
  const caption = [
    text(at, `${title}   ${scale} : 1`, textMm, { bold: true }),
    ...wrapText(words, smallMm, 2 * ringMm).map((line, i) =>
      text(vec(at.x, at.y - ((1.3 + 1.2 * i) * textMm) / scale), line, smallMm),
    ),
  ];
  const seen = layers.map(({ role, marks }) =>
    layer(
      role,
      marks.filter((mark) => boxesMeet(boxOfMark(mark), within, 0)),
    ),
  );
  return {
    id,
    at: vec(0, 0),
    scale,
    frame: boxAround([within, ...caption.map((mark) => boxOfText(mark, scale))]),
    clip: { centre, radiusMm },
    layers: gathered([...seen, layer('detail-ring', [circle(centre, radiusMm)]), layer('text', caption), ...over]),
  };
}

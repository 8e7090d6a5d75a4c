import { vec } from '../geometry/vec.ts';
import { box, layer, text, viewOf } from './marks.ts';
import type { View } from './scene.ts';
import type { Sizes } from './sizes.ts';

const lengths = [100, 50, 20, 10, 5, 2, 1];

/** A bar of true length to lay a rule on: the longest usual one that is no wider than `roomMm`, 100 mm at most. */
export function scaleBar(roomMm: number, { textMm }: Sizes): View {
  const longMm = lengths.find((length) => length <= roomMm) ?? 1;
  const height = 0.5 * textMm;
  const tenth = longMm / 10;
  const blocks = Array.from({ length: 5 }, (_, i) =>
    box({ minX: 2 * i * tenth, maxX: (2 * i + 1) * tenth, minY: 0, maxY: height }),
  );
  const layers = [
    layer('frame', [box({ minX: 0, maxX: longMm, minY: 0, maxY: height })]),
    layer('scale-block', blocks),
    layer('text', [
      text(vec(0, height + 0.5 * textMm), '0', textMm, { anchor: 'middle' }),
      text(vec(longMm, height + 0.5 * textMm), `${longMm} mm`, textMm, { anchor: 'middle' }),
      text(vec(longMm + 3 * textMm, 0), '1:1 when printed at 100 %', textMm),
    ]),
  ];
  return viewOf('scale-bar', layers);
}

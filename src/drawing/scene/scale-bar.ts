import { vec } from '../../geometry/plane/vec.ts';
import { mmIn } from '../../job/length-text.ts';
import type { Units } from '../../job/lengths.ts';
import { box, layer, text, viewOf } from './marks.ts';
import type { View } from './scene.ts';
import type { Sizes } from './sizes.ts';

/** Lengths that a bar may have in such units, the longest first, and into how many blocks it is parted. */
const bars = {
  mm: { lengths: [100, 50, 20, 10, 5, 2, 1], blocks: 10 },
  in: { lengths: [4, 2, 1, 0.5, 0.25, 0.125], blocks: 8 },
} as const satisfies Record<Units, unknown>;

/** A bar of true length to lay a rule on: the longest usual one that is no wider than `roomMm`, 100 mm or 4 in at most. */
export function scaleBar(roomMm: number, units: Units, { textMm }: Sizes): View {
  const { lengths, blocks: parts } = bars[units];
  const long = lengths.find((length) => length * mmIn(units) <= roomMm) ?? lengths[lengths.length - 1] ?? 1;
  const longMm = long * mmIn(units);
  const height = 0.5 * textMm;
  const partMm = longMm / parts;
  const blocks = Array.from({ length: parts / 2 }, (_, i) =>
    box({ minX: 2 * i * partMm, maxX: (2 * i + 1) * partMm, minY: 0, maxY: height }),
  );
  const layers = [
    layer('frame', [box({ minX: 0, maxX: longMm, minY: 0, maxY: height })]),
    layer('scale-block', blocks),
    layer('text', [
      text(vec(0, height + 0.5 * textMm), '0', textMm, { anchor: 'middle' }),
      text(vec(longMm, height + 0.5 * textMm), `${long} ${units}`, textMm, { anchor: 'middle' }),
      text(vec(longMm + 3 * textMm, 0), '1:1 when printed at 100 %', textMm),
    ]),
  ];
  return viewOf('scale-bar', layers);
}

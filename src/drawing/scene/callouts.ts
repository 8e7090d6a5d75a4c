import { type Box, boxAround } from '../../geometry/plane/edge-box.ts';
import { type Vec, vec } from '../../geometry/plane/vec.ts';
import { boxOfText, circle, layer, line, text } from './marks.ts';
import type { Layer, Mark, TextMark } from './scene.ts';
import type { Sizes } from './sizes.ts';
import { fitText } from './text-size.ts';

/** Words about a place, written beside the drawing with a leader to it. */
export interface Callout {
  /** Any of these places will do. */
  readonly anchors: readonly Vec[];
  readonly title: string;
  readonly detail: string | null;
  readonly role: 'text' | 'moving-text';
}

type Side = 'left' | 'right';

interface AnchoredCallout extends Callout {
  readonly at: Vec;
  readonly side: Side;
}

const lineHeight = 1.18;
const gapBetween = 0.55;

/**
 * Callouts in a column on either side of a drawing, in the order of the places they point at, each as near to its own
 * height as the others leave room for. The columns begin clear of `around`.
 */
export function placeCallouts(
  callouts: readonly Callout[],
  around: Box,
  sizes: Sizes,
  sides: readonly Side[] = ['left', 'right'],
): { readonly layers: readonly Layer[]; readonly box: Box } {
  const anchored = anchorAll(callouts, around, sizes, sides);
  const columns = sides.map((side) => column(side, anchored, around, sizes));
  const layers = columns.flat();
  const texts = layers.flatMap(({ marks }) => marks.filter((mark): mark is TextMark => mark.kind === 'text'));
  return { layers, box: boxAround([around, ...texts.map((mark) => boxOfText(mark))]) };
}

/** Each callout takes the place nearest a column that is not crowded by the callouts before it. */
function anchorAll(
  callouts: readonly Callout[],
  around: Box,
  { textMm }: Sizes,
  sides: readonly Side[],
): AnchoredCallout[] {
  const placed: AnchoredCallout[] = [];
  const roomMm = 3.2 * textMm;
  for (const callout of [...callouts].sort((a, b) => a.anchors.length - b.anchors.length)) {
    let best: AnchoredCallout | null = null;
    let least = Number.POSITIVE_INFINITY;
    for (const side of sides) {
      const others = placed.filter((other) => other.side === side);
      for (const at of callout.anchors) {
        const across = side === 'left' ? at.x - around.minX : around.maxX - at.x;
        const crowding = others.reduce((sum, other) => sum + Math.max(0, roomMm - Math.abs(other.at.y - at.y)), 0);
        const cost = across + 2 * crowding;
        if (cost < least) [least, best] = [cost, { ...callout, at, side }];
      }
    }
    if (best !== null) placed.push(best);
  }
  return placed;
}

const linesIn = (callout: Callout): number => (callout.detail === null ? 1 : 2);

function column(side: Side, anchored: readonly AnchoredCallout[], around: Box, sizes: Sizes): Layer[] {
  const { textMm } = sizes;
  const mine = anchored.filter((callout) => callout.side === side).sort((a, b) => b.at.y - a.at.y);
  const heights = mine.map((callout) => (linesIn(callout) * lineHeight + gapBetween) * textMm);
  const middles = spread(
    mine.map(({ at }) => at.y),
    heights,
  );
  const out = side === 'left' ? -1 : 1;
  const edge = side === 'left' ? around.minX : around.maxX;
  const x = edge + out * 2.2 * textMm;
  return mine.flatMap((callout, i) => calloutLayers(callout, vec(x, middles[i] as number), out, sizes));
}

/** Widest line of a callout, in font sizes. */
const widestEms = 22;

function calloutLayers(callout: AnchoredCallout, middle: Vec, out: 1 | -1, { textMm }: Sizes): Layer[] {
  const anchor = out === 1 ? 'start' : 'end';
  const top = middle.y + ((linesIn(callout) - 1) * lineHeight * textMm) / 2 - 0.3 * textMm;
  const title = fitText(callout.title, textMm, widestEms * textMm, true);
  const words: Mark[] = [text(vec(middle.x, top), title, textMm, { anchor, bold: true })];
  if (callout.detail !== null)
    words.push(
      text(vec(middle.x, top - lineHeight * textMm), fitText(callout.detail, textMm, widestEms * textMm), textMm, {
        anchor,
      }),
    );
  const near = vec(middle.x - out * 0.4 * textMm, middle.y);
  const shoulder = vec(middle.x - out * 1.2 * textMm, middle.y);
  return [
    layer('leader', [line(near, shoulder, callout.at), circle(callout.at, 0.16 * textMm)]),
    layer(callout.role, words),
  ];
}

/**
 * Middles for boxes stacked downwards, each as near as can be to where it would like to be: least squares under an
 * order, by pooling neighbours that would overlap.
 */
export function spread(wanted: readonly number[], heights: readonly number[]): number[] {
  // once what lies above is taken off, stacked boxes only have to keep their order
  const above = heights.map((height, i) => heights.slice(0, i).reduce((sum, h) => sum + h, 0) + height / 2);
  const pools: { sum: number; count: number }[] = [];
  wanted.forEach((y, i) => {
    let pool = { sum: y + (above[i] as number), count: 1 };
    for (let last = pools.at(-1); last !== undefined && meanOf(last) < meanOf(pool); last = pools.at(-1)) {
      pool = { sum: last.sum + pool.sum, count: last.count + pool.count };
      pools.pop();
    }
    pools.push(pool);
  });
  const tops = pools.flatMap((pool) => Array.from({ length: pool.count }, () => meanOf(pool)));
  return tops.map((top, i) => top - (above[i] as number));
}

const meanOf = ({ sum, count }: { readonly sum: number; readonly count: number }): number => sum / count;

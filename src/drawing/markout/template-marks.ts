import { boxAroundEdges } from '../../geometry/plane/edge-box.ts';
import { edgesOfRegion } from '../../geometry/plane/loop.ts';
import { add, distance, scale, sub, type Vec, vec } from '../../geometry/plane/vec.ts';
import { edgesThrough } from '../../geometry/polygons/arcs-of-run.ts';
import { loopsOf, type Polygons } from '../../geometry/polygons/polygons.ts';
import type { Hole } from '../../job/casting.ts';
import { givenLength } from '../../job/length-text.ts';
import type { Units } from '../../job/lengths.ts';
import type { BenchPlace } from '../../markout/marking-out-bench.ts';
import type { Run } from '../../markout/marking-out-edges.ts';
import { plyOutline } from '../../markout/ply-outline.ts';
import { arcsWithinMm } from '../../plan/bands/tolerance.ts';
import { crossingsAt } from '../scene/hatch.ts';
import { circle, cross, layer, line, text } from '../scene/marks.ts';
import type { Layer, Mark } from '../scene/scene.ts';
import { sheetSizes } from './template-sheet.ts';

/** How far the arms of a punching cross reach past a hole, mm. */
const pastMm = 3;
const leastHoleRadiusMm = 2.5;

/** A cross to punch through, the hole it stands in, and its name: above it, or on its side towards a place. */
export function punchCross(at: Vec, radiusMm: number, name: string, towards: Vec | null = null): Layer[] {
  const { textMm } = sheetSizes;
  const radius = Math.max(radiusMm, leastHoleRadiusMm);
  const reach = radius + pastMm;
  const way = towards === null ? vec(0, 1) : scale(sub(towards, at), 1 / Math.max(1e-9, distance(towards, at)));
  const words = add(at, scale(way, reach + textMm * (1 + 2 * Math.abs(way.x))));
  return [
    layer('hole', [circle(at, radius), ...cross(at, reach)]),
    layer('text', [text(vec(words.x, words.y - textMm / 3), name, textMm, { anchor: 'middle', bold: true })]),
  ];
}

export const holeCross = (hole: Hole, units: Units): Layer[] =>
  punchCross(hole.at, (hole.diameterMm ?? 0) / 2, holeWords(hole, units));

/** `dowel D1 Ø14 mm`, `B4 M12x1.75`, or only its name. */
export function holeWords({ id, kind, diameterMm, thread }: Hole, units: Units): string {
  const size = thread ?? (diameterMm === null ? '' : `Ø${givenLength(diameterMm, units)}`);
  return `${kind === 'dowel' ? 'dowel ' : ''}${id} ${size}`.trim();
}

/** Lines to cut to, wide. */
export const wideRuns = (runs: readonly Run[]): Layer =>
  layer(
    'fixed',
    runs.map(({ points }) => asRun(points)),
  );

/** Lines as edges, arcs as arcs, so that none of them is filled. */
export const asRun = (points: readonly Vec[]): Mark => ({ kind: 'run', edges: edgesThrough(points, arcsWithinMm) });

/** The outlines of a piece of ply, narrow. */
export const plyEdge = (outline: Polygons): Layer =>
  layer(
    'frame',
    plyOutline(outline).map((loop) => ({ kind: 'outline', loops: [loop] })),
  );

const tickMm = 1.5;
const numberInMm = 3.2;

/** The numbers of the marking-out table beside their places, in the metal that stays; where they crowd, some are left out. */
export function placeNumbers(places: readonly BenchPlace[]): Layer[] {
  const into = ({ at, inward }: BenchPlace, mm: number): Vec => add(at, scale(inward, mm));
  const numbered: BenchPlace[] = [];
  for (const place of places.toSorted((a, b) => rank(a) - rank(b))) {
    if (numbered.every((other) => distance(other.at, place.at) > sheetSizes.smallMm)) numbered.push(place);
  }
  return [
    layer(
      'leader',
      places.map((place) => line(place.at, into(place, tickMm))),
    ),
    layer(
      'text',
      numbered.map((place) => {
        const { x, y } = into(place, numberInMm);
        return text(vec(x, y - sheetSizes.smallMm / 3), String(place.row.place), sheetSizes.smallMm, {
          anchor: 'middle',
        });
      }),
    ),
  ];
}

/** Extremes before steps. */
const rank = ({ row }: BenchPlace): number => (row.kind === 'step' ? 1 : 0);

/** A place inside a piece to write its name: the middle of its widest level stretch half-way up. */
export function insideOf(outline: Polygons): Vec {
  const edges = edgesOfRegion(loopsOf(outline));
  const { minY, maxY } = boxAroundEdges(edges);
  const y = (minY + maxY) / 2;
  const xs = crossingsAt(edges, y);
  let widest: readonly [number, number] = [xs[0] ?? 0, xs[1] ?? 0];
  for (let i = 2; i + 1 < xs.length; i += 2) {
    const [from, to] = [xs[i] as number, xs[i + 1] as number];
    if (to - from > widest[1] - widest[0]) widest = [from, to];
  }
  return vec((widest[0] + widest[1]) / 2, y);
}

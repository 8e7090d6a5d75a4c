import type { Region } from '../../geometry/plane/loop.ts';
import { loopsWithArcs } from '../../geometry/polygons/arcs-of-polygons.ts';
import type { Polygons } from '../../geometry/polygons/polygons.ts';
import { arcsWithinMm } from './tolerance.ts';

/** The three lines of a band as they are given out, drawn and cut to: of straight edges and true arcs. */
export interface CutLines {
  /** Holds the polygons proved. */
  readonly planned: Region;
  /** Lies in its polygons, and so in `planned`. */
  readonly first: Region;
  /** Holds its polygons, and so all but `boundMm` of `planned`, where the two run on one another. */
  readonly last: Region;
  /** How far any of them comes from its polygons. */
  readonly boundMm: number;
}

/** The polygons of a band's lines told by arcs: never less is planned than was proved, and none is first that need not go. */
export function cutLines(polygons: Readonly<Record<'planned' | 'first' | 'last', Polygons>>): CutLines {
  const planned = loopsWithArcs(polygons.planned, 'outside', arcsWithinMm);
  const first = loopsWithArcs(polygons.first, 'inside', arcsWithinMm);
  const last = loopsWithArcs(polygons.last, 'outside', arcsWithinMm);
  return {
    planned: planned.loops,
    first: first.loops,
    last: last.loops,
    boundMm: Math.max(planned.offMm, first.offMm, last.offMm),
  };
}

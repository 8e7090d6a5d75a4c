import { boxOfLayers, layer, outline } from '../../src/drawing/scene/marks.ts';
import type { SvgNode } from '../../src/drawing/svg/svg-marks.ts';
import type { Region } from '../../src/geometry/plane/loop.ts';
import type { Casting, DepthRange } from '../../src/job/casting.ts';
import type { Part } from '../../src/job/part.ts';
import type { Joint } from '../../src/joint/joint.ts';
import { thinned } from './thinned.ts';

/** From how low to how high a section reaches, mm. */
export type Heights = readonly [fromMm: number, toMm: number];

/** A named place of a part that both panes show, and that lights up in both. */
export interface NamedPlace {
  readonly part: Part;
  readonly kind: 'section' | 'hollow' | 'do-not-cut';
  readonly id: string;
  /** Its outline on the face, drawn no finer than a touch needs. */
  readonly face: SvgNode;
  /** Null where it stands at every depth, so that no side view has an end of it. */
  readonly depth: readonly [fromMm: number, toMm: number] | null;
  /** From how low to how high it reaches at home. */
  readonly heights: Heights;
}

/** As near as a finger or a pointer can tell, mm; sections are drawn within it too. */
const nearMm = 0.2;

/** The sections, hollows and places not to be cut of both parts. */
export function placesOf({ fixed, moving }: Pick<Joint, Part>, pathOf: (loops: Region) => SvgNode): NamedPlace[] {
  const seen = (part: NamedPlace['part'], kind: NamedPlace['kind'], places: readonly NamedRegion[]): NamedPlace[] =>
    places.map(({ id, loops, depth }) => {
      const { minY, maxY } = boxOfLayers([layer('fixed', [outline(loops)])]);
      const face = pathOf(thinned(loops, nearMm));
      return { part, kind, id, face, depth: depth && [depth.fromMm, depth.toMm], heights: [minY, maxY] };
    });
  const ofPart = (part: NamedPlace['part'], { sections, hollows, doNotCut }: Casting): NamedPlace[] => [
    ...seen(part, 'section', sections),
    ...seen(part, 'hollow', hollows),
    ...seen(part, 'do-not-cut', doNotCut),
  ];
  return [...ofPart('fixed', fixed), ...ofPart('moving', moving)];
}

interface NamedRegion {
  readonly id: string;
  readonly loops: Region;
  readonly depth: DepthRange | null;
}

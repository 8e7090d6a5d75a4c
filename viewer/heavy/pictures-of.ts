import { acrossOf } from '../../src/drawing/fit/across.ts';
import { bandsOf, type DrawInput, foulsOf } from '../../src/drawing/fit/draw-input.ts';
import { holeLayers } from '../../src/drawing/fit/hole-symbols.ts';
import { castingLayers, hatch, hatchRad, keepLayers, movingLayers } from '../../src/drawing/fit/plane-layers.ts';
import { sideLayers } from '../../src/drawing/fit/side-layers.ts';
import { boxOfLayers, layer, outline } from '../../src/drawing/scene/marks.ts';
import type { Layer } from '../../src/drawing/scene/scene.ts';
import { type Sizes, sizesFor } from '../../src/drawing/scene/sizes.ts';
import { paperInks, styleOf } from '../../src/drawing/scene/styles.ts';
import { markNodes, node, type SvgNode } from '../../src/drawing/svg/svg-marks.ts';
import type { Box } from '../../src/geometry/plane/edge-box.ts';
import { edgeCountOf, type Region } from '../../src/geometry/plane/loop.ts';
import { thinLoop } from '../../src/geometry/plane/thin-loop.ts';
import { vec } from '../../src/geometry/plane/vec.ts';
import type { Casting } from '../../src/job/casting.ts';
import { type NamedPlace, placesOf } from './places-of.ts';

/** One pane's picture: what stands still, and what moves with the moving part, drawn at home. */
export interface Picture {
  readonly still: readonly SvgNode[];
  readonly moving: readonly SvgNode[];
  readonly extent: Box;
}

/** A name on a pane, at a place of its plane, mm. */
export interface Label {
  readonly at: readonly [x: number, y: number];
  readonly text: string;
  readonly role: 'text' | 'moving-text';
  readonly rank: number;
}

/** The face picture with fewer vertices, nowhere further than `withinMm` from the outlines; finest first. */
export interface Coarser extends Omit<Picture, 'extent'> {
  readonly withinMm: number;
}

export interface Pictures {
  readonly face: Picture;
  /** Empty where the outlines are small enough to be drawn whole at any scale. */
  readonly coarser: readonly Coarser[];
  readonly side: Picture;
  readonly labels: readonly Label[];
  readonly places: readonly NamedPlace[];
  /** Which way depth runs in the side picture: x = sign · z. */
  readonly sideSign: 1 | -1;
}

/** Both panes of a joint, as elements for the page to make; colours and line widths are the page's. */
export function picturesOf(input: DrawInput): Pictures {
  const { fixed, moving } = input.joint;
  const outlines = [...fixed.sections, ...moving.sections].map(({ loops }) => outline(loops));
  const faceBox = boxOfLayers([layer('fixed', outlines)]);
  const sizes = sizesFor(Math.max(faceBox.maxX - faceBox.minX, faceBox.maxY - faceBox.minY));
  const face: Picture = { ...facePicture(input, sizes), extent: faceBox };
  const edges = edgeCountOf(outlines.flatMap(({ loops }) => loops));
  const coarser = edges <= fewEdges ? [] : coarserPictures(input, sizes);
  const across = acrossOf(input);
  const seen = sideLayers({ ...input, plan: null }, [], across, sizes);
  const isMoving = ({ role }: Layer): boolean => role === 'moving' || role === 'moving-beyond';
  const side: Picture = {
    still: nodesOf(seen.filter((one) => !isMoving(one))),
    moving: nodesOf(seen.filter(isMoving)),
    extent: boxOfLayers(seen),
  };
  const places = placesOf(input.joint, pathOf);
  return { face, coarser, side, labels: labelsOf(fixed, moving), places, sideSign: across.x(1) > 0 ? 1 : -1 };
}

/** Outlines of so few edges are drawn whole at any scale. */
const fewEdges = 2000;
/** Half a pixel from 25 px a mm down to the scale at which a job is seen from afar. */
const coarserMm = [0.02, 0.06, 0.2, 0.6];

function facePicture(input: DrawInput, sizes: Sizes): Omit<Picture, 'extent'> {
  const { fixed, moving, rotating } = input.joint;
  const holes = holeLayers(input.joint, sizes);
  const movingHoles = holes.filter(({ role }) => role === 'moving-hole');
  return {
    still: nodesOf([
      ...castingLayers(fixed),
      layer('room', input.room.length === 0 ? [] : [outline(input.room)]),
      ...keepLayers(fixed, sizes),
      layer(
        'rotating',
        rotating.flatMap(({ sections }) => sections.map(({ loops }) => outline(loops))),
      ),
      layer(
        'foul',
        foulsOf(input).map(({ loops }) => outline(loops)),
      ),
      ...holes.filter(({ role }) => role !== 'moving-hole'),
    ]),
    moving: nodesOf([...movingLayers(moving), ...keepLayers(moving, sizes), ...movingHoles]),
  };
}

/** Less is drawn, not less measured: only here are outlines thinned, each time those of the picture before it. */
function coarserPictures(input: DrawInput, sizes: Sizes): Coarser[] {
  let { joint } = input;
  return coarserMm.map((withinMm, i) => {
    const by = withinMm - (coarserMm[i - 1] ?? 0);
    joint = { ...joint, fixed: thinned(joint.fixed, by), moving: thinned(joint.moving, by) };
    return { withinMm, ...facePicture({ ...input, joint }, sizes) };
  });
}

const thinned = (casting: Casting, byMm: number): Casting => ({
  ...casting,
  sections: casting.sections.map((section) => ({
    ...section,
    loops: section.loops.map((loop) => thinLoop(loop, byMm)),
  })),
});

/** What a plan takes off, its first and last line, for both panes. */
export function cutPictures(input: DrawInput): {
  readonly face: readonly SvgNode[];
  readonly side: readonly SvgNode[];
} {
  const bands = bandsOf(input.plan);
  const sizes = sizesFor(400);
  const lines = (of: 'first' | 'last') => bands.map((band) => outline(band[of]));
  const across = acrossOf(input);
  const side = sideLayers(input, [], across, sizes).filter(({ role }) => role === 'relief' || role === 'relief-hatch');
  return {
    face: nodesOf([
      layer(
        'relief',
        bands.map(({ loops }) => outline(loops)),
      ),
      layer(
        'relief-hatch',
        bands.map(({ loops }) => hatch(loops, hatchRad, hatchPitchMm)),
      ),
      layer('last-line', lines('last')),
      layer('first-line', lines('first')),
    ]),
    side: nodesOf(side),
  };
}

const hatchPitchMm = 1.2;

const nodesOf = (layers: readonly Layer[]): SvgNode[] =>
  layers
    .filter(({ marks }) => marks.length > 0)
    .map(({ role, marks }) => {
      const placing = { place: downwards, scale: 1, penMm: 1, style: styleOf(role), paper: paperInks.paper };
      return node('g', { class: role }, ...marks.flatMap((mark) => markNodes(mark, placing)));
    });

/** An outline as one element, without a look of its own. */
const pathOf = (loops: Region): SvgNode => {
  const placing = { place: downwards, scale: 1, penMm: 1, style: styleOf('fixed'), paper: paperInks.paper };
  const [path] = markNodes(outline(loops), placing);
  const d = path?.attributes.d ?? '';
  return node('path', { d, 'fill-rule': 'evenodd' });
};

const downwards = ({ x, y }: { readonly x: number; readonly y: number }) => vec(x, 0 - y);

/** Dowels first, then sections, then the other holes: the order in which names give way to one another. */
function labelsOf(fixed: Casting, moving: Casting): Label[] {
  const named = (part: Casting, role: Label['role']): Label[] => [
    ...part.sections.flatMap(({ id, loops }): Label[] => {
      const [first] = loops;
      if (first === undefined) return [];
      const at =
        first.kind === 'circle'
          ? vec(first.centre.x, first.centre.y + first.radius)
          : first.vertices.reduce((best, v) => (v.y > best.y ? v : best));
      return [{ at: [at.x, at.y], text: id, role, rank: 1 }];
    }),
    ...part.holes.map(
      ({ id, at, kind }): Label => ({ at: [at.x, at.y], text: id, role, rank: kind === 'dowel' ? 0 : 2 }),
    ),
  ];
  return [...named(fixed, 'text'), ...named(moving, 'moving-text').filter(({ rank }) => rank === 1)].sort(
    (a, b) => a.rank - b.rank,
  );
}

import { type Across, acrossOf, bandBlocks } from '../../src/drawing/fit/across.ts';
import { bandsOf, type DrawInput, foulsOf } from '../../src/drawing/fit/draw-input.ts';
import { holeLayers } from '../../src/drawing/fit/hole-symbols.ts';
import { castingLayers, keepLayers, movingLayers } from '../../src/drawing/fit/plane-layers.ts';
import { sideLayers } from '../../src/drawing/fit/side-layers.ts';
import type { SeenFrom } from '../../src/drawing/fit/side-profile.ts';
import { boxOfLayers, layer, outline } from '../../src/drawing/scene/marks.ts';
import type { Layer, OutlineMark } from '../../src/drawing/scene/scene.ts';
import { type Sizes, sizesFor } from '../../src/drawing/scene/sizes.ts';
import { paperInks, styleOf } from '../../src/drawing/scene/styles.ts';
import { markNodes, node, type SvgNode } from '../../src/drawing/svg/svg-marks.ts';
import type { Box } from '../../src/geometry/plane/edge-box.ts';
import { edgeCountOf, type Region } from '../../src/geometry/plane/loop.ts';
import { boxOfRegion } from '../../src/geometry/plane/region-box.ts';
import { vec } from '../../src/geometry/plane/vec.ts';
import { remembered } from '../../src/geometry/remembered.ts';
import type { Casting, Section } from '../../src/job/casting.ts';
import type { Joint } from '../../src/joint/joint.ts';
import { type NamedPlace, placesOf } from './places-of.ts';
import { thinned } from './thinned.ts';

/** What stands still of a pane's picture, and what moves with the moving part, drawn at home. */
export interface Picture {
  readonly still: readonly SvgNode[];
  readonly moving: readonly SvgNode[];
}

/** The same in both panes. */
export interface Painting {
  readonly face: readonly SvgNode[];
  readonly side: readonly SvgNode[];
}

/** The sections on the face, nowhere further than `withinMm` from their outlines. */
export interface FaceSections extends Picture {
  readonly withinMm: number;
}

export interface Pictures {
  readonly extents: { readonly face: Box; readonly side: Box };
  /** Coarsest first: what the scale of a whole job asks for; what else there is comes as {@link finerSections}. */
  readonly sections: readonly FaceSections[];
  /** What lies over the sections on the face. */
  readonly over: Picture;
  readonly side: Picture;
  /** What is in the way, over all else that stands still, what is taken off among it. */
  readonly fouls: Painting;
  readonly foulPlaces: readonly FoulPlace[];
  readonly labels: readonly Label[];
  readonly places: readonly NamedPlace[];
  readonly seenFrom: SeenFrom;
  /** Which way depth runs in the side picture: x = sign · z. */
  readonly sideSign: 1 | -1;
}

/** Where one piece of what is in the way lies in either pane. */
export interface FoulPlace {
  readonly section: string;
  readonly face: Box;
  readonly side: Box;
}

/** A name on a pane, at a place of its plane, mm. */
export interface Label {
  readonly at: readonly [x: number, y: number];
  readonly text: string;
  readonly role: 'text' | 'moving-text';
  readonly rank: number;
}

/** Both panes of a joint, as elements for the page to make; colours and line widths are the page's. */
export function picturesOf(input: DrawInput): Pictures {
  const { fixed, moving } = input.joint;
  const face = boxOfLayers([layer('fixed', outlinesOf(input.joint))]);
  const across = acrossOf(input);
  const seen = sideLayers({ ...input, plan: null }, [], across, sizesOn(face));
  const fouls = seen.filter(({ role }) => role === 'foul');
  const isMoving = ({ role }: Layer): boolean => role === 'moving' || role === 'moving-beyond';
  return {
    extents: { face, side: boxOfLayers(seen) },
    sections: isSmall(input.joint)
      ? [sectionsWithin(input.joint, 0)]
      : fromAfarMm.map((mm) => sectionsWithin(input.joint, mm)),
    over: overSections(input, sizesOn(face)),
    side: {
      still: nodesOf(seen.filter((one) => !isMoving(one) && !fouls.includes(one))),
      moving: nodesOf(seen.filter(isMoving)),
    },
    fouls: { face: nodesOf([outlined('foul', foulsOf(input))]), side: nodesOf(fouls) },
    foulPlaces: foulPlacesOf(input, across),
    labels: labelsOf(fixed, moving),
    places: placesOf(input.joint, pathOf),
    seenFrom: across.from,
    sideSign: across.x(1) > 0 ? 1 : -1,
  };
}

const foulPlacesOf = (input: DrawInput, across: Across): FoulPlace[] =>
  foulsOf(input).flatMap(({ section, loops, depth }) =>
    bandBlocks(loops, depth, 'fixed', across).map((side, i) => ({
      section,
      face: boxOfRegion(loops.slice(i, i + 1)),
      side,
    })),
  );

const sizesOn = ({ minX, maxX, minY, maxY }: Box): Sizes => sizesFor(Math.max(maxX - minX, maxY - minY));

const outlinesOf = ({ fixed, moving }: Joint): OutlineMark[] =>
  [...fixed.sections, ...moving.sections].map(({ loops }) => outline(loops));

/** Outlines of so few edges are drawn whole at any scale. */
const fewEdges = 2000;
const isSmall = (joint: Joint): boolean => edgeCountOf(outlinesOf(joint).flatMap(({ loops }) => loops)) <= fewEdges;

/** Half a pixel at the scales at which a job is seen from afar, then from nearer up to 25 px a mm; 0 is whole. */
const fromAfarMm = [0.6, 0.2];
const fromNearMm = [0.06, 0.02, 0];

/** The sections as they are drawn from nearer, one after the other; none where they were drawn whole at once. */
export function* finerSections(joint: Joint): Generator<FaceSections> {
  if (!isSmall(joint)) for (const withinMm of fromNearMm) yield sectionsWithin(joint, withinMm);
}

/** Less is drawn, not less measured: only here are outlines thinned. */
function sectionsWithin(joint: Joint, withinMm: number): FaceSections {
  const drawn = (casting: Casting): Casting => ({ ...casting, sections: drawnSections(casting.sections, withinMm) });
  return {
    withinMm,
    still: nodesOf(castingLayers(drawn(joint.fixed))),
    moving: nodesOf(movingLayers(drawn(joint.moving))),
  };
}

const known = remembered<readonly Section[]>(fromAfarMm.length + fromNearMm.length);

/** The same sections each time they are drawn alike, so that what is hidden of them need not be looked for again. */
const drawnSections = (sections: readonly Section[], withinMm: number): readonly Section[] =>
  withinMm === 0
    ? sections
    : known(sections, `${withinMm}`, () =>
        sections.map((section) => ({ ...section, loops: thinned(section.loops, withinMm) })),
      );

function overSections(input: DrawInput, sizes: Sizes): Picture {
  const { fixed, moving, rotating } = input.joint;
  const holes = holeLayers(input.joint, sizes);
  const movingHoles = holes.filter(({ role }) => role === 'moving-hole');
  return {
    still: nodesOf([
      ...keepLayers(fixed, sizes),
      outlined(
        'rotating',
        rotating.flatMap(({ sections }) => sections),
      ),
      ...holes.filter(({ role }) => role !== 'moving-hole'),
    ]),
    moving: nodesOf([...keepLayers(moving, sizes), ...movingHoles]),
  };
}

/** The room the moving part swings through, as it lies on the face between the sections and what is over them. */
export const roomPicture = (room: Region): SvgNode[] =>
  nodesOf([layer('room', room.length === 0 ? [] : [outline(room)])]);

/** What a plan takes off, and its first and last line on the face; the page itself hatches it, as fine as its scale asks. */
export function cutPictures(input: DrawInput): Painting & { readonly lines: readonly SvgNode[] } {
  const bands = bandsOf(input.plan);
  const lines = (of: 'first' | 'last') => bands.map((band) => outline(band[of]));
  const side = sideLayers(input, [], acrossOf(input), sizesFor(400)).filter(({ role }) => role === 'relief');
  return {
    face: nodesOf([outlined('relief', bands)]),
    side: nodesOf(side),
    lines: nodesOf([layer('last-line', lines('last')), layer('first-line', lines('first'))]),
  };
}

const outlined = (role: Layer['role'], places: readonly { readonly loops: Region }[]): Layer =>
  layer(
    role,
    places.map(({ loops }) => outline(loops)),
  );

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

import { reachesPastFace } from '../../clearance/room.ts';
import type { Box } from '../../geometry/plane/edge-box.ts';
import { moveRegion, type Region } from '../../geometry/plane/loop.ts';
import { rigid } from '../../geometry/plane/rigid.ts';
import type { Casting, DepthRange, Hole, Section } from '../../job/casting.ts';
import type { Part } from '../../job/part.ts';
import type { Position } from '../../job/path.ts';
import { box, layer } from '../scene/marks.ts';
import type { Layer, Mark } from '../scene/scene.ts';
import type { Sizes } from '../scene/sizes.ts';
import { type Across, bandBlocks, blockOf, zRange } from './across.ts';
import { bandsOf, type DrawInput, foulsOf } from './draw-input.ts';
import { holeRadius } from './hole-symbols.ts';
import { hatch, hatchRad } from './plane-layers.ts';
import { stripsOf } from './side-profile.ts';

/** Everything the side view shows, without words, lowest first. */
export function sideLayers(input: DrawInput, positions: readonly Position[], across: Across, sizes: Sizes): Layer[] {
  const { fixed, moving, rotating } = input.joint;
  return [
    fixedLayer(fixed, across),
    ...keepLayers(fixed, 'fixed', across),
    layer(
      'hole',
      fixed.holes.flatMap((hole) => pinMarks(hole, across, sizes)),
    ),
    layer(
      'rotating',
      rotating.flatMap(({ sections }) => sections.flatMap((section) => blocks(section, 'fixed', across))),
    ),
    layer(
      'on-the-way',
      positions.flatMap((position) => movingMarks(moving, position, across)),
    ),
    ...movingLayers(moving, across),
    ...keepLayers(moving, 'moving', across),
    ...workLayers(input, across, sizes),
  ];
}

/** Strips nearer the eye are painted over those behind them. */
function fixedLayer({ sections }: Casting, across: Across): Layer {
  const strips = sections.flatMap(({ loops, depth }) =>
    stripsOf(loops, across.from).map((strip) => ({ ...strip, z: zRange(depth, 'fixed', across) })),
  );
  strips.sort((a, b) => a.reachMm - b.reachMm);
  return layer(
    'fixed',
    strips.map(({ z, fromY, toY }) => box(blockOf(z, fromY, toY, across))),
  );
}

const movingLayers = ({ sections }: Casting, across: Across): Layer[] =>
  (['moving-beyond', 'moving'] as const).map((role) => {
    const shown = sections.filter((section) => reachesPastFace(section) === (role === 'moving'));
    return layer(
      role,
      shown.flatMap((section) => blocks(section, 'moving', across)),
    );
  });

interface RegionInDepth {
  readonly loops: Region;
  readonly depth: DepthRange | null;
}

/** A region's whole heights over its range of z, without the edges within. */
function blocks({ loops, depth }: RegionInDepth, part: Part, across: Across, standOffMm = 0): Mark[] {
  const spans: { fromY: number; toY: number }[] = [];
  for (const { fromY, toY } of stripsOf(loops, across.from)) {
    const below = spans.at(-1);
    if (below?.toY === fromY) below.toY = toY;
    else spans.push({ fromY, toY });
  }
  const z = zRange(depth, part, across, standOffMm);
  return spans.map(({ fromY, toY }) => box(blockOf(z, fromY, toY, across)));
}

function movingMarks({ sections }: Casting, { turnRad, shift, standOffMm }: Position, across: Across): Mark[] {
  const placed = rigid(turnRad, shift);
  return sections
    .filter((section) => isPastFace(section, standOffMm))
    .flatMap(({ loops, depth }) => blocks({ loops: moveRegion(loops, placed), depth }, 'moving', across, standOffMm));
}

const isPastFace = ({ depth }: Section, standOffMm: number): boolean => depth !== null && depth.fromMm + standOffMm < 0;

/** The positions of the way in, home apart, at which some metal reaches past the mating face. */
export function positionsPastFace({ joint }: DrawInput): Position[] {
  return joint.fit.legs
    .map(({ from }) => from)
    .filter(({ standOffMm }) => joint.moving.sections.some((section) => isPastFace(section, standOffMm)));
}

const keepLayers = ({ hollows, doNotCut }: Casting, part: Part, across: Across): Layer[] => [
  layer(
    'hollow',
    hollows.flatMap((hollow) => blocks(hollow, part, across)),
  ),
  layer(
    'do-not-cut',
    doNotCut.flatMap((region) => blocks(region, part, across)),
  ),
];

/** A dowel where it stands proud. */
function pinMarks(hole: Hole, across: Across, sizes: Sizes): Mark[] {
  if (hole.proudMm <= 0) return [];
  const radius = holeRadius(hole, sizes);
  return [box(blockOf({ fromMm: 0, toMm: hole.proudMm }, hole.at.y - radius, hole.at.y + radius, across))];
}

function workLayers(input: DrawInput, across: Across, { hatchMm }: Sizes): Layer[] {
  const relief = bandsOf(input.plan).flatMap(({ loops, depth, part }) => bandBlocks(loops, depth, part, across));
  const fouls = foulsOf(input).flatMap(({ loops, depth }) => bandBlocks(loops, depth, 'fixed', across));
  const hatched = (area: Box): Mark => hatch(box(area).loops, hatchRad, hatchMm);
  return [layer('relief', relief.map(box)), layer('foul', fouls.map(box)), layer('relief-hatch', relief.map(hatched))];
}

import { reachesPastFace } from '../../clearance/room.ts';
import { remembered } from '../../geometry/remembered.ts';
import type { Casting, Section } from '../../job/casting.ts';
import { layer, outline, run } from '../scene/marks.ts';
import type { Layer } from '../scene/scene.ts';
import type { Sizes } from '../scene/sizes.ts';
import { bandsOf, type DrawInput, foulsOf } from './draw-input.ts';
import { partHidden, runsOf } from './hidden-edges.ts';
import { holeLayers } from './hole-symbols.ts';

/** Metal to take off is hatched this way, what must stay the other and wider, in pitches of hatching. */
export const hatchRad = Math.PI / 4;
export const keepOffPitch = 2.4;

/**
 * Everything there is to see looking at the fixed part's mating face, the moving part at home, as layers without
 * words, lowest first.
 */
export function planeLayers(input: DrawInput, sizes: Sizes): readonly Layer[] {
  const { joint, plan, room } = input;
  const { fixed, moving, rotating } = joint;
  const bands = bandsOf(plan);
  return [
    ...castingLayers(fixed),
    layer('room', room.length === 0 ? [] : [outline(room)]),
    ...keepLayers(fixed, sizes),
    layer(
      'rotating',
      rotating.flatMap(({ sections }) => sections.map(({ loops }) => outline(loops))),
    ),
    ...movingLayers(moving),
    ...keepLayers(moving, sizes),
    layer(
      'relief',
      bands.map(({ loops }) => outline(loops)),
    ),
    layer(
      'foul',
      foulsOf(input).map(({ loops }) => outline(loops)),
    ),
    layer(
      'relief-hatch',
      bands.map(({ loops }) => hatch(loops, hatchRad, sizes.hatchMm)),
    ),
    ...holeLayers(joint, sizes),
  ];
}

export const hatch = (loops: Section['loops'], angleRad: number, pitchMm: number) =>
  ({ kind: 'hatch', loops, angleRad, pitchMm }) as const;

const known = remembered<readonly Layer[]>(1);

/** The metal of a casting, and its edges parted into seen and hidden by the sections nearer its face. */
export const castingLayers = ({ sections }: Casting): readonly Layer[] => known(sections, '', () => layersOf(sections));

function layersOf(sections: readonly Section[]): Layer[] {
  const edges = sections.map((section) => partHidden(section.loops, nearerFace(section, sections)));
  return [
    layer(
      'fixed-metal',
      sections.map(({ loops }) => outline(loops)),
    ),
    layer(
      'fixed-behind',
      edges.flatMap(({ hidden }) => runsOf(hidden).map(run)),
    ),
    layer(
      'fixed',
      edges.flatMap(({ seen }) => runsOf(seen).map(run)),
    ),
  ];
}

const nearerFace = (section: Section, sections: readonly Section[]): Section['loops'][] =>
  sections.filter((other) => topOf(other) < topOf(section)).map(({ loops }) => loops);

const topOf = ({ depth }: Section): number => depth?.fromMm ?? Number.NEGATIVE_INFINITY;

/** Looking through the moving part: what reaches past its face can meet the fixed part, the rest lies this side. */
export const movingLayers = ({ sections }: Casting): Layer[] => [
  layer(
    'moving-beyond',
    sections.filter((section) => !reachesPastFace(section)).map(({ loops }) => outline(loops)),
  ),
  layer(
    'moving',
    sections.filter(reachesPastFace).map(({ loops }) => outline(loops)),
  ),
];

export const keepLayers = ({ hollows, doNotCut, traced }: Casting, { hatchMm }: Sizes): Layer[] => [
  layer('traced', traced === null ? [] : [outline(traced.loops)]),
  layer(
    'hollow',
    hollows.map(({ loops }) => outline(loops)),
  ),
  layer(
    'do-not-cut',
    doNotCut.flatMap(({ loops }) => [outline(loops), hatch(loops, -hatchRad, keepOffPitch * hatchMm)]),
  ),
];

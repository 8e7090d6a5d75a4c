import type { Box } from '../../geometry/plane/edge-box.ts';
import { vec } from '../../geometry/plane/vec.ts';
import type { Joint } from '../../joint/joint.ts';
import { axisName, shortName } from '../../words/names.ts';
import { target } from '../fit/closest-place.ts';
import { dowelMarks } from '../fit/hole-symbols.ts';
import { hatch, hatchRad, keepOffPitch } from '../fit/plane-layers.ts';
import { heightOf, middleOf } from './frame.ts';
import { box, circle, layer, line, text, viewOf } from './marks.ts';
import type { Layer, Mark, View } from './scene.ts';
import type { Sizes } from './sizes.ts';
import type { Role } from './styles.ts';
import { fitText } from './text-size.ts';

/** What each kind of mark means, in the order it is listed; roles that speak for themselves have no entry. */
const meanings = ({ fixed, moving, ...joint }: Joint): readonly (readonly [Role, string])[] => [
  ['moving-text', `slanted names: ${shortName(moving)}`],
  ['fixed', `${shortName(fixed)}, as seen`],
  ['fixed-behind', `${shortName(fixed)}, behind a section nearer its face`],
  ['moving', `${shortName(moving)}, home: what stands proud of its face`],
  ['moving-beyond', `${shortName(moving)}, home: the rest`],
  ['on-the-way', `${shortName(moving)} on its way in`],
  ['room', 'room it swings through'],
  ['rotating', `turns with ${axisName(joint)}`],
  ['foul', 'in the way: foul'],
  ['relief', 'take off, to this line'],
  ['first-line', 'first line: must go whatever the error'],
  ['last-line', 'last line: never past it'],
  ['do-not-cut', 'do not cut'],
  ['hollow', 'hollow: water, oil or a bore'],
  ['traced', 'tracing is complete inside this line'],
  ['witness', 'least clearance'],
  ['first-touch', 'first touch'],
  ['dowel', 'dowel'],
  ['hole', `hole or thread of ${shortName(fixed)}`],
  ['moving-hole', `hole of ${shortName(moving)}`],
  ['mating-face', 'mating faces'],
  ['centre-line', 'centre lines; 0, 0 is the axis'],
];

const pitch = 1.65;
const swatchWidth = 3.4;

/** A sample and its meaning for every role that is drawn, and for no other. */
export function legend(joint: Joint, drawn: ReadonlySet<Role>, widthMm: number, sizes: Sizes): View {
  const { textMm } = sizes;
  const wordsMm = widthMm - (swatchWidth + 0.7) * textMm;
  const entries = meanings(joint).filter(([role]) => drawn.has(role));
  return viewOf('legend', [
    layer('text', [text(vec(0, 0), 'What the lines mean', textMm, { bold: true })]),
    ...entries.flatMap(([role, words], i) =>
      entryLayers(role, fitText(words, textMm, wordsMm), -(i + 1) * pitch * textMm, sizes),
    ),
  ]);
}

function entryLayers(role: Role, words: string, y: number, sizes: Sizes): Layer[] {
  const { textMm } = sizes;
  const sample = { minX: 0, maxX: swatchWidth * textMm, minY: y - 0.1 * textMm, maxY: y + 0.9 * textMm };
  return [
    ...swatch(role, sample, sizes).map(([shown, marks]) => layer(shown, marks)),
    layer('text', [text(vec(sample.maxX + 0.7 * textMm, y + 0.1 * textMm), words, textMm)]),
  ];
}

/** A sample of a role, with whatever else always goes with it. */
function swatch(role: Role, area: Box, sizes: Sizes): [Role, Mark[]][] {
  const middle = middleOf(area);
  const radius = heightOf(area) / 2;
  const ends = [vec(area.minX, middle.y), vec(area.maxX, middle.y)] as const;
  switch (role) {
    case 'moving-text':
      return [[role, [text(vec(area.minX, area.minY + 0.2 * sizes.textMm), 'name', sizes.textMm, { bold: true })]]];
    case 'dowel':
      return [
        ['hole', [circle(middle, radius)]],
        [role, dowelMarks(middle, radius)],
      ];
    case 'hole':
    case 'moving-hole':
      return [[role, [circle(middle, radius)]]];
    case 'first-touch':
      return [[role, target(middle, radius)]];
    case 'witness':
      return [[role, [{ kind: 'arrow', from: ends[0], to: ends[1], heads: 'both' }]]];
    case 'relief':
      return [
        [role, [box(area)]],
        ['relief-hatch', [hatch(box(area).loops, hatchRad, sizes.hatchMm)]],
      ];
    case 'do-not-cut':
      return [[role, [box(area), hatch(box(area).loops, -hatchRad, keepOffPitch * sizes.hatchMm)]]];
    case 'fixed':
    case 'foul':
    case 'room':
    case 'hollow':
      return [[role, [box(area)]]];
    default:
      return [[role, [line(...ends)]]];
  }
}

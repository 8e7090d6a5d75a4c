import { reachesPastFace } from '../../clearance/room.ts';
import type { Box } from '../../geometry/plane/edge-box.ts';
import { vec } from '../../geometry/plane/vec.ts';
import type { Casting, DepthRange, Section } from '../../job/casting.ts';
import type { Part } from '../../job/part.ts';
import { axisName, shortName } from '../../words/names.ts';
import { rectangle, widthOf } from '../scene/frame.ts';
import { box, boxOfText, layer, line, text, viewOf } from '../scene/marks.ts';
import type { Layer, Mark, View } from '../scene/scene.ts';
import type { Sizes } from '../scene/sizes.ts';
import type { Role } from '../scene/styles.ts';
import { fitText } from '../scene/text-size.ts';
import { type Across, zRange } from './across.ts';
import { barDepth } from './depth-words.ts';
import { bandsOf, type DrawInput } from './draw-input.ts';
import { namedSections } from './slices.ts';

/** A bar, or with the role `text` a heading. */
interface Row {
  readonly name: string;
  readonly role: Role;
  readonly part: Part;
  readonly depth: DepthRange | null;
}

const pitch = 1.5;

/** A bar for each section and band over the depth it takes up, under the side view and on its scale. */
export function depthChart(input: DrawInput, across: Across, within: Box, sizes: Sizes): View {
  const { textMm } = sizes;
  const title = `Depths from each part's own face, ${input.joint.fit.units}`;
  const heading = text(vec(within.minX, 0.4 * textMm), title, textMm, { bold: true });
  const heights = rowsOf(input).map((row, i) => ({ row, y: -(i + 1) * pitch * textMm }));
  const rows = heights.map(({ row, y }) => ({ y, layers: rowLayers(row, y, { input, across, within, sizes }) }));
  // the faces' line stands aside for words that cross it
  const faces = rows.filter(({ layers }) => !layers.some(wordsCrossFaces)).map(({ y }) => faceLine(y, textMm));
  return viewOf('depths', [layer('leader', faces), layer('text', [heading]), ...rows.flatMap(({ layers }) => layers)]);
}

const faceLine = (y: number, textMm: number): Mark =>
  line(vec(0, y - 0.3 * textMm), vec(0, y + (pitch - 0.3) * textMm));

const wordsCrossFaces = ({ marks }: Layer): boolean =>
  marks.some((mark) => {
    if (mark.kind !== 'text') return false;
    const { minX, maxX } = boxOfText(mark);
    return minX < 0 && maxX > 0;
  });

/** Each part's name, then its sections, what must stay and what comes off it. */
function rowsOf({ joint, plan }: DrawInput): Row[] {
  const cut = bandsOf(plan).map(({ part, section, depth }) => ({
    part,
    name: `take off, ${section}`,
    role: 'relief' as const,
    depth,
  }));
  const rows = (casting: Casting, part: Part): Row[] =>
    [
      { name: shortName(casting), role: 'text' as const, depth: null },
      ...namedSections(casting.sections).map(({ name, sections, depth }) => ({
        name,
        role: sectionRole(sections[0], part),
        depth,
      })),
      ...casting.hollows.map(({ id, depth }) => ({ name: `${id}, hollow`, role: 'hollow' as const, depth })),
      ...casting.doNotCut.map(({ id, depth }) => ({ name: `${id}, do not cut`, role: 'do-not-cut' as const, depth })),
      ...cut.filter((row) => row.part === part),
    ].map((row) => ({ ...row, part }));
  const turning = joint.rotating.flatMap(({ name, sections }) =>
    sections.map(({ depth }): Row => ({ name, role: 'rotating', part: 'fixed', depth })),
  );
  const heading: Row = { name: `Turns with ${axisName(joint)}`, role: 'text', part: 'fixed', depth: null };
  return [
    ...rows(joint.fixed, 'fixed'),
    ...rows(joint.moving, 'moving'),
    ...(turning.length === 0 ? [] : [heading, ...turning]),
  ];
}

const sectionRole = (section: Section, part: Part): Role =>
  part === 'fixed' ? 'fixed' : reachesPastFace(section) ? 'moving' : 'moving-beyond';

interface Surroundings {
  readonly input: DrawInput;
  readonly across: Across;
  readonly within: Box;
  readonly sizes: Sizes;
}

/** The bar, and its words on whichever side has more room. */
function rowLayers(
  { name, role, part, depth }: Row,
  y: number,
  { input, across, within, sizes }: Surroundings,
): Layer[] {
  const { textMm, hatchMm } = sizes;
  if (role === 'text')
    return [
      layer('text', [
        text(vec(within.minX, y + 0.1 * textMm), fitText(name, textMm, widthOf(within), true), textMm, { bold: true }),
      ]),
    ];
  const z = zRange(depth, part, across);
  const [x0, x1] = [across.x(z.fromMm), across.x(z.toMm)];
  const bar = { minX: Math.min(x0, x1), maxX: Math.max(x0, x1), minY: y, maxY: y + 0.85 * textMm };
  const hatched: Mark[] =
    role === 'relief' || role === 'do-not-cut'
      ? [
          {
            kind: 'hatch',
            loops: [{ kind: 'path', vertices: rectangle(bar).map((p) => ({ ...p, bulge: 0 })) }],
            angleRad: ((role === 'relief' ? 1 : -1) * Math.PI) / 4,
            pitchMm: hatchMm,
          },
        ]
      : [];
  const gap = 0.5 * textMm;
  const [leftRoom, rightRoom] = [bar.minX - within.minX - gap, within.maxX - bar.maxX - gap];
  const toRight = rightRoom >= leftRoom;
  const words = fitText(
    `${name}  ${barDepth(depth, input.joint.fit.units)}`,
    textMm,
    Math.max(leftRoom, rightRoom, 8 * textMm),
  );
  const at = vec(toRight ? bar.maxX + gap : bar.minX - gap, y + 0.12 * textMm);
  return [
    layer(role, [box(bar)]),
    layer(role === 'relief' ? 'relief-hatch' : role, hatched),
    layer('text', [text(at, words, textMm, { anchor: toRight ? 'start' : 'end' })]),
  ];
}

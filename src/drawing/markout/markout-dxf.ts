import { boxAround } from '../../geometry/plane/edge-box.ts';
import { circleLoop, type Region } from '../../geometry/plane/loop.ts';
import { boxOfRegion } from '../../geometry/plane/region-box.ts';
import { type Vec, vec } from '../../geometry/plane/vec.ts';
import type { Hole } from '../../job/casting.ts';
import type { Bench } from '../../markout/marking-out-bench.ts';
import { bridgeOutline } from '../../markout/marking-out-bridge.ts';
import type { SwingGauge } from '../../markout/marking-out-swing.ts';
import { plyOutline } from '../../markout/ply-outline.ts';
import { axisName, shortName, titleOf } from '../../words/names.ts';
import { type DxfLayer, type DxfShape, dxfOf } from '../dxf/dxf.ts';
import { barMm } from '../scene/check-bars.ts';
import { isEmpty } from '../scene/frame.ts';
import type { BridgeGauge } from './bridge-gauge.ts';
import { type ProfileGauge, pinRadiusMm } from './profile-gauge.ts';
import { bandWords } from './template-words.ts';

export const colours = { black: 7, red: 1, yellow: 2, green: 3, cyan: 4, blue: 5, magenta: 6 } as const;

/** The casting with what comes off it, looking at its mating face, the crank at 0, 0. */
export function markoutDxf(bench: Bench): string {
  const { present, bands } = bench;
  const isCut = (id: string): boolean => bands.some(({ section }) => section.id === id);
  const count = (i: number): string => (bands.length === 1 ? '' : `-${i + 1}`);
  const lines = bands.flatMap((band, i) => [
    outlines(`RELIEF${count(i)}`, colours.red, band.relief),
    outlines(`FIRST${count(i)}`, colours.green, band.first),
    outlines(`LAST${count(i)}`, colours.magenta, band.last),
  ]);
  const parts = [
    outlines(
      'PART',
      colours.black,
      present.sections.filter(({ id }) => isCut(id)).flatMap(({ loops }) => loops),
    ),
    outlines(
      'PART-OTHER',
      colours.blue,
      present.sections.filter(({ id }) => !isCut(id)).flatMap(({ loops }) => loops),
    ),
  ];
  const keeps = [
    outlines(
      'DO-NOT-CUT',
      colours.yellow,
      present.doNotCut.flatMap(({ loops }) => loops),
    ),
    outlines(
      'HOLLOWS',
      colours.cyan,
      present.hollows.flatMap(({ loops }) => loops),
    ),
  ];
  return finished(
    bench,
    [...parts, ...lines, ...keeps, ...holeLayers(present.holes)],
    [...bands.map((band, i) => `RELIEF${count(i)}: ${bandWords(band, bench)}`)],
  );
}

/** The pieces of a profile gauge and the plate that carries them, in their places on the casting. */
export const profileDxf = (bench: Bench, { band, pieces, plate }: ProfileGauge): string =>
  finished(
    bench,
    [
      ...pieces.map(({ name, outline }) => outlines(name, colours.black, plyOutline(outline))),
      ...(plate === null ? [] : [outlines('A', colours.blue, plyOutline(plate)), ...holeLayers(bench.holes ?? [])]),
      outlines(
        'PINS',
        colours.red,
        pieces.flatMap(({ pins }) => pins ?? []).map((at) => circleLoop(at, pinRadiusMm)),
      ),
    ],
    [`Profile gauge: ${bandWords(band, bench)}`],
  );

/** The plate of a swing gauge with its slots, and the pieces it carries. */
export const swingDxf = (bench: Bench, { plate, pieces, spigotMm }: SwingGauge): string =>
  finished(
    bench,
    [
      outlines('PLATE', colours.blue, plyOutline(plate)),
      ...pieces.map(({ name, outline }) => outlines(name, colours.black, plyOutline(outline))),
      outlines('SPIGOT', colours.red, [circleLoop(vec(0, 0), spigotMm / 2)]),
    ],
    ['Swing gauge'],
  );

/** Bridges as one sees them standing on the face, one over another. */
export function bridgeDxf(bench: Bench, { band, pieces }: BridgeGauge): string {
  let y = 0;
  const layers = pieces.map((piece) => {
    const ply = bridgeOutline(piece).map((polygon) => polygon.map((p) => vec(p.x, p.y + y)));
    y = Math.max(...ply.flat().map((p) => p.y)) + 2 * noteMm;
    return outlines(piece.name, colours.black, plyOutline(ply));
  });
  return finished(bench, layers, [`Bridge gauge: ${bandWords(band, bench)}`], {
    origin: 'the feet of the first stand at y = 0',
    viewed: `Standing upright on the mating face of ${shortName(bench.present)}, seen from its front.`,
  });
}

export const outlines = (name: string, colour: number, loops: Region): DxfLayer => ({
  name,
  colour,
  shapes: loops.map((loop) => ({ kind: 'loop', loop })),
});

/** A hole of unknown size is drawn this small, mm. */
const leastRadiusMm = 1;

export function holeLayers(holes: readonly Hole[]): DxfLayer[] {
  const circles = (some: readonly Hole[]): Region =>
    some.map(({ at, diameterMm }) => circleLoop(at, diameterMm === null ? leastRadiusMm : diameterMm / 2));
  return [
    outlines('DOWELS', colours.green, circles(holes.filter(({ kind }) => kind === 'dowel'))),
    outlines('HOLES', colours.green, circles(holes.filter(({ kind }) => kind !== 'dowel'))),
  ];
}

const noteMm = 5;

/** Where 0, 0 is, and what one looks at. */
interface DxfFrame {
  readonly origin?: string;
  readonly viewed?: string;
}

const viewOfFace = ({ present }: Bench): string => `Looking at the mating face of ${shortName(present)}.`;

/** A drawing with a bar of known length both ways and notes under it; layers with nothing on them left out. */
export function finished(
  bench: Bench,
  layers: readonly DxfLayer[],
  notes: readonly string[],
  { origin = `${axisName(bench.joint)} is at 0, 0`, viewed = viewOfFace(bench) }: DxfFrame = {},
): string {
  const drawn = layers.filter(({ shapes }) => shapes.length > 0);
  const box = boxAround(
    drawn.flatMap(({ shapes }) =>
      shapes.flatMap((shape) => (shape.kind === 'loop' ? [boxOfRegion([shape.loop])] : [])),
    ),
  );
  const corner = isEmpty(box) ? vec(0, 0) : vec(box.minX - 2 * noteMm, box.minY - 2 * noteMm);
  return dxfOf([
    ...drawn,
    { name: 'CHECK-BAR', colour: colours.cyan, shapes: bars(corner) },
    notesAt(bench, corner, { origin, viewed }, notes),
  ]);
}

const bars = ({ x, y }: Vec): DxfShape[] => [
  { kind: 'line', a: vec(x, y), b: vec(x + barMm, y) },
  { kind: 'line', a: vec(x, y), b: vec(x, y + barMm) },
];

function notesAt(
  bench: Bench,
  { x, y }: Vec,
  { origin, viewed }: Required<DxfFrame>,
  notes: readonly string[],
): DxfLayer {
  const { joint, plan, present, mirrored } = bench;
  const lines = [
    `Units: mm. The check bars are ${barMm} mm each way; ${origin}.`,
    ...(mirrored ? ['MIRRORED, as was asked.'] : []),
    ...(plan.holds ? [] : ['THE PLAN DOES NOT HOLD. Do not cut to this yet.']),
    `${titleOf(joint)}. Part: ${present.name}, casting number ${present.castingNumber ?? 'not given'}.`,
    `${viewed} Proved for the outlines as traced; geometry only.`,
    ...notes,
  ];
  const shapes = lines.map(
    (text, i): DxfShape => ({ kind: 'text', at: vec(x, y - (i + 1.5) * 1.5 * noteMm), text, heightMm: noteMm }),
  );
  return { name: 'NOTES', colour: colours.black, shapes };
}

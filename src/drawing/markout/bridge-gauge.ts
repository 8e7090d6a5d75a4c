import { vec } from '../../geometry/plane/vec.ts';
import { offset } from '../../geometry/polygons/offset.ts';
import { difference, intersection } from '../../geometry/polygons/polygon-engine.ts';
import { loopsOf, outlinesOf, type Polygons } from '../../geometry/polygons/polygons.ts';
import { givenLength } from '../../job/length-text.ts';
import type { Bench, BenchBand } from '../../markout/marking-out-bench.ts';
import { type Bridge, besideBridge, bridgeOutline, bridgesOf, type Span } from '../../markout/marking-out-bridge.ts';
import type { BridgeHindrance } from '../../markout/marking-out-hindering.ts';
import { metalWithin } from '../../markout/marking-out-plate.ts';
import { inWords } from '../../words/layout.ts';
import { shortName } from '../../words/names.ts';
import { circle, layer, line, outline, text, viewOf } from '../scene/marks.ts';
import type { Scene, TextMark, View } from '../scene/scene.ts';
import { fitText } from '../scene/text-size.ts';
import { plyEdge, wideRuns } from './template-marks.ts';
import { sheetSizes, templateSheet } from './template-sheet.ts';
import { bandWords, plyWords, templateWords } from './template-words.ts';

/** The bridges over what one band grinds down, and what hinders those that cannot sit. */
export interface BridgeGauge {
  readonly band: BenchBand;
  readonly pieces: readonly NamedBridge[];
  readonly hindered: readonly (readonly BridgeHindrance[])[];
}

interface NamedBridge extends Bridge {
  readonly name: string;
}

/** A gauge for each band that grinds down a boss on the face. */
export const bridgeGauges = (bench: Bench): BridgeGauge[] =>
  bench.bands.flatMap((band) => {
    const readings = bridgesOf(bench, band);
    const bridges = readings.flatMap((reading) => ('bridge' in reading ? [reading.bridge] : []));
    const hindered = readings.flatMap((reading) => ('hindrances' in reading ? [reading.hindrances] : []));
    if (readings.length === 0) return [];
    return [{ band, pieces: bridges.map((bridge, i) => ({ ...bridge, name: `B${i + 1}` })), hindered }];
  });

/** Why a bridge is not made. */
export const noBridgeWords = (bench: Bench, { band, hindered }: BridgeGauge): string[] => {
  const words = hindered.map(
    (all) =>
      `No bridge gauge for ${bandWords(band, bench)}: beside what is ground down its feet or its notch would meet ${inWords(all.map(hindranceWords))}. Measure how high it stands with a depth gauge.`,
  );
  return [...new Set(words)];
};

function hindranceWords(hindrance: BridgeHindrance): string {
  switch (hindrance.code) {
    case 'hole':
      return `hole ${hindrance.id}`;
    case 'hollow':
      return `hollow "${hindrance.id}"`;
    case 'proud':
      return `"${hindrance.id}", which stands proud of the face`;
    case 'no-face':
      return 'a place where no face was traced';
  }
}

/** The pieces of ply as one sees them standing on the face, and where on it they stand. */
export function bridgeScene(bench: Bench, gauge: BridgeGauge, withBars: boolean): Scene {
  const words = templateWords(bench, `Bridge gauge: ${bandWords(gauge.band, bench)}`, steps(bench, gauge));
  const views = gauge.pieces.flatMap((piece) => [pieceView(bench, piece), placeView(bench, piece)]);
  return templateSheet(words, views, withBars);
}

function steps(bench: Bench, { band, pieces }: BridgeGauge): string[] {
  const { units } = bench.joint.fit;
  const standsMm = pieces[0]?.standsMm ?? 0;
  const deeperMm = Math.max(0, band.depth?.toMm ?? 0);
  const names = inWords(pieces.map(({ name }) => name));
  const edge =
    standsMm > 0
      ? `the upper edge of the notch, ${givenLength(standsMm, units)} over the feet, is how high the boss may still stand`
      : 'the lower edge is straight, since nothing of the boss may stand proud of the face';
  return [
    `Glue on ${plyWords(bench)} and cut ${names} to the outside line, true at the wide one: ${edge}.`,
    `It stands upright on the bare face, foot L where the plan beside it shows L, and foot R at R. Clean the face there of burrs and gasket.`,
    'Move it over the boss between the dashed lines, square to itself. The boss is ground down when both feet rest on the face all the way. Where it rocks or a foot lifts, the metal under it is what is left to go.',
    ...(deeperMm > 0
      ? [
          `The cut goes on to ${givenLength(deeperMm, units)} below the face: measure that from its edge with a depth gauge.`,
        ]
      : []),
    `It proves how high the boss stands, and no edge of the cut: the table has those. Lengths are in ${units}.`,
  ];
}

const nameMm = 6;
const middleOf = ({ fromMm, toMm }: Span): number => (fromMm + toMm) / 2;
const centred = (x: number, y: number, words: string, sizeMm: number, bold = false): TextMark =>
  text(vec(x, y), words, sizeMm, { anchor: 'middle', bold });

/** Room between words and the ends of the ply, mm. */
const besideWordsMm = 4;

function pieceView({ joint, present }: Bench, piece: NamedBridge): View {
  const { left, right, standsMm, name } = piece;
  const ply = bridgeOutline(piece);
  const middle = (left.fromMm + right.toMm) / 2;
  const roomMm = right.toMm - left.fromMm - besideWordsMm;
  const high = standsMm > 0 ? `notch ${givenLength(standsMm, joint.fit.units)} high` : 'straight edge';
  const wide = [
    [vec(left.fromMm, 0), vec(left.toMm, 0)],
    [vec(left.toMm, standsMm), vec(right.fromMm, standsMm)],
    [vec(right.fromMm, 0), vec(right.toMm, 0)],
  ].map((points) => ({ points, closed: false }));
  const { smallMm, textMm } = sheetSizes;
  return viewOf(`bridge-${name}`, [
    plyEdge(ply),
    wideRuns(wide),
    layer('text', [
      centred(middle, standsMm + 12, name, nameMm, true),
      centred(middle, standsMm + 7.6, fitText(high, textMm, roomMm), textMm),
      centred(middle, standsMm + 4, fitText(shortName(present), smallMm, roomMm), smallMm),
      centred(middleOf(left), standsMm + 2, 'L', textMm, true),
      centred(middleOf(right), standsMm + 2, 'R', textMm, true),
    ]),
  ]);
}

/** How much of the face is shown round a bridge, mm. */
const shownMm = 8;
/** A hole of unknown size is drawn this large, mm. */
const leastHoleMm = 5;

/** Looking at the face: the boss, and where the feet stand and move. */
function placeView(bench: Bench, piece: NamedBridge): View {
  const { boss, left, right, moved, name } = piece;
  const { present, after } = bench;
  const at = (along: number, aside: number) => besideBridge(piece, along, aside);
  const rectangle = ({ fromMm, toMm }: Span): Polygons => [
    [at(fromMm, moved.fromMm), at(toMm, moved.fromMm), at(toMm, moved.toMm), at(fromMm, moved.toMm)],
  ];
  const feet = [rectangle(left), rectangle(right)];
  const whole = [...rectangle({ fromMm: left.fromMm, toMm: right.toMm }), ...boss];
  const shown = offset(outlinesOf(whole), shownMm, 0.02, 'outside').polygons;
  const face = intersection(metalWithin(after, { fromMm: 0, toMm: 0.05 }), shown);
  const isShown = (holeAt: Polygons): boolean => intersection(holeAt, shown).length > 0;
  const holes = present.holes.filter(({ at: { x, y } }) => isShown([[vec(x, y), vec(x + 0.1, y), vec(x, y + 0.1)]]));
  const named = (alongMm: number, words: string, sizeMm: number): TextMark => {
    const { x, y } = at(alongMm, middleOf(moved));
    return centred(x, y - sizeMm / 3, words, sizeMm, true);
  };
  const along = (aside: number) => line(at(left.fromMm, aside), at(right.toMm, aside));
  return viewOf(`place-${name}`, [
    layer('fixed-metal', [outline(loopsOf(difference(face, boss)))]),
    layer('frame', [outline(loopsOf(face))]),
    layer('relief', [outline(loopsOf(boss))]),
    layer('fixed-behind', [along(moved.fromMm), along(moved.toMm), ...feet.map((foot) => outline(loopsOf(foot)))]),
    layer('text', [
      named(middleOf(left), 'L', sheetSizes.warningMm),
      named((left.toMm + right.fromMm) / 2, name, sheetSizes.textMm),
      named(middleOf(right), 'R', sheetSizes.warningMm),
    ]),
    layer(
      'hole',
      holes.map((hole) => circle(hole.at, (hole.diameterMm ?? leastHoleMm) / 2)),
    ),
    layer(
      'text',
      holes.map(({ at: { x, y }, id }) => centred(x, y - 0.7, id, sheetSizes.smallMm)),
    ),
  ]);
}

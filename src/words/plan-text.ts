import type { Vec } from '../geometry/plane/vec.ts';
import type { Casting } from '../job/casting.ts';
import { givenLength, lengthText } from '../job/length-text.ts';
import type { Units } from '../job/lengths.ts';
import type { Joint } from '../joint/joint.ts';
import type { BandFigures, CutFigures, PieceFigures } from '../plan/part-cut.ts';
import type { PlanFigures } from '../plan/plan-result.ts';
import type { UncuredFoul } from '../plan/uncured-foul.ts';
import type { ReadWall } from '../plan/walls/wall-readings.ts';
import type { WallBehind } from '../plan/walls/walls.ts';
import { columns, listed, wrapped } from './layout.ts';
import { textsByPart } from './part-cuts.ts';
import { depthText, placeText } from './places.ts';
import { areaText } from './units.ts';

type Sections = Pick<CutFigures, 'sections'>;

/** What comes off: a line for each section and band, and one for each of its pieces where there are several. */
export function takeOffLines(joint: Joint, cut: Sections): string[] {
  if (cut.sections.length === 0) return [];
  return [
    ...columns(takeOffRows(joint, cut)),
    ...listed([...pieceTexts(joint, cut), ...lastDepthTexts(joint, cut)]),
    ...wrapped(linesText),
  ];
}

/** What each of the two lines means. */
export const linesText = 'First line: it must go even if every error is in your favour. Last line: never past it.';

/** What comes off as cells, a row for each section and band; headings first. */
export function takeOffRows({ fit: { units } }: Joint, { sections }: Sections): string[][] {
  const rows = sections.flatMap(({ id, bands }) =>
    bands.map((band) => [
      id,
      depthText(band.depth, units),
      areaText(band.areaMm2, units),
      deepText(band, units),
      areaText(band.firstAreaMm2, units),
      areaText(band.lastAreaMm2, units),
    ]),
  );
  return [['section', 'where', 'area', 'at the deepest', 'area to first line', 'area to last line'], ...rows];
}

/** How far along the depth no cut may go, where the errors of depth let it go farther than planned. */
const lastDepthTexts = ({ fit: { units } }: Joint, { sections }: Sections): string[] =>
  sections.flatMap(({ id, bands }) =>
    bands.flatMap(({ depth, lastDepth }) =>
      depth === null || lastDepth === null || (lastDepth.fromMm === depth.fromMm && lastDepth.toMm === depth.toMm)
        ? []
        : [`"${id}", ${depthText(depth, units)}: along the depth never past ${depthText(lastDepth, units)}.`],
    ),
  );

/** Where each piece of metal is that comes off. */
export const pieceTexts = (joint: Joint, { sections }: Sections): string[] =>
  piecesOf(sections.flatMap(({ bands }) => bands)).map((piece) => pieceText(joint, piece));

/** The separate pieces, the same outline in several bands once. */
function piecesOf(bands: readonly BandFigures[]): PieceFigures[] {
  const places = bands
    .flatMap(({ pieces }) => pieces)
    .map((piece) => [`${Math.round(piece.at.x)},${Math.round(piece.at.y)}`, piece] as const);
  return [...new Map(places).values()];
}

const pieceText = (joint: Joint, { areaMm2, at }: PieceFigures): string =>
  `${areaText(areaMm2, joint.fit.units)} about ${placeText(at, joint)}`;

const deepText = ({ takeOff }: BandFigures, units: Units): string =>
  takeOff === null ? 'all of it' : lengthText(takeOff.mm, units);

/** Fouls the plan leaves, pieces it would part off, and why. */
export const uncuredLines = (joint: Joint, plan: PlanFigures): string[] => listed(uncuredTexts(joint, plan));

export function uncuredTexts(joint: Joint, plan: PlanFigures): string[] {
  const { units } = joint.fit;
  const severed = plan.cuts.flatMap((cut) => cut.severed);
  return [
    ...plan.uncured.map(
      (foul) =>
        `"${foul.section}", ${areaText(foul.areaMm2 ?? 0, units)}: ${whyLeft(foul)}. It stands ${placeText(foul.at ?? onAxis, joint)}.`,
    ),
    ...severed.map(
      (piece) =>
        `The cut would part a piece of ${areaText(piece.areaMm2, units)} from "${piece.section}", ${placeText(piece.at, joint)}.`,
    ),
  ];
}

const onAxis: Vec = { x: 0, y: 0 };

function whyLeft({ why, doNotCut }: UncuredFoul): string {
  switch (why) {
    case 'not-offered':
      return 'not offered to the grinder (its "mayCut" is not true)';
    case 'do-not-cut':
      return `"${doNotCut ?? 'a region'}" is not to be cut`;
    case 'rotating':
      return 'it meets a rotating part';
  }
}

/** The metal left between the cut and each hollow in reach. */
export const wallLines = (joint: Joint, plan: PlanFigures): string[] => listed(wallTexts(joint, plan));

export const wallTexts = (joint: Joint, plan: PlanFigures): string[] =>
  textsByPart(joint, plan, (cut) => wallsOf(joint, cut), 'all');

function wallsOf(joint: Joint, { walls, thin, readings, unmeasured }: CutFigures): string[] {
  const { units } = joint.fit;
  return [
    ...walls.map(
      (wall) =>
        `${wall.kind === 'hole' ? `hole ${wall.hollow}` : wall.hollow}: ${wallText(wall, units)}${assumedText(wall)}; ${placeText(wall.at, joint)}.`,
    ),
    ...thin.map(
      (place) =>
        `"${place.section}" ${place.along === 'crank' ? `along the axis, ${depthText(place.depth, units)}` : 'across its own metal'}: ${wallText(place, units)}; ${placeText(place.at, joint)}.`,
    ),
    ...readings.map((wall) => readingText(joint, wall)),
    ...unmeasured.map(({ section, at, atDepthMm }) => {
      const deep = atDepthMm === null ? '' : `, ${depthText({ fromMm: atDepthMm, toMm: atDepthMm }, units)}`;
      return `"${section}": the wall is not measured here. Measure it first, ${placeText(at, joint)}${deep}.`;
    }),
  ];
}

/** Where nobody said how deep a hole goes, or what wall it needs. */
function assumedText({ isDepthAssumed, keepBy }: WallBehind): string {
  const taken = [
    ...(keepBy === 'half-diameter' ? ['half its diameter is kept, since no least wall is set'] : []),
    ...(isDepthAssumed ? ['its depth is not stated, so it is taken through every depth'] : []),
  ];
  return taken.length === 0 ? '' : ` (${taken.join('; ')})`;
}

/** A wall that was read: what comes off at its place, and where it is thinnest of all it speaks for. */
function readingText(joint: Joint, wall: ReadWall): string {
  const { units } = joint.fit;
  const here = `${givenLength(wall.readMm, units)} was read ${placeText(wall.at, joint)}; ${lengthText(wall.takeOffMm, units)} comes off there`;
  const thinnest = { ...wall, nominalMm: wall.readMm - wall.mostTakeOffMm, wallMm: wall.leastWallMm };
  if (wall.mostTakeOffMm <= wall.takeOffMm + 0.05) return `${here}: ${wallText(thinnest, units)}.`;
  const most = `${lengthText(wall.mostTakeOffMm, units)} ${placeText(wall.mostAt, joint)}`;
  return `${here}, and within what it speaks for up to ${most}: ${wallText(thinnest, units)}.`;
}

type LeftWall = Pick<WallBehind, 'wallMm' | 'nominalMm' | 'keepMm' | 'holds'>;

function wallText({ wallMm, nominalMm, keepMm, holds }: LeftWall, units: Units): string {
  const left = `${lengthText(nominalMm, units)} as planned, ${lengthText(wallMm, units)} at worst`;
  const keep = keepMm === null ? 'no least wall was set' : `${givenLength(keepMm, units)} is to be kept`;
  if (holds === false && nominalMm <= 0) return `${left}, ${keep}: THE CUT BREAKS IN`;
  if (holds === null) return `${left}, ${keep}: measure this wall before you start`;
  return `${left}, ${keep}: ${holds ? 'it holds' : 'IT DOES NOT HOLD, measure this wall before you start'}`;
}

/** What the part says must stay. */
export const keepOffLines = (joint: Joint, part: Casting): string[] => listed(keepOffTexts(joint, part));

export function keepOffTexts({ fit: { units } }: Joint, { doNotCut, sections }: Casting): string[] {
  const kept = sections.filter(({ mayCut }) => !mayCut).map(({ id }) => `"${id}"`);
  return [
    ...doNotCut.map(({ id, depth }) => `"${id}", ${depthText(depth, units)}`),
    ...(kept.length === 0 ? [] : [`sections not offered: ${kept.join(', ')}`]),
  ];
}

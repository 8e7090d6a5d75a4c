import type { Finding, Reading } from '../files/finding.ts';
import { suggesting } from '../files/nearest.ts';
import type { PartFile } from '../files/part-file.ts';
import { shown } from '../files/shown.ts';
import type { CircleLoop, Loop } from '../geometry/plane/loop.ts';
import { scale as scaleBy } from '../geometry/plane/vec.ts';
import type { HoleKind } from '../job/casting.ts';
import { mmPer, type Units } from '../job/lengths.ts';
import type { Drawing, NamedDoNotCut, NamedHollow, Note } from './drawing.ts';
import { drawingUnit } from './drawing-unit.ts';
import { farShapes } from './far-shapes.ts';
import { circleRound, isCircle, numbered, type RoundHole } from './holes.ts';
import { holeNotes, sectionNotes } from './import-notes.ts';
import type { ImportOptions } from './import-options.ts';
import { idPrefixes, untoldPrefix } from './layers.ts';
import type { LengthUnit } from './length-unit.ts';
import type { Branch } from './outlines/chain.ts';
import { branchText, gapText } from './outlines/gap-text.ts';
import type { Gap } from './outlines/gaps.ts';
import { type Outlines, outlinesOf } from './outlines/outlines.ts';
import { circlesInMetal, kindsProposed } from './proposed-holes.ts';
import {
  doNotCutFile,
  hollowFile,
  namedHoleFile,
  roundHoleFile,
  type Scale,
  sectionFile,
  wallReadingFile,
} from './section-file.ts';
import { type HoleShapes, type SectionShapes, type SortedShapes, sortShapes } from './sorted-shapes.ts';

/** Gaps up to this are joined where the builder says nothing (common practice, no source). */
const joinDefaultMm = 0.5;
const mostListed = 20;

/** A drawing as a part, and what must be said of how it became one; gaps in mm. */
export interface DrawingImport {
  readonly part: PartFile;
  readonly unit: LengthUnit;
  readonly joinMm: number;
  readonly joined: readonly Gap[];
  readonly gaps: readonly Gap[];
  readonly branches: readonly Branch[];
  /** Ids of the holes of which only size and place tell what they are. */
  readonly proposed: readonly string[];
  readonly notes: readonly Note[];
}

/**
 * Makes a part of a drawing: layers become sections, circles on layers of holes become holes, and every line that
 * closes no outline is listed. The part's outlines are not yet checked against one another.
 */
export function importDrawing(file: string, drawing: Drawing, options: ImportOptions): Reading<DrawingImport> {
  const unit = drawingUnit(file, drawing, options);
  const sorted = sortShapes(file, drawing, options);
  if (!unit.ok || !sorted.ok) return refused([...findingsOf(unit), ...findingsOf(sorted)]);
  const all = [...drawing.shapes, ...[...drawing.hollows, ...drawing.doNotCut].flatMap(({ shapes }) => shapes)];
  const far = farShapes(file, all, unit.value.mm);
  if (far.length > 0) return refused(far);
  const tracing = traced(sorted.value, drawing, unit.value, options);
  const picked = pickedHoles(drawing, tracing, options);
  const findings = [
    ...missingHoles(file, picked),
    ...kindsNotSaid(file, drawing, options),
    ...unknownSections(file, tracing, options),
    ...(options.proposeHoles !== null && holeCount(drawing, picked) > 0 ? [] : noOutline(file, tracing, picked)),
  ];
  return findings.length > 0 ? refused(findings) : { ok: true, value: imported(drawing, tracing, picked, options) };
}

const refused = (findings: readonly Finding[]): Reading<never> => ({ ok: false, findings });

const findingsOf = (reading: Reading<unknown>): readonly Finding[] => (reading.ok ? [] : reading.findings);

interface WithOutlines {
  readonly outlines: Outlines;
}

/** Every section and layer of holes with the outlines its shapes make. */
interface Tracing {
  readonly unit: LengthUnit;
  readonly units: Units;
  readonly scale: Scale;
  readonly joinMm: number;
  readonly sections: readonly (SectionShapes & WithOutlines)[];
  readonly holeLayers: readonly (HoleShapes & WithOutlines)[];
  readonly hollows: readonly (NamedHollow & WithOutlines)[];
  readonly doNotCut: readonly (NamedDoNotCut & WithOutlines)[];
}

function traced(
  sorted: SortedShapes,
  { hollows, doNotCut }: Drawing,
  unit: LengthUnit,
  { join }: ImportOptions,
): Tracing {
  const units: Units = unit.name === 'in' || unit.name === 'ft' ? 'in' : 'mm';
  const scale: Scale = { drawingMm: unit.mm, partMm: mmPer(units), units };
  const joinMm = join === null ? joinDefaultMm : join * scale.partMm;
  const withOutlines = <T extends SectionShapes | HoleShapes | NamedHollow | NamedDoNotCut>(
    from: T,
  ): T & WithOutlines => ({
    ...from,
    outlines: outlinesOf(from.shapes, unit.mm, joinMm),
  });
  return {
    ...{ unit, units, scale, joinMm },
    sections: sorted.sections.map(withOutlines),
    holeLayers: sorted.holeLayers.map(withOutlines),
    hollows: hollows.map(withOutlines),
    doNotCut: doNotCut.map(withOutlines),
  };
}

/** The holes of a drawing that are circles in it, those asked for by place with the circle found there, if any. */
interface PickedHoles {
  readonly asked: readonly { readonly id: string; readonly circle: CircleLoop | null }[];
  readonly holes: readonly RoundHole[];
  /** Circles of sections that are holes, and so no outlines. */
  readonly taken: ReadonlySet<Loop>;
  /** What every hole of the drawing's own is, in its order. */
  readonly ownKinds: readonly HoleKind[];
  readonly proposed: readonly string[];
}

function pickedHoles(drawing: Drawing, tracing: Tracing, options: ImportOptions): PickedHoles {
  const { sections, holeLayers, scale } = tracing;
  const loops = sections.flatMap(({ outlines }) => outlines.loops);
  const asked = options.holes.map((hole) => ({ ...hole, circle: circleRound(loops, hole, scale.partMm) }));
  const found = asked.flatMap(({ id, kind, circle }) => (circle === null ? [] : [{ id, kind, circle }]));
  const onLayers = holeLayers.flatMap(({ kind, outlines }) =>
    kind === null ? [] : outlines.loops.filter(isCircle).map((circle) => ({ kind, circle })),
  );
  const told = new Set<Loop>(found.map(({ circle }) => circle));
  const untold = untoldHoles(drawing, tracing, told, options);
  const ids = new Set([...asked, ...drawing.holes].map(({ id }) => id));
  const holes = [...found, ...numbered([...onLayers, ...untold.circles], ids)];
  const own = drawing.holes.filter(({ kind }) => kind === null).map(({ id }) => id);
  const circles = new Set(untold.circles.map(({ circle }) => circle));
  return {
    asked,
    holes,
    // a bore stays an outline: there is no metal in it, whatever a hole may be bored for
    taken: new Set([...told, ...untold.circles.flatMap(({ kind, circle }) => (kind === 'bore' ? [] : [circle]))]),
    ownKinds: untold.ownKinds,
    proposed: [...own, ...holes.filter(({ circle }) => circles.has(circle)).map(({ id }) => id)],
  };
}

interface UntoldHoles {
  readonly circles: readonly { readonly kind: HoleKind; readonly circle: CircleLoop; readonly prefix: string }[];
  readonly ownKinds: readonly HoleKind[];
}

/** The holes that the file does not say the kind of, with what is proposed of each. */
function untoldHoles(
  { holes }: Drawing,
  { sections, holeLayers, scale }: Tracing,
  told: ReadonlySet<Loop>,
  { proposeHoles }: ImportOptions,
): UntoldHoles {
  const circles = [
    ...holeLayers.flatMap(({ kind, outlines }) => (kind === null ? outlines.loops.filter(isCircle) : [])),
    ...(proposeHoles === null ? [] : sections.flatMap(({ outlines }) => circlesInMetal(outlines.loops))),
  ].filter((circle) => !told.has(circle));
  const own = holes.filter(({ kind }) => kind === null);
  const places = [
    ...circles.map(({ centre, radius }) => ({ at: centre, diameterMm: 2 * radius })),
    ...own.map(({ at, diameter }) => ({
      at: scaleBy(at, scale.drawingMm),
      diameterMm: diameter === null ? null : diameter * scale.drawingMm,
    })),
  ];
  const kinds = kindsProposed(places, scaleBy(proposeHoles?.axis ?? { x: 0, y: 0 }, scale.partMm));
  const ownKind = new Map(own.map((hole, i) => [hole, kinds[circles.length + i] ?? 'bolt']));
  return {
    circles: circles.map((circle, i) => {
      const kind = kinds[i] ?? 'bolt';
      return { kind, circle, prefix: kind === 'bore' ? idPrefixes.bore : untoldPrefix };
    }),
    ownKinds: holes.map((hole) => hole.kind ?? ownKind.get(hole) ?? 'bolt'),
  };
}

const holeCount = ({ holes }: Drawing, picked: PickedHoles): number => holes.length + picked.holes.length;

const kindsNotSaid = (file: string, { holes }: Drawing, { proposeHoles }: ImportOptions): Finding[] =>
  proposeHoles !== null
    ? []
    : holes
        .filter(({ kind }) => kind === null)
        .map(({ place }) => ({
          file,
          at: `${place}, kind`,
          found: 'nothing',
          expected: Object.keys(idPrefixes).join(', '),
        }));

const missingHoles = (file: string, { asked }: PickedHoles): Finding[] =>
  asked
    .filter(({ circle }) => circle === null)
    .map(({ id }) => ({
      file,
      at: `hole ${id}`,
      found: 'no circle round that point',
      expected: 'a circle drawn there',
    }));

function unknownSections(file: string, { sections }: Tracing, { mayCut }: ImportOptions): Finding[] {
  const ids = sections.map(({ id }) => id);
  const expected = `one of ${ids.map(shown).join(', ')}`;
  const unknown = mayCut.filter((id) => !ids.includes(id));
  return unknown.map((id) => suggesting({ file, at: 'may cut', found: shown(id), expected }, id, ids));
}

function noOutline(file: string, { sections, units }: Tracing, { taken }: PickedHoles): Finding[] {
  if (sections.some(({ outlines }) => outlines.loops.some((loop) => !taken.has(loop)))) return [];
  const open = sections.flatMap(({ outlines: { gaps, branches } }) => [
    ...gaps.map((gap) => `a gap of ${gapText(gap, units)}`),
    ...branches.map((branch) => branchText(branch, units)),
  ]);
  const expected = 'at least one, to be a section';
  const listed = open.slice(0, mostListed).map((found) => ({ file, at: '', found, expected: 'lines that close' }));
  return [{ file, at: '', found: 'no closed outline', expected }, ...listed];
}

function imported(drawing: Drawing, tracing: Tracing, picked: PickedHoles, options: ImportOptions): DrawingImport {
  const { unit, joinMm, sections, holeLayers, hollows, doNotCut } = tracing;
  const outlined = [...sections, ...hollows, ...doNotCut];
  const notes = [
    ...drawing.notes,
    ...outlined.flatMap(({ id, outlines }) => sectionNotes(id, outlines)),
    ...holeLayers.flatMap(({ layer, outlines }) => holeNotes(layer, outlines)),
  ];
  return {
    part: partFileOf(drawing, tracing, picked, options),
    unit,
    joinMm,
    joined: outlined.flatMap(({ outlines }) => outlines.joined),
    gaps: outlined.flatMap(({ outlines }) => outlines.gaps),
    branches: outlined.flatMap(({ outlines }) => outlines.branches),
    proposed: picked.proposed,
    notes,
  };
}

function partFileOf(drawing: Drawing, tracing: Tracing, picked: PickedHoles, options: ImportOptions): PartFile {
  const { units, scale, sections } = tracing;
  const hollows = tracing.hollows.map((hollow) => hollowFile(hollow, hollow.outlines.loops, scale));
  const doNotCut = tracing.doNotCut.map((region) => doNotCutFile(region, region.outlines.loops, scale));
  const wallReadings = drawing.wallReadings.map((reading) => wallReadingFile(reading, scale));
  const holes = [
    ...drawing.holes.map((hole, i) => namedHoleFile(hole, picked.ownKinds[i] ?? 'bolt', scale)),
    ...picked.holes.map((hole) => roundHoleFile(hole, scale)),
  ];
  return {
    format: 'fettle-part/1',
    name: options.name,
    units,
    viewedFrom: options.viewedFrom,
    ...(options.traceError === null ? {} : { traceError: options.traceError }),
    ...(holes.length > 0 ? { holes } : {}),
    ...(hollows.length > 0 ? { hollows } : {}),
    ...(doNotCut.length > 0 ? { doNotCut } : {}),
    ...(wallReadings.length > 0 ? { wallReadings } : {}),
    sections: sections.flatMap((section) => {
      const loops = section.outlines.loops.filter((loop) => !picked.taken.has(loop));
      return loops.length > 0 ? [sectionFile(section, section.outlines, loops, options, scale)] : [];
    }),
  };
}

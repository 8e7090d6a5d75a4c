import { dot } from '../geometry/plane/vec.ts';
import type { Section } from '../job/casting.ts';
import type { Part } from '../job/part.ts';
import { type Leg, type Position, positionAlong } from '../job/path.ts';
import type { Joint } from '../joint/joint.ts';
import { handErrorOf } from '../plan/walls/walls.ts';
import { type Contact, contactAt, gapFrom, type Offered, type SurfacePlace, slopesOf } from './contact.ts';
import { asTraced, type Correction, correctionOf, type Unknown, type Unknowns } from './correction.ts';
import { fartherOn, type Moment, momentKey } from './moments.ts';
import { paceAt, runsBy } from './on-the-way.ts';
import { surfacePlaceOf } from './surface-place.ts';
import type { Go, Stopped, TrialReading } from './trial.ts';

/** What one reading says: the gap it is of, as any correction has it, and what was measured. Lengths in mm. */
export interface Equation {
  /** Of the reading; of a stop, as `stop 1` by its go. */
  readonly id: string;
  readonly go: number;
  readonly measuredMm: number;
  /** Whether the gap is what was measured, or no less, or no more. */
  readonly relation: 'equal' | 'at-least' | 'at-most';
  /** Standard deviation of the reading by itself. */
  readonly sdMm: number;
  /** Null where nothing shares depth. */
  readonly predicted: (values: readonly number[]) => Predicted | null;
}

export interface Predicted {
  readonly gapMm: number;
  /** By each unknown. */
  readonly slopes: readonly number[];
  readonly contact: Contact;
}

/** A ± limit is taken as the one that 95 in a hundred keep within. */
export const sdOfLimit = (limit: number): number => limit / 1.96;

/** How near is touching at a stop, ± mm: paint, and the hand that feels it; common practice, no source. */
const touchErrorMm = 0.1;

/** The equations of one go: its stop, what it passed on the way, and its readings. */
export function equationsOf(offered: Offered, go: Go, unknowns: Unknowns, moments: readonly Moment[]): Equation[] {
  const { stopped } = go;
  const momentAt = (position: Position): Moment | null =>
    moments.find(({ key }) => key === momentKey(go.go, position)) ?? null;
  return [
    ...(stopped === null
      ? []
      : [...stopEquation(offered, go, stopped, unknowns, momentAt), ...passedEquation(offered, go, stopped, unknowns)]),
    ...go.readings.flatMap((reading) => readingEquation(offered, go, reading, unknowns, momentAt)),
  ];
}

type MomentAt = (position: Position) => Moment | null;

function readingEquation(
  offered: Offered,
  { go }: Go,
  reading: TrialReading,
  unknowns: Unknowns,
  momentAt: MomentAt,
): Equation[] {
  const place = surfacePlaceOf(offered, reading);
  if (place === null) return [];
  const { position, errorMm, id } = reading;
  const handMm = offered.isCutAt(place.section, place.at) ? handErrorOf(offered.joint.fit) : 0;
  return [
    {
      id,
      go,
      measuredMm: reading.kind === 'clay' ? reading.thicknessMm : 0,
      relation: reading.kind === 'mark' && !reading.touched ? 'at-least' : 'equal',
      sdMm: sdOfLimit(Math.hypot(errorMm, handMm)),
      predicted: predicting(
        offered,
        position,
        unknowns,
        momentAt(position),
        (correction, at) => gapFrom(offered, place, at, correction),
        place,
      ),
    },
  ];
}

function stopEquation(
  offered: Offered,
  { go }: Go,
  stopped: Stopped,
  unknowns: Unknowns,
  momentAt: MomentAt,
): Equation[] {
  const leg = stopped.kind === 'at' ? offered.joint.fit.legs[stopped.leg - 1] : undefined;
  if (stopped.kind === 'home' || leg === undefined) return [];
  const { position } = stopped;
  const contact = contactAt(offered, position, asTraced);
  if (contact === null) return [];
  // it came down end on: in plan one is over the other, by nobody knows how much
  const endOn = runsBy(leg).per === 'slide' && dot(contact.normal, paceAt(leg, contact.movingAt)) === 0;
  return [
    {
      id: `stop ${go}`,
      go,
      measuredMm: 0,
      relation: endOn ? 'at-most' : 'equal',
      sdMm: sdOfLimit(touchErrorMm),
      predicted: predicting(offered, position, unknowns, momentAt(position), (correction, at) =>
        contactAt(offered, at, correction),
      ),
    },
  ];
}

const passedSamples = 24;
const nearMm = 4;
const mostPassed = 8;

/** What it went past without touching, at the places of the way that came nearest by the drawings. */
function passedEquation(offered: Offered, { go }: Go, stopped: Stopped, unknowns: Unknowns): Equation[] {
  const near = passedPositions(offered.joint.fit.legs, stopped)
    .map((position) => ({ position, contact: contactAt(offered, position, asTraced) }))
    .flatMap(({ position, contact }) =>
      contact !== null && contact.gapMm < nearMm ? [{ position, gapMm: contact.gapMm }] : [],
    )
    .sort((a, b) => a.gapMm - b.gapMm)
    .slice(0, mostPassed);
  if (near.length === 0) return [];
  return [
    {
      id: `passed ${go}`,
      go,
      measuredMm: 0,
      relation: 'at-least',
      sdMm: sdOfLimit(touchErrorMm),
      predicted: (values) => {
        const correction = correctionOf(unknowns, values);
        const all = near.flatMap(
          ({ position }) =>
            predictedAt(offered, position, correction, unknowns, contactAt(offered, position, correction)) ?? [],
        );
        return all.reduce<Predicted | null>(
          (least, one) => (least === null || one.gapMm < least.gapMm ? one : least),
          null,
        );
      },
    },
  ];
}

function passedPositions(legs: readonly Leg[], stopped: Stopped): Position[] {
  return legs.flatMap((leg, i) => {
    const { whole } = runsBy(leg);
    const last = stopped.kind === 'home' || i + 1 < stopped.leg ? 1 : i + 1 > stopped.leg ? 0 : stopped.at;
    // what lies within the error of the stop was perhaps not passed
    const until = stopped.kind === 'at' && i + 1 === stopped.leg && whole > 0 ? last - stopped.error / whole : last;
    return Array.from({ length: passedSamples }, (_, k) => (k + 1) / passedSamples)
      .filter((at) => at <= until)
      .map((at) => positionAlong(leg, at));
  });
}

/** With the moving part as much farther on as its position was read wrong. */
const predicting =
  (
    offered: Offered,
    position: Position,
    unknowns: Unknowns,
    moment: Moment | null,
    contactOf: (correction: Correction, at: Position) => Contact | null,
    place?: SurfacePlace,
  ) =>
  (values: readonly number[]): Predicted | null => {
    const correction = correctionOf(unknowns, values);
    const own = unknowns.list.findIndex((one) => one.kind === 'farther-on' && one.moment === moment?.key);
    const at = moment === null ? position : fartherOn(moment, values[own] ?? 0, unknowns.leverMm);
    const predicted = predictedAt(offered, at, correction, unknowns, contactOf(correction, at), place);
    if (predicted === null || moment === null) return predicted;
    const { contact, slopes } = predicted;
    const perMm = runsBy(moment.leg).per === 'turn' ? 1 / unknowns.leverMm : 1;
    const slope = perMm * dot(contact.normal, paceAt(moment.leg, contact.movingAt));
    return { ...predicted, slopes: slopes.with(own, slope) };
  };

function predictedAt(
  offered: Offered,
  position: Position,
  correction: Correction,
  unknowns: Unknowns,
  contact: Contact | null,
  place?: SurfacePlace,
): Predicted | null {
  if (contact === null) return null;
  return { gapMm: contact.gapMm, slopes: slopesOf(contact, offered, position, correction, unknowns, place), contact };
}

const lieOf = (part: Part): Unknown[] => (['shift-x', 'shift-y', 'turn'] as const).map((kind) => ({ kind, part }));

/** The unknowns of a job: how the outlines of each part lie, the moving one's first, how much larger each section is, and how far on it was. */
export function unknownsOf({ fixed, moving }: Joint, leverMm: number, moments: readonly Moment[] = []): Unknowns {
  const offsetsOf = (part: Part, sections: readonly Section[]): Unknown[] =>
    [...new Set(sections.map(({ id }) => id))].map((section) => ({ kind: 'offset', part, section }));
  return {
    list: [
      ...lieOf('moving'),
      ...lieOf('fixed'),
      ...offsetsOf('fixed', fixed.sections),
      ...offsetsOf('moving', moving.sections),
      ...moments.map(({ key }) => ({ kind: 'farther-on' as const, moment: key })),
    ],
    leverMm,
  };
}

import type { PartFile } from '../../src/files/part-file.ts';
import { polygonLoop, type Region } from '../../src/geometry/plane/loop.ts';
import { apply, identity, type Rigid, rigid } from '../../src/geometry/plane/rigid.ts';
import { vec } from '../../src/geometry/plane/vec.ts';
import { metalOnLeft } from '../../src/geometry/polygons/metal-on-left.ts';
import { offset } from '../../src/geometry/polygons/offset.ts';
import type { Random } from '../support/random.ts';
import { carried, loopFilesOf } from './castings/outlines.ts';
import { normal, type Waves, wander } from './castings/wander.ts';

/** A stated ± limit holds 95 times in a hundred, so it is this many times the standard deviation. */
const limitInSigmas = 1.96;

/** What of the variance of a tracing is the same all along a section, what wanders along it, and what is the part's place. */
const shares = { constant: 0.4, wander: 0.3, shift: 0.15, turn: 0.15 };
const traceWaves: Waves = { shortestMm: 25, longestMm: 120 };

/** Where castings have their features: a turn tells there as much as a shift does. */
const atRadiusMm = 150;

/** One section in so many is simply wrong, by so many times the limit. */
const wrongShare = 1 / 20;
const wrongBy = { least: 2, most: 3 };

/** Depths are read by a depth gauge, hollows by an ultrasonic one; stated, whatever the outlines are traced by. */
const depthErrorMm = 0.5;
const hollowErrorMm = 0.5;

export interface Tracing {
  readonly part: PartFile;
  /** Sections that are simply wrong, beyond what was stated. */
  readonly wrong: readonly string[];
}

/** A part as its tracer has it, who states the error that he believes in. */
export function traced(part: PartFile, errorMm: number, random: Random): Tracing {
  const sigma = errorMm / limitInSigmas;
  const place = placeTraced(sigma, random);
  const depths = depthsRead(part, random);
  const read = ([from, to]: readonly [number, number]): [number, number] => [depths(from), depths(to)];
  const wrong: string[] = [];
  const sections = part.sections.map((section) => {
    const isWrong = random.chance(wrongShare);
    if (isWrong) wrong.push(section.id);
    const constantMm = isWrong
      ? random.pick([-1, 1]) * random.between(wrongBy.least, wrongBy.most) * errorMm
      : normal(random, sigma * Math.sqrt(shares.constant));
    const loops = loopsTraced(section.loops, sigma, constantMm, place, random);
    return { ...section, depth: read(section.depth ?? [0, 0]), loops };
  });
  const hollows = (part.hollows ?? []).map((hollow) => {
    const constantMm = normal(random, (hollowErrorMm / limitInSigmas) * Math.sqrt(1 - shares.wander));
    const loops = loopsTraced(hollow.loops, hollowErrorMm / limitInSigmas, constantMm, identity, random);
    return { ...hollow, depth: read(hollow.depth ?? [0, 0]), traceError: hollowErrorMm, loops };
  });
  return { part: { ...part, traceError: errorMm, depthError: depthErrorMm, sections, hollows }, wrong };
}

/** The same with one section traced again with care, laid on the dowels anew; its depth stays as it was read. */
export function tracedAgain(truth: PartFile, before: PartFile, id: string, errorMm: number, random: Random): PartFile {
  const sigma = errorMm / limitInSigmas;
  const loopsOf = (own: PartFile['sections'][number]['loops']): PartFile['sections'][number]['loops'] => {
    const constantMm = normal(random, sigma * Math.sqrt(shares.constant));
    return loopsTraced(own, sigma, constantMm, placeTraced(sigma, random), random);
  };
  const own = truth.sections.find((section) => section.id === id);
  const sections = before.sections.map((section) =>
    own && section.id === id ? { ...section, loops: loopsOf(own.loops) } : section,
  );
  return { ...before, sections };
}

/** Where a tracing lies against the part's dowels. */
function placeTraced(sigma: number, random: Random): Rigid {
  const shift = (): number => normal(random, sigma * Math.sqrt(shares.shift));
  const turnRad = normal(random, (sigma * Math.sqrt(shares.turn)) / atRadiusMm);
  return rigid(turnRad, vec(shift(), shift()));
}

function loopsTraced(
  loops: PartFile['sections'][number]['loops'],
  sigma: number,
  constantMm: number,
  place: Rigid,
  random: Random,
): PartFile['sections'][number]['loops'] {
  const wandering = wander(random, sigma * Math.sqrt(shares.wander), traceWaves);
  const grown = offset(metalOnLeft(regionOf(loops)), constantMm, 0.01, 'outside').polygons;
  return loopFilesOf(carried(grown, (at) => apply(place, wandering(at))));
}

const regionOf = (loops: PartFile['sections'][number]['loops']): Region =>
  loops.map((loop) => polygonLoop(Array.isArray(loop) ? loop.map(([x, y]) => vec(x, y)) : []));

/** Every depth of a part read once: sections that meet at one go on meeting. The face itself is the datum. */
function depthsRead({ sections, hollows = [] }: PartFile, random: Random): (mm: number) => number {
  const readings = new Map<number, number>([[0, 0]]);
  for (const mm of [...sections, ...hollows].flatMap(({ depth = [0, 0] }) => depth))
    if (!readings.has(mm)) readings.set(mm, mm + normal(random, depthErrorMm / limitInSigmas));
  return (mm) => readings.get(mm) ?? mm;
}

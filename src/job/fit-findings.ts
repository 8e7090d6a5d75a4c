import { farLengths } from '../files/far-lengths.ts';
import type { Finding } from '../files/finding.ts';
import { fitFile, mostCutters, mostPairs, mostPositions, type PositionFile, position } from '../files/fit-file.ts';
import { suggesting } from '../files/nearest.ts';
import { asList, fieldOf, listOf, textOf } from '../files/raw-value.ts';
import { schemaFindings } from '../files/schema-findings.ts';
import { shown } from '../files/shown.ts';
import { mmPer } from './lengths.ts';
import { motionBetween } from './path.ts';
import { isHome, positionOf } from './position-of.ts';
import { mostWander } from './wander.ts';

/** The holes a fit may name: those of a part as it stands in its file; null where that could not be read. */
export interface KnownHoles {
  readonly file: string;
  readonly ids: readonly string[] | null;
}

export const holeIds = (file: string, rawPart: unknown): KnownHoles => ({
  file,
  ids: rawPart === undefined ? null : listOf(rawPart, 'holes').flatMap((hole) => textOf(hole, 'id') ?? []),
});

/** What keeps a raw value from being a sound fit: its schema, lengths, the holes it names, the way in, all at once. */
export function fitFindings(file: string, raw: unknown, fixed: KnownHoles, moving: KnownHoles): Finding[] {
  const mm = mmPer(textOf(raw, 'units') === 'in' ? 'in' : 'mm');
  return [
    ...schemaFindings(file, fitFile, raw),
    ...farLengths(file, raw, mm),
    ...cutterFindings(file, 'cutter.radius', fieldOf(fieldOf(raw, 'cutter'), 'radius'), mm),
    ...radiiFindings(file, listOf(raw, 'cutters').slice(0, mostCutters), mm),
    ...clearanceFindings(file, fieldOf(raw, 'clearance'), mm),
    ...unknownHole(file, 'axis', fieldOf(raw, 'axis'), fixed),
    ...pairFindings(file, 'dowels', listOf(raw, 'dowels'), fixed, moving),
    ...pairFindings(file, 'bolts', listOf(raw, 'bolts'), fixed, moving),
    ...wayInFindings(file, listOf(raw, 'offerUp').slice(0, mostPositions), mm),
    ...wanderFindings(file, raw, mm),
  ];
}

/** The discs of the largest hand grinders are 115 mm in radius, fly cutters for cylinder heads 180 mm; both from memory. */
const widestCutterMm = 250;

/** A radius written in another unit, or of a wall: nothing could be cut by it, and to plan for it takes minutes. */
function cutterFindings(file: string, at: string, radius: unknown, mm: number): Finding[] {
  if (typeof radius !== 'number' || !(radius * mm > widestCutterMm)) return [];
  const expected = `the radius of a cutter, ${atMost(widestCutterMm, mm)}`;
  return [{ file, at, found: String(radius), expected }];
}

const radiiFindings = (file: string, radii: readonly unknown[], mm: number): Finding[] =>
  radii.flatMap((radius, i) => {
    const at = `cutters[${i}]`;
    if (typeof radius === 'number' && radii.indexOf(radius) < i)
      return [{ file, at, found: `${radius}, listed already`, expected: 'each radius once' }];
    return cutterFindings(file, at, radius, mm);
  });

const atMost = (mostMm: number, mm: number): string =>
  `at most ${mostMm} mm${mm === 1 ? '' : `, which is ${Math.floor((100 * mostMm) / mm) / 100} here`}`;

/** Room for a hand or a shield against heat is a quarter of this, from memory; bolted castings are given 2 mm. */
const widestClearanceMm = 100;

/** A clearance written in another unit, or of something else: all of a casting would have to go, and to plan that takes minutes. */
function clearanceFindings(file: string, clearance: unknown, mm: number): Finding[] {
  const asked = [
    { at: 'clearance', value: clearance },
    { at: 'clearance.home', value: fieldOf(clearance, 'home') },
    { at: 'clearance.wayIn', value: fieldOf(clearance, 'wayIn') },
  ];
  return asked
    .filter(({ value }) => typeof value === 'number' && value * mm > widestClearanceMm)
    .map(({ at, value }) => ({
      file,
      at,
      found: String(value),
      expected: `a clearance, ${atMost(widestClearanceMm, mm)}`,
    }));
}

function pairFindings(
  file: string,
  list: string,
  pairs: readonly unknown[],
  fixed: KnownHoles,
  moving: KnownHoles,
): Finding[] {
  return [fixed, moving].flatMap((holes, side) => {
    const paired = new Set<unknown>();
    return pairs.slice(0, mostPairs).flatMap((pair, i) => {
      const at = `${list}[${i}][${side}]`;
      const id = asList(pair)[side];
      if (paired.has(id))
        return [{ file, at, found: `${shown(id)}, paired already`, expected: 'each hole in one pair' }];
      if (typeof id === 'string') paired.add(id);
      return unknownHole(file, at, id, holes);
    });
  });
}

function unknownHole(file: string, at: string, id: unknown, holes: KnownHoles): Finding[] {
  if (typeof id !== 'string' || holes.ids === null || holes.ids.includes(id)) return [];
  const known = holes.ids.length === 0 ? 'it has none' : holes.ids.slice(0, 12).join(', ');
  const finding = { file, at, found: shown(id), expected: `the id of a hole in ${holes.file} (${known})` };
  return [suggesting(finding, id, holes.ids)];
}

function wayInFindings(file: string, positions: readonly unknown[], mm: number): Finding[] {
  const read = positions.map((raw): PositionFile | null => position.safeParse(raw).data ?? null);
  const steps = read.slice(1).flatMap((to, i) => stepFindings(file, i + 1, read[i] ?? null, to, mm));
  const last = read.at(-1);
  if (last === undefined || last === null || isHome(positionOf(last, mm))) return steps;
  return [...steps, { file, at: `offerUp[${read.length - 1}]`, found: positionWords(last), expected: homeWords }];
}

/** Straying is of a way in, and nobody strays farther than a hand's breadth. */
function wanderFindings(file: string, raw: unknown, mm: number): Finding[] {
  const wander = fieldOf(raw, 'wander');
  if (typeof wander !== 'object' || wander === null) return [];
  const far = (['standOff', 'shift'] as const).flatMap((name): Finding[] => {
    const value = fieldOf(wander, name);
    const mostMm = mostWander[`${name}Mm`];
    if (typeof value !== 'number' || !(value * mm > mostMm)) return [];
    return [{ file, at: `wander.${name}`, found: String(value), expected: `a hand astray, ${atMost(mostMm, mm)}` }];
  });
  if (listOf(raw, 'offerUp').length > 1) return far;
  const expected = 'offerUp with the way in that is strayed from, or no wander';
  return [...far, { file, at: 'wander', found: 'a wander without a way in', expected }];
}

const homeWords = 'home at the end of the way in: standOff 0, turn 0, shift [0, 0]';

const positionWords = ({ standOff = 0, turn = 0, shift = [0, 0] }: PositionFile): string =>
  `standOff ${standOff}, turn ${turn}, shift ${shown(shift)}`;

function stepFindings(
  file: string,
  index: number,
  from: PositionFile | null,
  to: PositionFile | null,
  mm: number,
): Finding[] {
  if (from === null || to === null) return [];
  if (motionBetween(positionOf(from, mm), positionOf(to, mm)) !== null) return [];
  const turn = (to.turn ?? 0) - (from.turn ?? 0);
  const found = `a turn by ${turn}° together with a shift`;
  return [{ file, at: `offerUp[${index}]`, found, expected: 'at most 180° where the shift changes: add a position' }];
}

import type { DialRound } from '../bore/bore-result.ts';
import type { DialReading } from '../bore/dial-fit.ts';
import type { Reading } from '../files/finding.ts';
import { shown } from '../files/shown.ts';
import { lengthMm } from './typed-length.ts';
import { wrongValue } from './wrong-value.ts';

const fewestPlaces = 4;
const mostWritten = 10_000;
/** Farther than the plunger of a dial goes. */
const mostReadMm = 10;
/** Places nearer to one another tell of one place. */
const leastApartRad = (5 * Math.PI) / 180;
const hairRad = 1e-6;
const fullTurn = 2 * Math.PI;

const form = 'readings such as 12:0,3:0.08,6:-0.05,9:0.08, places by the clock or as 45deg';

/** Readings of a dial once round, each at its place, the first place once more at the end if it was; or what is wrong. */
export function readDialRound(at: string, text: string): Reading<DialRound> {
  if (text.length > mostWritten) return wrongValue(at, `${text.length} letters`, `at most ${mostWritten}`);
  const readings: DialReading[] = [];
  for (const written of text.split(',')) {
    const read = readOne(at, written);
    if (!read.ok) return read;
    readings.push(read.value);
  }
  return roundOf(at, readings);
}

function readOne(at: string, written: string): Reading<DialReading> {
  const [place = '', length, more] = written.split(':');
  if (length === undefined || more !== undefined) return wrongValue(at, shown(written), form);
  const angleRad = angleOfPlace(place.trim());
  if (angleRad === null)
    return wrongValue(
      at,
      `the place ${shown(place)}`,
      "1 to 12 o'clock, 1.5 for half past 1, or an angle such as 45deg",
    );
  const readMm = signedMm(length.trim());
  if (readMm === null) return wrongValue(at, `the reading ${shown(length)}`, form);
  if (Math.abs(readMm) > mostReadMm)
    return wrongValue(at, `the reading ${shown(length)}`, `no more than ±${mostReadMm} mm, which is what a dial reads`);
  return { ok: true, value: { angleRad, readMm } };
}

/** Anticlockwise from 3 o'clock, as an angle is written; an hour is a twelfth of a turn the other way. */
function angleOfPlace(place: string): number | null {
  const [, hour] = /^(\d{1,2}(?:\.\d{1,6})?)h?$/.exec(place) ?? [];
  if (hour !== undefined) {
    const hours = Number(hour);
    return hours >= 1 && hours < 13 ? ((3 - hours) * fullTurn) / 12 : null;
  }
  const [, degrees] = /^([+-]?\d{1,3}(?:\.\d{1,6})?)(?:deg|°)$/.exec(place) ?? [];
  return degrees === undefined || Math.abs(Number(degrees)) > 360 ? null : (Number(degrees) * fullTurn) / 360;
}

function signedMm(text: string): number | null {
  const [, sign = '', length = ''] = /^([+\-−]?)(.*)$/.exec(text) ?? [];
  const mm = lengthMm(length);
  return mm === null || length.startsWith(' ') ? null : (sign === '' || sign === '+' ? 1 : -1) * mm + 0;
}

/** Told apart by their places: the first one again at the end closes the round. */
function roundOf(at: string, all: readonly DialReading[]): Reading<DialRound> {
  const [first, last] = [all[0], all.at(-1)];
  const again = all.length > 1 && first !== undefined && last !== undefined && apartRad(first, last) < hairRad;
  const once = again ? all.slice(0, -1) : all;
  const readings: DialReading[] = [];
  for (const reading of once) {
    const near = readings.find((other) => apartRad(other, reading) < leastApartRad - hairRad);
    if (near !== undefined && apartRad(near, reading) < hairRad) {
      if (near.readMm !== reading.readMm)
        return wrongValue(
          at,
          `${placeName(reading)} twice, with different readings`,
          'each place once, but the first again at the end',
        );
    } else if (near !== undefined)
      return wrongValue(at, `${placeName(near)} and ${placeName(reading)}`, 'places 5° apart or more');
    else readings.push(reading);
  }
  if (readings.length < fewestPlaces) {
    const found = readings.length === 1 ? '1 place' : `${readings.length} places`;
    return wrongValue(
      at,
      found,
      `${fewestPlaces} places or more: any three readings fit a circle, and nothing would check them`,
    );
  }
  if (widestGapRad(readings) > Math.PI - hairRad)
    return wrongValue(at, 'places on one half of the bore alone', 'places all the way round');
  return { ok: true, value: { readings, againMm: again ? last.readMm : null } };
}

const apartRad = (a: DialReading, b: DialReading): number =>
  Math.abs(Math.atan2(Math.sin(a.angleRad - b.angleRad), Math.cos(a.angleRad - b.angleRad)));

const placeName = ({ angleRad }: DialReading): string => `${Number(((angleRad * 360) / fullTurn).toFixed(2))}deg`;

function widestGapRad(readings: readonly DialReading[]): number {
  const angles = readings.map(({ angleRad }) => ((angleRad % fullTurn) + fullTurn) % fullTurn).sort((a, b) => a - b);
  return Math.max(...angles.map((angle, i) => (angles[i + 1] ?? (angles[0] ?? 0) + fullTurn) - angle));
}

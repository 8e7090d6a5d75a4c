import type { Finding, Reading } from '../src/files/finding.ts';
import { shown } from '../src/files/shown.ts';
import { mmIn } from '../src/job/length-text.ts';
import type { Units } from '../src/job/lengths.ts';
import { mostWander, noWander, type Wander } from '../src/job/wander.ts';
import { degreesOf } from '../src/words/units.ts';

/** What may be strayed in: its name, and what one of its unit comes to. */
const places = {
  turn: { key: 'turnRad', radians: Math.PI / 180 },
  standOff: { key: 'standOffMm', radians: null },
  shift: { key: 'shiftMm', radians: null },
  tilt: { key: 'tiltRad', radians: Math.PI / 180 },
} as const;

const isPlace = (name: string): name is keyof typeof places => Object.hasOwn(places, name);

const { turnRad, shiftMm, tiltRad } = mostWander;
const expectedWander = `turn (${degreesOf(turnRad)}° at most), standOff, shift (${shiftMm} mm), tilt (${degreesOf(tiltRad)}°), such as turn=1,standOff=2`;

/** `turn=1,standOff=2,shift=1,tilt=0.5`: degrees, and lengths in the units of the fit; what is left out is none. */
export function wanderAsked(file: string, text: string, units: Units): Reading<Wander> {
  const findings: Finding[] = [];
  let wander: Wander = noWander;
  for (const pair of text.split(',')) {
    const [name = '', value = ''] = pair.split('=').map((word) => word.trim());
    const place = isPlace(name) ? places[name] : null;
    const amount = value === '' || place === null ? Number.NaN : Number(value) * (place.radians ?? mmIn(units));
    if (place === null || !(amount >= 0 && amount <= mostWander[place.key])) {
      findings.push({ file, at: '--wander', found: shown(pair), expected: expectedWander });
      continue;
    }
    wander = { ...wander, [place.key]: amount };
  }
  return findings.length > 0 ? { ok: false, findings: findings.slice(0, 1) } : { ok: true, value: wander };
}

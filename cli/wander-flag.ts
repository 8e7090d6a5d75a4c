import type { Finding, Reading } from '../src/files/finding.ts';
import { shown } from '../src/files/shown.ts';
import { mmIn } from '../src/job/length-text.ts';
import type { Units } from '../src/job/lengths.ts';
import { noWander, type Wander } from '../src/ways/wander.ts';

/** What may be strayed in, and the most of it that is still steering: degrees, and lengths in mm. */
const most = { turn: 30, standOff: 100, shift: 100, tilt: 20 } as const;

const places: Readonly<Record<keyof typeof most, keyof Wander>> = {
  turn: 'turnRad',
  standOff: 'standOffMm',
  shift: 'shiftMm',
  tilt: 'tiltRad',
};

const isAngle = (name: keyof typeof most): boolean => name === 'turn' || name === 'tilt';

/** `turn=1,standOff=2,shift=1,tilt=0.5`: degrees, and lengths in the units of the fit; what is left out is none. */
export function wanderAsked(file: string, text: string, units: Units): Reading<Wander> {
  const findings: Finding[] = [];
  let wander: Wander = noWander;
  for (const pair of text.split(',')) {
    const [name = '', value = ''] = pair.split('=').map((word) => word.trim());
    const factor = Object.hasOwn(most, name) && isAngle(name as keyof typeof most) ? 1 : mmIn(units);
    const amount = value === '' ? Number.NaN : Number(value) * factor;
    if (!Object.hasOwn(most, name) || !(amount >= 0 && amount <= most[name as keyof typeof most])) {
      const expected = 'turn (30° at most), standOff, shift (100 mm), tilt (20°), such as turn=1,standOff=2';
      findings.push({ file, at: '--wander', found: shown(pair), expected });
      continue;
    }
    const key = name as keyof typeof most;
    wander = { ...wander, [places[key]]: isAngle(key) ? (amount * Math.PI) / 180 : amount };
  }
  return findings.length > 0 ? { ok: false, findings: findings.slice(0, 1) } : { ok: true, value: wander };
}

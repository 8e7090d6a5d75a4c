import type { BoltAnswer, DowelUpAnswer, Warning } from '../answers/check-answer.ts';
import type { Hole } from '../job/casting.ts';
import type { Fit, HolePair, Job } from '../job/job.ts';
import { fineLength, givenLength } from '../job/length-text.ts';
import { spacingRatio } from './spacing-ratio.ts';
import { type PairLimits, suggestPairing } from './suggest-pairing.ts';
import { jointWarning } from './warnings.ts';

/** A joint as dowelled up, with what was found of its holes. */
export interface Registered {
  /** Paired holes in the joint frame at home. */
  readonly fit: Pick<Fit, 'dowels' | 'bolts' | 'registrationMm' | 'units'>;
  readonly movingHoles: readonly Hole[];
  readonly files: Pick<Job, 'fixed' | 'moving'>;
  readonly spacingErrorMm: DowelUpAnswer['spacingErrorMm'];
  readonly bolts: readonly BoltAnswer[];
  /** What is said of drawings of two hands; null where they are not. */
  readonly mirrored: Warning | null;
}

// farther than this nobody misses a hole by tracing it badly, mm; common practice, no source
const boltMissMm = 5;
const boltMissOfAllowed = 10;
const spacingMissMm = 2;

// answers are rounded to 1e-6; a hole exactly at its limit registers
const hairMm = 1e-6;

/**
 * Why two drawings do not register, so that nothing is judged; null where they do. Mirrored drawings never do; paired
 * holes do not where they miss by more than the fit's `registration`, or the limits of the trade.
 */
export function registrationRefusal(registered: Registered): Warning | null {
  const { mirrored } = registered;
  if (mirrored !== null) {
    const other = suggestionText(registered);
    return other === '' ? mirrored : { ...mirrored, text: `${mirrored.text} Or holes are paired wrongly: ${other}` };
  }
  return dowelRefusal(registered) ?? boltRefusal(registered);
}

const limitsOf = ({ fit, bolts }: Registered): PairLimits => {
  const allowed = new Map(bolts.map(({ fixed, allowedMm }) => [fixed, allowedMm]));
  return {
    dowelMm: fit.registrationMm ?? spacingMissMm,
    boltMm: ({ fixed }) => boltLimitMm(fit.registrationMm, allowed.get(fixed.id) ?? null),
  };
};

const boltLimitMm = (registrationMm: number | null, allowedMm: number | null): number =>
  registrationMm ?? Math.max(boltMissMm, boltMissOfAllowed * (allowedMm ?? 0));

function dowelRefusal(registered: Registered): Warning | null {
  const { dowelMm } = limitsOf(registered);
  const { fit } = registered;
  const offMm = Math.abs(registered.spacingErrorMm ?? 0);
  if (offMm <= dowelMm + hairMm) return null;
  const text = `The spacing of the paired dowels differs by ${fineLength(offMm, fit.units)} between the two drawings; beyond ${givenLength(dowelMm, fit.units)} nothing is judged. ${causeText(registered)}`;
  return jointWarning('dowels-do-not-register', text);
}

function boltRefusal(registered: Registered): Warning | null {
  const { fit, bolts } = registered;
  const missing = bolts
    .map((bolt, i) => ({ ...bolt, limitMm: boltLimitMm(fit.registrationMm, bolt.allowedMm), pair: fit.bolts[i] }))
    .filter(({ offsetMm, limitMm }) => offsetMm > limitMm + hairMm);
  const [worst] = missing.sort((a, b) => b.offsetMm - a.offsetMm);
  if (worst === undefined) return null;
  const others = missing.length === 1 ? '' : ` (${missing.length} of ${bolts.length} bolts miss so)`;
  const text = `Bolt ${worst.fixed}–${worst.moving} misses by ${fineLength(worst.offsetMm, fit.units)}${others}; beyond ${givenLength(worst.limitMm, fit.units)} nothing is judged. ${causeText(registered)}`;
  return jointWarning('bolts-do-not-register', text, worst.pair?.fixed.at);
}

/** The likeliest cause of holes that miss, and what to do about it. */
function causeText(registered: Registered): string {
  const { fit, files } = registered;
  const { fixed, moving } = files;
  const inches = inchesText([...fit.dowels, ...fit.bolts], files);
  if (inches !== '') return inches;
  const suggested = suggestionText(registered);
  if (suggested !== '') return `Likeliest holes are paired wrongly: ${suggested}`;
  const dowels = fit.dowels.length < 2 ? 'Fewer than two dowels are paired: pair two, or look at the axis. ' : '';
  return `${dowels}Look again at which holes are paired, at viewedFrom of ${fixed.file} ("${fixed.viewedFrom}") and ${moving.file} ("${moving.viewedFrom}"), and measure the holes again.`;
}

// a tenth either way: holes that are off besides must not hide it
const inchMm = 25.4;
const nearInch = 0.1;

function inchesText(pairs: readonly HolePair[], { fixed, moving }: Registered['files']): string {
  const ratio = spacingRatio(pairs);
  if (ratio === null) return '';
  const factor = Math.max(ratio, 1 / ratio);
  if (Math.abs(factor / inchMm - 1) > nearInch) return '';
  const [large, small] = ratio > 1 ? [moving, fixed] : [fixed, moving];
  return `One of the drawings is in inches: the paired holes stand ${factor.toFixed(1)} times as far apart in ${large.file} as in ${small.file}. Look again at units of ${fixed.file} ("${fixed.units}") and ${moving.file} ("${moving.units}").`;
}

/** `pair B3 with H4 and B4 with H3 instead.`; empty where no pairing stands out. */
function suggestionText(registered: Registered): string {
  const { fit, movingHoles } = registered;
  const pairs = suggestPairing(fit, movingHoles, limitsOf(registered));
  if (pairs.length === 0) return '';
  const said = pairs.map(({ fixed, moving }) => `${fixed.id} with ${moving.id}`);
  return `pair ${[said.slice(0, -1).join(', '), said.at(-1)].filter(Boolean).join(' and ')} instead.`;
}

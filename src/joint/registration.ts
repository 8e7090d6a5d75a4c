import type { Hole } from '../job/casting.ts';
import type { Fit, HolePair, Job } from '../job/job.ts';
import type { Bolt } from './bolts.ts';
import type { HandCheck } from './hand.ts';
import { drawingOf, type MissCause, type PairNames, type Refusal } from './notices.ts';
import { spacingRatio } from './spacing-ratio.ts';
import { type PairLimits, suggestPairing } from './suggest-pairing.ts';
import { registrationHairMm } from './tolerances.ts';

/** A joint as dowelled up, with what was found of its holes. */
export interface Registration {
  /** Paired holes in the joint frame at home. */
  readonly fit: Pick<Fit, 'dowels' | 'bolts' | 'registrationMm'>;
  readonly movingHoles: readonly Hole[];
  readonly files: Pick<Job, 'fixed' | 'moving'>;
  readonly spacingErrorMm: number | null;
  readonly bolts: readonly Bolt[];
  readonly hand: HandCheck;
}

// farther than this nobody misses a hole by tracing it badly, mm; common practice, no source
const boltMissMm = 5;
const boltMissOfAllowed = 10;
const spacingMissMm = 2;

/**
 * Why two drawings do not register, so that nothing is judged; null where they do. Mirrored drawings never do; paired
 * holes do not where they miss by more than the fit's `registration`, or the limits of the trade.
 */
export const registrationRefusal = (registered: Registration): Refusal | null =>
  handRefusal(registered) ?? dowelRefusal(registered) ?? boltRefusal(registered);

function handRefusal(registered: Registration): Refusal | null {
  const { hand, asDrawnRmsMm, mirroredRmsMm } = registered.hand;
  if (hand !== 'mirrored' || asDrawnRmsMm === null || mirroredRmsMm === null) return null;
  return {
    code: 'hand-mirrored',
    asDrawnRmsMm,
    mirroredRmsMm,
    ...drawingsOf(registered),
    instead: suggested(registered),
  };
}

const limitsOf = ({ fit, bolts }: Registration): PairLimits => {
  const allowed = new Map(bolts.map(({ fixed, allowedMm }) => [fixed, allowedMm]));
  return {
    dowelMm: fit.registrationMm ?? spacingMissMm,
    boltMm: ({ fixed }) => boltLimitMm(fit.registrationMm, allowed.get(fixed.id) ?? null),
  };
};

const boltLimitMm = (registrationMm: number | null, allowedMm: number | null): number =>
  registrationMm ?? Math.max(boltMissMm, boltMissOfAllowed * (allowedMm ?? 0));

function dowelRefusal(registered: Registration): Refusal | null {
  const { dowelMm } = limitsOf(registered);
  const offMm = Math.abs(registered.spacingErrorMm ?? 0);
  if (offMm <= dowelMm + registrationHairMm) return null;
  return { code: 'dowels-do-not-register', offMm, limitMm: dowelMm, cause: causeOf(registered) };
}

function boltRefusal(registered: Registration): Refusal | null {
  const { fit, bolts } = registered;
  const missing = fit.bolts
    .flatMap((pair, i) => {
      const bolt = bolts[i];
      if (bolt === undefined) return [];
      return [{ ...bolt, limitMm: boltLimitMm(fit.registrationMm, bolt.allowedMm), at: pair.fixed.at }];
    })
    .filter(({ offsetMm, limitMm }) => offsetMm > limitMm + registrationHairMm)
    .sort((a, b) => b.offsetMm - a.offsetMm);
  const [worst] = missing;
  if (worst === undefined) return null;
  const { fixed, moving, offsetMm, limitMm, at } = worst;
  return {
    code: 'bolts-do-not-register',
    fixed,
    moving,
    offsetMm,
    limitMm,
    missing: missing.length,
    of: bolts.length,
    cause: causeOf(registered),
    at,
  };
}

function causeOf(registered: Registration): MissCause {
  const { fit } = registered;
  const inches = inchesIn([...fit.dowels, ...fit.bolts], registered);
  if (inches !== null) return inches;
  const instead = suggested(registered);
  if (instead.length > 0) return { kind: 'paired-wrongly', instead };
  return { kind: 'not-known', fewDowels: fit.dowels.length < 2, ...drawingsOf(registered) };
}

// a tenth either way: holes that are off besides must not hide it
const inchMm = 25.4;
const nearInch = 0.1;

function inchesIn(pairs: readonly HolePair[], registered: Registration): MissCause | null {
  const ratio = spacingRatio(pairs);
  if (ratio === null) return null;
  const factor = Math.max(ratio, 1 / ratio);
  if (Math.abs(factor / inchMm - 1) > nearInch) return null;
  const { fixed, moving } = drawingsOf(registered);
  const [large, small] = ratio > 1 ? [moving.file, fixed.file] : [fixed.file, moving.file];
  return { kind: 'inches', factor, large, small, fixed, moving };
}

const drawingsOf = ({ files }: Registration) => ({ fixed: drawingOf(files.fixed), moving: drawingOf(files.moving) });

/** The pairs that should stand instead; empty where no pairing stands out. */
const suggested = (registered: Registration): PairNames[] =>
  suggestPairing(registered.fit, registered.movingHoles, limitsOf(registered)).map(({ fixed, moving }) => ({
    fixed: fixed.id,
    moving: moving.id,
  }));

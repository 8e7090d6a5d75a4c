import { add, cross, distance, dot, length, scale, sub, type Vec, vec } from '../../geometry/plane/vec.ts';
import type { HolePair } from '../../job/job.ts';
import type { Bolt } from '../../joint/bolts.ts';
import type { Hand } from '../../joint/hand.ts';
import type { Joint } from '../../joint/joint.ts';
import { type Doubt, type DoubtCode, differing, doubt } from './verify-doubt.ts';
import { roundingMm } from './verify-limits.ts';

/** Errors of place that every pair of sections has: half the worst dowel play and the rms of the dowel fit, mm. */
export const placeErrorsMm = ({ fit }: Joint): readonly [number, number] => [playMm(fit.dowels), rmsMm(fit.dowels)];

/** Dowels and bolts measured again from where their holes stand at home. */
export function dowelDoubts({ fit, dowelUp, bolts }: Joint): Doubt[] {
  const rms = fit.dowels.length === 0 ? null : rmsMm(fit.dowels);
  return [
    ...fit.dowels.flatMap((pair, i) =>
      differ('dowel-offset', pairName(pair), dowelUp.pairs[i]?.offsetMm ?? null, offsetMm(pair)),
    ),
    ...differ('dowel-rms', 'the dowel fit', dowelUp.rmsMm, rms),
    ...differ('dowel-spacing', 'the dowels', dowelUp.spacingErrorMm, spacingErrorMm(fit.dowels)),
    ...fitDoubts(fit.dowels),
    ...handDoubts([...fit.dowels, ...fit.bolts], dowelUp.hand),
    ...fit.bolts.flatMap((pair, i) => boltDoubts(pair, bolts[i])),
  ];
}

const offsetMm = ({ fixed, moving }: HolePair): number => distance(fixed.at, moving.at);

const pairName = ({ fixed, moving }: HolePair): string => `${fixed.id}–${moving.id}`;

const rmsMm = (pairs: readonly HolePair[]): number =>
  pairs.length === 0 ? 0 : Math.hypot(...pairs.map(offsetMm)) / Math.sqrt(pairs.length);

function playMm(pairs: readonly HolePair[]): number {
  const clearances = pairs.map(({ fixed, moving }) => {
    if (fixed.diameterMm === null || moving.diameterMm === null) return 0;
    const movingIsPin = moving.proudMm > 0;
    if (movingIsPin === fixed.proudMm > 0) return Math.abs(fixed.diameterMm - moving.diameterMm);
    return movingIsPin ? fixed.diameterMm - moving.diameterMm : moving.diameterMm - fixed.diameterMm;
  });
  return Math.max(0, ...clearances) / 2;
}

/** Moving less fixed spacing of the two dowels that differ most. */
function spacingErrorMm(pairs: readonly HolePair[]): number | null {
  const errors = pairs.flatMap((a, i) =>
    pairs.slice(0, i).map((b) => distance(a.moving.at, b.moving.at) - distance(a.fixed.at, b.fixed.at)),
  );
  return errors.toSorted((a, b) => Math.abs(b) - Math.abs(a))[0] ?? null;
}

/** A best fit leaves offsets that no shift and no turn can better: they add up to nothing, and so do their moments. */
function fitDoubts(pairs: readonly HolePair[]): Doubt[] {
  if (pairs.length === 0) return [];
  const offsets = pairs.map(({ fixed, moving }) => sub(fixed.at, moving.at));
  const shift = length(mean(offsets));
  const middle = mean(pairs.map(({ moving }) => moving.at));
  const arms = pairs.map(({ moving }) => sub(moving.at, middle));
  const inertia = arms.reduce((sum, arm) => sum + dot(arm, arm), 0);
  const moment = arms.reduce((sum, arm, i) => sum + cross(arm, offsets[i] as Vec), 0);
  const turn = pairs.length < 2 || inertia === 0 ? 0 : Math.abs(moment) / Math.sqrt(inertia);
  return differ('dowel-fit', 'what a better shift or turn would win', 0, Math.max(shift, turn));
}

const mean = (points: readonly Vec[]): Vec => scale(points.reduce(add, vec(0, 0)), 1 / points.length);

/** Which hand fits better; by how much it must be better is for the result to say. */
function handDoubts(pairs: readonly HolePair[], hand: Hand): Doubt[] {
  const [asDrawn, mirrored] = [misfit(pairs, 1), misfit(pairs, -1)];
  const fits =
    hand === 'cannot-tell' || (pairs.length >= 3 && (hand === 'agrees' ? asDrawn < mirrored : mirrored < asDrawn));
  if (fits) return [];
  const text = `The hand is given as "${hand}"; the paired holes miss by ${asDrawn} as drawn and ${mirrored} mirrored.`;
  return [doubt('hand', 'joint', text)];
}

/**
 * Sum of squared offsets (mm²) of the best turn and shift, the moving holes mirrored where `sense` is −1: about both
 * middles Σ|a|² + Σ|b|² − 2|Σ ā·b| as complex numbers.
 */
function misfit(pairs: readonly HolePair[], sense: 1 | -1): number {
  const from = pairs.map(({ moving }) => vec(sense * moving.at.x, moving.at.y));
  const to = pairs.map(({ fixed }) => fixed.at);
  const a = from.map((p) => sub(p, mean(from)));
  const b = to.map((p) => sub(p, mean(to)));
  const sum = (each: (p: Vec, q: Vec) => number): number => a.reduce((s, p, i) => s + each(p, b[i] as Vec), 0);
  return sum((p, q) => dot(p, p) + dot(q, q)) - 2 * Math.hypot(sum(dot), sum(cross));
}

function boltDoubts(pair: HolePair, bolt: Bolt | undefined): Doubt[] {
  const found = offsetMm(pair);
  const doubts = differ('bolt-offset', pairName(pair), bolt?.offsetMm ?? null, found);
  if (bolt === undefined) return doubts;
  const { allowedMm, linesUp } = bolt;
  const isAtLimit = allowedMm !== null && Math.abs(found - allowedMm) <= roundingMm;
  if (isAtLimit || linesUp === (allowedMm === null ? null : found <= allowedMm)) return doubts;
  const text = `Bolt ${pairName(pair)} is given as ${linesUp ? '' : 'not '}lining up.`;
  return [...doubts, doubt('bolt-lines-up', 'joint', text, { claimedMm: allowedMm, foundMm: found })];
}

const differ = (what: DoubtCode, name: string, claimedMm: number | null, foundMm: number | null): Doubt[] =>
  differing(what, 'joint', name, claimedMm, foundMm, roundingMm);

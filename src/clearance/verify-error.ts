import type { HomeAnswer, InstallAnswer } from '../model/check-answer.ts';
import type { Doubt } from './verify-doubt.ts';
import { roundingMm } from './verify-dowels.ts';
import type { Solid } from './verify-solids.ts';

/** The tracing error of the pair an answer points out: its terms added straight, and by root sum of squares. */
export function errorDoubts(
  where: Doubt['where'],
  { errorMm, errorRssMm, nearest }: HomeAnswer | InstallAnswer,
  solids: { readonly fixed: readonly Solid[]; readonly moving: readonly Solid[] },
  placeErrorsMm: readonly number[],
): Doubt[] {
  const terms = nearest && [
    traceErrorOf(solids.fixed, nearest.fixedSection),
    traceErrorOf(solids.moving, nearest.movingSection),
    ...placeErrorsMm,
  ];
  const straight = terms?.reduce((sum, e) => sum + e, 0) ?? null;
  const bySquares = terms && Math.hypot(...terms);
  return [
    ...differ(where, 'The error of the nearest pair', errorMm, straight),
    ...differ(where, 'The error of the nearest pair by root sum of squares', errorRssMm, bySquares),
  ];
}

const traceErrorOf = (solids: readonly Solid[], section: string): number =>
  solids.find(({ name }) => name === section)?.traceErrorMm ?? 0;

function differ(where: Doubt['where'], name: string, claimedMm: number | null, foundMm: number | null): Doubt[] {
  const same =
    claimedMm === null || foundMm === null ? claimedMm === foundMm : Math.abs(claimedMm - foundMm) <= roundingMm;
  return same
    ? []
    : [
        {
          what: 'error',
          where,
          text: `${name} is given as ${claimedMm} mm; found: ${foundMm} mm.`,
          claimedMm,
          foundMm,
        },
      ];
}

import type { Bench } from '../bench.ts';
import type { Ending, Strategy } from './strategy.ts';

/** What he takes off at a mark, mm: as much as he dares, since he cannot put it back. */
const patchMm = { least: 1, most: 1.5 };

/** The clearance he wants to see in the clay all the way in, and how much more he takes where it is thinner, mm. */
export const wantedMm = 0.5;
const someMoreMm = 0.3;

/** Nobody goes on for ever. */
const mostGoes = 60;

export const byEye: Strategy = (bench) => ({ ending: goOnByEye(bench), said: null });

/**
 * Offers up; grinds at each mark of paint where it stops; again until it goes home; then sticks clay on and grinds where that
 * comes out too thin, until it nowhere does.
 */
export function goOnByEye(bench: Bench): Ending {
  while (bench.goes < mostGoes) {
    const trial = bench.offerUp();
    if (!trial.goes) bench.grindPainted(trial, patchMm);
    else if (!bench.grindWhereClayIsThin(wantedMm, (readMm) => wantedMm - readMm + someMoreMm)) return 'done';
  }
  return 'gave-up';
}

import type { Standing } from '../../src/clearance/at-position.ts';
import { lengthText } from '../../src/job/length-text.ts';
import type { Units } from '../../src/job/lengths.ts';

/** The least clearance at a place, in a few words. */
export function standingWords({ state, clearanceMm }: Pick<Standing, 'state' | 'clearanceMm'>, units: Units): string {
  switch (state) {
    case 'fouls':
      return 'fouls';
    case 'touches':
      return 'touches';
    case 'undecided':
      return 'undecided';
    case 'clear':
      return clearanceMm === null ? 'no depth shared' : `${lengthText(clearanceMm, units)} clear`;
  }
}

import type { Units } from '../../../src/job/lengths.ts';
import type { PictureSet } from '../../heavy/set-straight.ts';
import { errorIn } from '../../words/photo.ts';

/**
 * The ± limit that a picture gives its part, in the part's units; null where none can be stated, as of points that do
 * not agree. A picture by two points is reckoned with a lean of two degrees, since nothing shows it.
 */
export function statedError({ setting, errorMm, lean }: PictureSet, units: Units): number | null {
  if (!setting.ok || !setting.value.agree || errorMm === null) return null;
  if (lean === null) return errorIn(units, errorMm);
  return lean.twoDegreesMm === null ? null : errorIn(units, errorMm + lean.twoDegreesMm);
}

/** A length that is stated in a part's units, with them. */
export const stated = (value: number, units: Units): string => `${value} ${units}`;

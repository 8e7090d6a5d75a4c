import { lerp, type Vec } from '../../geometry/plane/vec.ts';
import { mmPer, type Units } from '../../job/lengths.ts';
import type { Branch } from './chain.ts';
import type { Gap } from './gaps.ts';

const places = { mm: 3, in: 4 } as const;

/** A length without needless noughts, so fine that no gap reads as nothing. */
export function lengthText(mm: number, units: Units): string {
  const length = mm / mmPer(units);
  const fine = Number(length.toFixed(places[units]));
  return `${fine === 0 ? Number(length.toPrecision(1)) : fine} ${units}`;
}

function pointText({ x, y }: Vec, units: Units): string {
  const [right, up] = [x, y].map((mm) => Number((mm / mmPer(units)).toFixed(places[units])) + 0);
  return `(${right}, ${up})`;
}

/** A gap left open: its size, both ends, and why it is not joined where that is not its size. */
export function gapText({ from, to, sizeMm, layer, doubtful }: Gap, units: Units): string {
  const why = doubtful ? '; not joined, since other ends lie nearly as near or the line is hardly longer' : '';
  return `${lengthText(sizeMm, units)} from ${pointText(from, units)} to ${pointText(to, units)}, layer ${layer}${why}`;
}

export const joinedText = ({ from, to, sizeMm, layer }: Gap, units: Units): string =>
  `${lengthText(sizeMm, units)} at ${pointText(lerp(from, to, 0.5), units)}, layer ${layer}`;

export const branchText = ({ at, lines }: Branch, units: Units): string =>
  `${lines} ends meet at ${pointText(at, units)}`;

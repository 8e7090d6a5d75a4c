import type { Casting } from '../job/casting.ts';
import type { Joint } from '../joint/joint.ts';

/** A casting's name up to its first comma or bracket, for tables and labels. */
export const shortName = ({ name }: Pick<Casting, 'name'>): string => name.split(/[,(]/)[0]?.trim() || name;

/** What of a joint says how its axis is called. */
interface NamedAxis {
  readonly fit: Pick<Joint['fit'], 'axisHole'>;
  readonly rotating: readonly unknown[];
}

/**
 * What the joint is laid about, by its own name: the hole's, or the crank where anything turns with it or the hole is
 * called so; a pump's bore is no crank.
 */
export function axisName({ fit: { axisHole }, rotating }: NamedAxis): string {
  if (axisHole === null) return rotating.length > 0 ? 'the crank' : 'the axis';
  return /crank/i.test(axisHole) ? 'the crank' : axisHole;
}

/** The same as it is written beside its mark. */
export const axisMark = (joint: NamedAxis): string => axisName(joint).replace(/^the /, '');

/** What is being fitted to what. */
export const titleOf = ({ fit, fixed, moving }: Joint): string =>
  fit.title === '' ? `${moving.name} to ${fixed.name}` : fit.title;

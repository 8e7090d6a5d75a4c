import type { Casting } from '../job/casting.ts';
import type { Joint } from '../joint/joint.ts';

/** A casting's name up to its first comma or bracket, for tables and labels. */
export const shortName = ({ name }: Pick<Casting, 'name'>): string => name.split(/[,(]/)[0]?.trim() || name;

/** What is being fitted to what. */
export const titleOf = ({ fit, fixed, moving }: Joint): string =>
  fit.title === '' ? `${moving.name} to ${fixed.name}` : fit.title;

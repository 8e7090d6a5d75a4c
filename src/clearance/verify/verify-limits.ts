import type { Vec } from '../../geometry/plane/vec.ts';
import type { Meeting } from './verify-extrusions.ts';
import { pathMm } from './verify-way.ts';

/** Answers are given to 1e-6, and two figures for the same thing may lie this far apart, mm. */
export const roundingMm = 2e-6;

/** Instants, fractions of a leg, are held to as much. */
export const instant = 2e-6;

/** Points this near an outline lie on it, and outlines this near one another meet, mm. */
export const onOutlineMm = 1e-5;

/** Metal must be this deep in other metal to overlap at all, mm. */
export const overlapsMm = 1e-7;

/** An answer known no better than this is undecided, and an asked clearance is held to it, mm. */
export const heldToMm = 1e-3;

/** How far a place may seem off for what its coordinates and its instant may be off, mm. */
export const slackMm = ({ way }: Meeting, place: Vec): number => onOutlineMm + (instant / 2) * pathMm(way, place);

import type { WaysResult } from '../ways/find-ways.ts';
import { turnRange } from './places.ts';

/** What the map of turns calls what is on it. */
export const mapKey = {
  foul: 'fouls',
  near: 'too near',
  unknown: 'not traced',
  way: 'a way in',
  cutWay: 'the way to cut for',
  dowels: 'on the dowels',
} as const;

/** What the map of turns shows, under it on paper. */
export function mapCaption({ exists, asked }: WaysResult): string {
  const line = exists === true ? 'The line is the widest way in' : 'A line through it is a way that a cut makes';
  return `Turns about the crank axis across, ${turnRange(asked.fromRad, asked.toRad)}, stand-off upwards, home at the foot. ${line}.`;
}

/** The map of turns in words, for whoever does not see it. */
export function mapWords(title: string, { exists }: WaysResult): { title: string; description: string } {
  const found =
    exists === true
      ? 'A way runs through it from the top to home at the foot without entering what is blocked.'
      : 'No way from the top to home at the foot keeps clear of all that is blocked.';
  return {
    title: `${title}: every way in`,
    description: `A map of turns about the crank axis, across, and stand-offs, upwards. ${found}`,
  };
}

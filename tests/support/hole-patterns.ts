import { mirrorPoint } from '../../src/geometry/plane/loop.ts';
import { apply, inverse, type Rigid } from '../../src/geometry/plane/rigid.ts';
import { distance, type Vec, vec } from '../../src/geometry/plane/vec.ts';
import type { PatternHole } from '../../src/holes/patterns/pattern.ts';
import type { Random } from './random.ts';

/** A hole of which nothing is known but its place. */
export const plainHole = (id: string, at: Vec, more: Partial<PatternHole> = {}): PatternHole => ({
  id,
  at,
  kind: 'bolt',
  diameterMm: null,
  thread: null,
  ...more,
});

/** So many holes in a square of 500 mm, none nearer another than 12 mm. */
export function strewn(random: Random, count: number, taken: readonly Vec[] = []): Vec[] {
  const places: Vec[] = [];
  while (places.length < count) {
    const at = vec(random.between(-250, 250), random.between(-250, 250));
    if ([...taken, ...places].every((other) => distance(other, at) > 12)) places.push(at);
  }
  return places;
}

export const shuffled = <T>(random: Random, list: readonly T[]): T[] =>
  list
    .map((item) => ({ item, key: random.next() }))
    .sort((a, b) => a.key - b.key)
    .map(({ item }) => item);

/** Places as a second tracer has them: his sheet turned and shifted, maybe seen from behind, each within so much. */
export const tracedAgain = (
  random: Random,
  places: readonly Vec[],
  { motion, mirrored, noiseMm }: { readonly motion: Rigid; readonly mirrored: boolean; readonly noiseMm: number },
): Vec[] =>
  places.map((at) => {
    const own = apply(inverse(motion), at);
    const off = vec(own.x + random.between(-noiseMm, noiseMm), own.y + random.between(-noiseMm, noiseMm));
    return mirrored ? mirrorPoint(off) : off;
  });

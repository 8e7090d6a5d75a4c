import { describe, expect, it } from 'vitest';
import { add, dot, polar, scale, type Vec, vec } from '../../../../src/geometry/plane/vec.ts';
import { type GreyWindow, pullToEdge } from '../../../../src/intake/photo/pull-to-edge.ts';
import { normal } from '../../../support/camera.ts';
import { Random } from '../../../support/random.ts';

const size = 41;

/** A window whose pixels hold the mean of 8 × 8 samples of `greyOf`, and noise. */
function windowOf(greyOf: (p: Vec) => number, noise = 0, random = new Random(1)): GreyWindow {
  const grey = Uint8Array.from({ length: size * size }, (_, k) => {
    const [i, j] = [k % size, Math.floor(k / size)];
    let sum = 0;
    for (let s = 0; s < 64; s += 1) sum += greyOf(vec(i + ((s % 8) + 0.5) / 8, j + (Math.floor(s / 8) + 0.5) / 8));
    return Math.min(255, Math.max(0, Math.round(sum / 64 + noise * normal(random))));
  });
  return { width: size, height: size, grey };
}

const middle = vec(20.5, 20.5);
const directions = [0, 0.3, Math.PI / 4, 1.2, 2, -2.5].map((angle) => polar(vec(0, 0), 1, angle));

/** Dark on one side of a straight edge that lies `away` from the middle along the normal. */
const edge = (along: Vec, away: number, dark: number, light: number) => (p: Vec) =>
  dot(along, p) - dot(along, middle) < away ? dark : light;

describe('a point pulled to an edge', () => {
  it('comes to lie on it within 0.1 px, whichever way the edge runs and the light falls', () => {
    for (const along of directions) {
      for (const away of [-5.3, -1.75, 0, 0.4, 2.5, 6.1]) {
        for (const [dark, light] of [
          [40, 200],
          [180, 90],
        ] as const) {
          const pulled = pullToEdge(windowOf(edge(along, away, dark, light)), middle, scale(along, 3));
          expect(pulled.ok && Math.abs(pulled.movedPx - away)).toBeLessThan(0.1);
          expect(pulled.ok && dot(along, add(pulled.at, scale(middle, -1)))).toBeCloseTo(
            pulled.ok ? pulled.movedPx : 0,
            9,
          );
          expect(pulled.ok && pulled.step).toBeCloseTo(Math.abs(light - dark), -1);
        }
      }
    }
  });

  it('with a camera of noise 4 of 255 it stays within 0.3 px', () => {
    const random = new Random(8);
    for (const along of directions) {
      const pulled = pullToEdge(windowOf(edge(along, 1.6, 60, 150), 4, random), middle, along);
      expect(pulled.ok && Math.abs(pulled.movedPx - 1.6)).toBeLessThan(0.3);
    }
  });

  it('stays where it is on bare metal, in noise, on a faint edge and on a shadow that falls off slowly', () => {
    const along = vec(1, 0);
    const random = new Random(4);
    const weak = { ok: false, why: 'weak' };
    expect(
      pullToEdge(
        windowOf(() => 120),
        middle,
        along,
      ),
    ).toEqual(weak);
    expect(
      pullToEdge(
        windowOf(() => 120, 4, random),
        middle,
        along,
      ),
    ).toEqual(weak);
    expect(pullToEdge(windowOf(edge(along, 1, 120, 130)), middle, along)).toEqual(weak);
    expect(
      pullToEdge(
        windowOf(({ x }) => 20 + 5 * x),
        middle,
        along,
      ),
    ).toEqual(weak);
  });

  it('does not go for an edge beyond its reach', () => {
    const outcome = pullToEdge(windowOf(edge(vec(1, 0), 9.3, 40, 200)), middle, vec(1, 0));
    expect(outcome).toEqual({ ok: false, why: 'at-the-end' });
    expect(pullToEdge(windowOf(edge(vec(1, 0), 14, 40, 200)), middle, vec(1, 0))).toEqual({ ok: false, why: 'weak' });
  });

  it('a line that leaves the window, or has no direction, is refused', () => {
    const window = windowOf(() => 120);
    expect(pullToEdge(window, vec(3, 20), vec(1, 0))).toEqual({ ok: false, why: 'outside' });
    expect(pullToEdge(window, vec(Number.NaN, 20), vec(1, 0))).toEqual({ ok: false, why: 'outside' });
    expect(pullToEdge(window, middle, vec(0, 0))).toEqual({ ok: false, why: 'no-direction' });
  });
});

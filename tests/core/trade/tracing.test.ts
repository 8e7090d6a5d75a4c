import { describe, expect, it } from 'vitest';
import { depthErrorMmOf, traceErrorMmOf } from '../../../src/trade/tracing.ts';

// common practice, no source
describe('what a way of tracing is good for', () => {
  it.each([
    ['rubbing', 0.4],
    ['card on a machined edge', 0.5],
    ['gasket', 1],
    ['caliper between holes', 0.15],
    ['Photo from 3 m', 0.5],
    ['photograph from 5 m', 0.5],
    ['photo from 1 m', 1.5],
    ['photo', 1.5],
    ['photograph along the crank', 1],
    ['low-cost scan', 0.4],
    ["someone's drawing", 2.2],
    ['feature list', 0.5],
    ['plate and scribing-block', 0.4],
    ['contour gauge', 0.8],
    ['silicone putty impression', 0.5],
  ])('%s: ± %d mm', (gotBy, errorMm) => {
    expect(traceErrorMmOf(gotBy)).toBe(errorMm);
  });

  it('the worst counts where several ways are named', () => {
    expect(traceErrorMmOf('flatbed scan of a gasket')).toBe(1);
    expect(traceErrorMmOf('card on spacers, washer and pencil')).toBe(0.7);
  });

  it('words that name no way say nothing', () => {
    expect(traceErrorMmOf('by eye')).toBeNull();
    expect(traceErrorMmOf('discard')).toBeNull();
  });

  it.each([
    ['depth gauge to a machined edge', 0.3],
    ['contour gauge', 1.5],
    ['card', null],
  ])('depths by %s: %s', (gotBy, errorMm) => {
    expect(depthErrorMmOf(gotBy)).toBe(errorMm);
  });
});

/** A straight piece of drawn line. */
export type Segment = readonly [x1: number, y1: number, x2: number, y2: number];

/**
 * The area that segments enclose by the even-odd rule, whatever their order and sense: between two neighbouring
 * heights no segment begins or ends, so what lies between the first and second, third and fourth … is a trapezium.
 * Knows nothing of chains or loops.
 */
export function evenOddArea(segments: readonly Segment[]): number {
  const heights = [...new Set(segments.flatMap(([, y1, , y2]) => [y1, y2]))].sort((a, b) => a - b);
  let area = 0;
  for (let i = 1; i < heights.length; i++) {
    const [low, high] = [heights[i - 1] as number, heights[i] as number];
    const middle = (low + high) / 2;
    const xs = segments
      .filter(([, y1, , y2]) => Math.min(y1, y2) < middle && Math.max(y1, y2) > middle)
      .map(([x1, y1, x2, y2]) => x1 + ((x2 - x1) * (middle - y1)) / (y2 - y1))
      .sort((a, b) => a - b);
    for (let k = 1; k < xs.length; k += 2) area += ((xs[k] as number) - (xs[k - 1] as number)) * (high - low);
  }
  return area;
}

const stepsPerTurn = 720;

/** Chords along an arc, so fine that a disc of them lacks (2π/n)²/6 of its area: 1.3e-5. */
export function arcSegments(x: number, y: number, radius: number, startRad: number, sweepRad: number): Segment[] {
  const steps = Math.max(1, Math.ceil((Math.abs(sweepRad) / (2 * Math.PI)) * stepsPerTurn));
  const on = (i: number) =>
    [
      x + radius * Math.cos(startRad + (sweepRad * i) / steps),
      y + radius * Math.sin(startRad + (sweepRad * i) / steps),
    ] as const;
  return Array.from({ length: steps }, (_, i): Segment => [...on(i), ...on(i + 1)]);
}

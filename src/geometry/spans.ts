/** Where something begins and ends on a line or round a circle, in whatever unit. */
export type Span = readonly [from: number, to: number];

/** Spans in order, those that meet or overlap made one. */
export function joinedSpans(spans: readonly Span[]): [number, number][] {
  const joined: [number, number][] = [];
  for (const [from, to] of spans.toSorted(([a], [b]) => a - b)) {
    const last = joined.at(-1);
    if (last !== undefined && from <= last[1]) last[1] = Math.max(last[1], to);
    else joined.push([from, to]);
  }
  return joined;
}

import { parseThread } from './threads.ts';

/** Outside diameters of plain washers, mm, by the thread they go with: ISO 7089, from memory. */
export const washersMm: ReadonlyMap<number, number> = new Map([
  [3, 7],
  [4, 9],
  [5, 10],
  [6, 12],
  [8, 16],
  [10, 20],
  [12, 24],
  [14, 28],
  [16, 30],
  [18, 34],
  [20, 37],
  [22, 39],
  [24, 44],
]);

/** The washer of a metric thread, mm across; null where none is known. */
export function washerMm(thread: string | null): number | null {
  const size = thread === null ? null : parseThread(thread);
  return size === null ? null : (washersMm.get(size.majorMm) ?? null);
}

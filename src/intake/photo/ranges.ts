import type { PhotoFault } from './photo-fault.ts';

/** What is wrong with figures that must be finite and above 0, or 0 and more. */
export const outOfRange = (
  figures: Readonly<Record<string, number>>,
  range: 'above 0' | 'from 0',
): readonly PhotoFault[] =>
  Object.entries(figures).flatMap(([what, found]): PhotoFault[] =>
    Number.isFinite(found) && (range === 'from 0' ? found >= 0 : found > 0)
      ? []
      : [{ code: 'out-of-range', what, found }],
  );

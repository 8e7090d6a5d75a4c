import { treeOf } from '../clearance/trees.ts';
import { outlinePoints } from '../geometry/motion/outline-points.ts';
import type { Vec } from '../geometry/plane/vec.ts';
import { home } from '../job/path.ts';
import type { MarkingTable } from '../markout/marking-row.ts';
import { depthsBeside } from './bench-place.ts';
import { gapFrom, type Offered, slopesOf } from './contact.ts';
import { sdOfLimit } from './equations.ts';
import { type Explanation, varianceAlong } from './solve.ts';
import { surfacePlaceOf } from './surface-place.ts';

/** A reading that would tell the most: modelling clay at a place, home. */
export interface NextReading {
  /** Of the marking-out table; null for one that is not in it. */
  readonly place: number | null;
  readonly section: string;
  readonly at: Vec;
  readonly depthMm: number;
  readonly expectedMm: number;
  /** ± limit of 95 %: what the reading would narrow. */
  readonly expectedErrorMm: number;
}

/** Clay is pressed to a thickness that can be read between these, mm. */
const thinnestMm = 0.5;
const thickestMm = 15;

const pointsApartMm = 10;

/** So little left to learn is not worth a trial fit, mm. */
const worthwhileMm = 0.2;

/**
 * Of the places of the table and of points along the outlines, the one whose clay the explanation foretells worst; null where
 * all are known well. Without a table to find them by, the places of the table come first.
 */
export function measureNext(offered: Offered, table: MarkingTable, explanation: Explanation): NextReading | null {
  const { posterior, correction } = explanation;
  const { fixed, moving } = offered.joint;
  const points = fixed.sections.flatMap((section) =>
    depthsBeside(section, moving).flatMap((depthMm) =>
      [...outlinePoints(treeOf(section.loops), pointsApartMm)].map(({ point }) => ({
        place: null,
        section: section.id,
        at: point,
        depthMm,
      })),
    ),
  );
  const places = table.flatMap(({ place, section: id, at, depth }) =>
    fixed.sections
      .filter((section) => section.id === id)
      .flatMap((section) => depthsBeside({ ...section, depth: depth ?? section.depth }, moving))
      .map((depthMm) => ({ place, section: id, at, depthMm })),
  );
  const candidates = [...places, ...points].flatMap(({ place, ...one }): NextReading[] => {
    const surface = surfacePlaceOf(offered, one);
    const contact = surface && gapFrom(offered, surface, home, correction);
    if (surface === null || contact === null) return [];
    if (contact.gapMm < thinnestMm || contact.gapMm > thickestMm) return [];
    const slopes = slopesOf(contact, offered, home, correction, posterior.unknowns, surface);
    const expectedErrorMm = Math.sqrt(varianceAlong(posterior, slopes)) / sdOfLimit(1);
    return [{ place, ...one, expectedMm: contact.gapMm, expectedErrorMm }];
  });
  const best = candidates.reduce<NextReading | null>(
    (most, one) => (most === null || worth(one) > worth(most) ? one : most),
    null,
  );
  return best !== null && best.expectedErrorMm >= worthwhileMm ? best : null;
}

/** A place of the table is found on the casting at once, any other has to be laid out. */
const worth = ({ place, expectedErrorMm }: NextReading): number => (place === null ? 0.8 : 1) * expectedErrorMm;

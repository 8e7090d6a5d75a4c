import { givenLength } from '../job/length-text.ts';
import type { Units } from '../job/lengths.ts';
import type { Joint } from '../joint/joint.ts';
import type { StraightResult } from '../plan/cutter/straight-result.ts';
import type { BandFigures, CutFigures } from '../plan/part-cut.ts';
import { depthText } from './places.ts';
import { areaText, massText, volumeText } from './units.ts';

/** What edges a grinder can follow are made of, and the metal they cost; nothing where they were not asked for. */
export function straightTexts({ fit: { units } }: Joint, { straight, sections }: CutFigures): string[] {
  if (straight === null) return [];
  return [
    `${edgeText(straight, units)} ${extraText(straight, units)}`,
    ...sections.flatMap(({ id, bands }) => bands.flatMap((band) => bandText(id, band, units))),
  ];
}

function edgeText({ leastFlatMm, leastArcRadiusMm, asItWas }: StraightResult, units: Units): string {
  const arcs = leastArcRadiusMm > 0 ? ` and arcs of radius ${givenLength(leastArcRadiusMm, units)} or more` : '';
  const but = asItWas.length > 0 ? 'But for the stretches that the warnings name, the' : 'The';
  return `${but} edges of the cut are flats of ${givenLength(leastFlatMm, units)} or more${arcs}; only where the casting's own outline ends a flat is it shorter.`;
}

function extraText({ extraVolumeMm3, extraMassG }: StraightResult, units: Units): string {
  if (extraVolumeMm3 === null) return '';
  const extra = extraMassG === null ? volumeText(extraVolumeMm3, units) : massText(extraMassG);
  return `They take ${extra} more, always outward of the edge the clearance asks for.`;
}

function bandText(id: string, { depth, straightExtraAreaMm2 }: BandFigures, units: Units): string[] {
  if (straightExtraAreaMm2 === null) return [];
  const where = `"${id}", ${depthText(depth, units)}`;
  return [`${where}: ${areaText(straightExtraAreaMm2, units)} more.`];
}

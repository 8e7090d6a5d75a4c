import type { BandFigures, CutBand, CutFigures, PartCut } from '../../src/plan/part-cut.ts';
import type { PlanFigures, PlanResult } from '../../src/plan/plan-result.ts';

/** What the page says of a plan, without the outlines and castings it does not draw. */
export function figuresOf({ judged: _judged, alone: _alone, cuts, ...plan }: PlanResult): PlanFigures {
  return { ...plan, cuts: cuts.map(cutFigures) };
}

function cutFigures({ after: _after, sections, ...cut }: PartCut): CutFigures {
  return { ...cut, sections: sections.map((section) => ({ ...section, bands: section.bands.map(bandFigures) })) };
}

const bandFigures = ({ planned: _planned, first: _first, last: _last, lines: _lines, ...band }: CutBand): BandFigures =>
  band;

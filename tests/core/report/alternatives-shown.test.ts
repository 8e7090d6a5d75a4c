import { describe, expect, it } from 'vitest';
import { drawFit } from '../../../src/drawing/fit/draw-fit.ts';
import type { DrawInput } from '../../../src/drawing/fit/draw-input.ts';
import type { Alternative } from '../../../src/plan/alternatives/alternative.ts';
import { alternativeTexts } from '../../../src/words/alternative-text.ts';
import { fullInput, textBoxes } from '../../support/drawings.ts';
import { elementsOf, parsedReport, reportOf, textOf } from '../../support/reports.ts';

const input = fullInput();

/** The job with a plan that does not hold, and a way out of it. */
function notHolding(): DrawInput {
  if (input.plan === null) throw new Error('no plan');
  const smaller: Alternative = {
    change: { what: 'clearance', part: 'fixed', homeMm: 1.25, wayInMm: 1.25 },
    holds: true,
    areaMm2: 40,
    massG: 12,
    against: [],
  };
  const other: Alternative = {
    ...smaller,
    change: { what: 'other-part', part: 'moving' },
    holds: false,
    against: [{ code: 'section-not-offered', section: 'lip' }],
  };
  return { ...input, plan: { ...input.plan, holds: false }, alternatives: [smaller, other] };
}

describe('what else would give', () => {
  const told = notHolding();
  const texts = alternativeTexts(told.joint, told.alternatives);

  it('has a section of the report, in full, when the plan does not hold', () => {
    expect(texts).toHaveLength(2);
    const section = elementsOf(parsedReport(reportOf(told)), 'section').find(
      (one) => one.getAttribute('id') === 'alternatives',
    );
    if (section === undefined) throw new Error('no section');
    expect(textOf(elementsOf(section, 'h2')[0] as never)).toBe('What else would give');
    expect(elementsOf(section, 'li').map(textOf)).toEqual(texts);
  });

  it('stands among the notes of the drawing', () => {
    const words = textBoxes(drawFit(told))
      .filter(({ view }) => view === 'notes')
      .map(({ text }) => text)
      .join(' ');
    expect(words).toContain('What else would give');
    for (const text of texts) expect(words).toContain(text);
  });

  it('is left out of both when it holds', () => {
    const sections = elementsOf(parsedReport(reportOf(input)), 'section').map((one) => one.getAttribute('id'));
    expect(sections).toContain('take-off');
    expect(sections).not.toContain('alternatives');
    expect(textBoxes(drawFit(input)).map(({ text }) => text)).not.toContain('What else would give');
  });
});

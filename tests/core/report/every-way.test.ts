import { describe, expect, it } from 'vitest';
import { reportHtml } from '../../../src/drawing/report/report-html.ts';
import { drain } from '../../../src/geometry/progress.ts';
import { findWays } from '../../../src/ways/find-ways.ts';
import { usualTurns } from '../../../src/ways/turns.ts';
import { demoToDraw } from '../../support/demos.ts';
import { elementsOf, parsedReport, reportInput, textOf } from '../../support/reports.ts';

describe('every way in, in the report', () => {
  const input = reportInput(demoToDraw('transfer-case'));
  const sectionsOf = (report: string) => elementsOf(parsedReport(report), 'section');
  const idOf = (section: { getAttribute(name: string): string | null }): string => section.getAttribute('id') ?? '';

  it('stands where it was asked for, verdict and map, before what is to be taken off', () => {
    const ways = drain(findWays(input.joint, usualTurns));
    const sections = sectionsOf(reportHtml({ ...input, ways }));
    const ids = sections.map(idOf);
    expect(ids.indexOf('every-way')).toBe(ids.indexOf('take-off') - 1);
    const told = sections[ids.indexOf('every-way')] as (typeof sections)[number];
    expect(textOf(told)).toContain('A WAY WITHOUT CUTTING: turned -16.0°');
    expect(textOf(told)).toMatch(/forgives.*±1\.3° of turn/);
    expect(elementsOf(told, 'svg')).toHaveLength(1);
  });

  it('is left out where nobody asked', () => {
    expect(sectionsOf(reportHtml(input)).map(idOf)).not.toContain('every-way');
  });

  it('says why nothing is told, without a map, where a section has no depth', () => {
    const depthless = {
      ...input.joint.fixed,
      sections: input.joint.fixed.sections.map((s) => ({ ...s, depth: null })),
    };
    const joint = { ...input.joint, fixed: depthless };
    const ways = drain(findWays(joint, usualTurns));
    const told = sectionsOf(reportHtml({ ...input, ways })).find((section) => idOf(section) === 'every-way');
    expect(textOf(told as NonNullable<typeof told>)).toMatch(/UNDECIDED/);
    expect(elementsOf(told as NonNullable<typeof told>, 'svg')).toHaveLength(0);
  });
});

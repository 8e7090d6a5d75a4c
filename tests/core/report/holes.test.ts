import { describe, expect, it } from 'vitest';
import { reportHtml } from '../../../src/drawing/report/report-html.ts';
import { profileToDraw } from '../../support/demos.ts';
import { elementsOf, parsedReport, reportInput, textOf } from '../../support/reports.ts';

const sectionOf = (fit: string) =>
  elementsOf(parsedReport(reportHtml(reportInput(profileToDraw(fit)))), 'section').find(
    (section) => section.getAttribute('id') === 'holes',
  );

describe('holes to be drilled, in the report', () => {
  it('stand with where they go, what is beside them, and what stands against any', () => {
    const told = sectionOf('mount-bracket/bracket');
    if (told === undefined) throw new Error('there is no such section');
    expect(textOf(told)).toContain('NO METAL for "N2" and "N3" as planned.');
    expect(textOf(told)).toMatch(/"N2".*3\.0 mm to "jacket"/);
    expect(textOf(told)).toContain('information and no approval');
    expect(elementsOf(told, 'table')).toHaveLength(2);
  });

  it('are left out where there are none', () => {
    expect(sectionOf('marsh-carrier/transfer-case')).toBeUndefined();
  });
});

import { DOMParser, type Document, type Element } from '@xmldom/xmldom';
import { foretold } from '../../src/clearance/foretold.ts';
import { travelCurve } from '../../src/clearance/travel-curve.ts';
import { forgivenBy } from '../../src/clearance/wander/forgiven.ts';
import type { DrawInput } from '../../src/drawing/fit/draw-input.ts';
import { reportHtml } from '../../src/drawing/report/report-html.ts';
import type { ReportInput } from '../../src/drawing/report/report-input.ts';
import { drillResult } from '../../src/drill/drill-result.ts';
import { usualDrillRules } from '../../src/drill/hole-metal.ts';
import { drain } from '../../src/geometry/progress.ts';
import { markingOut } from '../../src/markout/marking-out.ts';
import { planCut } from '../../src/plan/plan-cut.ts';

/** All that a report of a drawn job says, its day and files invented. */
export function reportInput(input: DrawInput): ReportInput {
  const { joint } = input;
  const plan = input.plan ?? drain(planCut(joint));
  return {
    ...input,
    plan,
    tables: markingOut(joint, plan),
    curve: joint.fit.legs.length === 0 ? null : drain(travelCurve(joint, 40)),
    ways: null,
    drill: drillResult(joint, plan, usualDrillRules),
    forgives: forgivenBy(joint),
    foretold: foretold(joint),
    curveAfter: joint.fit.legs.length === 0 || plan.cuts.length === 0 ? null : drain(travelCurve(plan.judged, 40)),
    inputs: [{ file: 'job.fit.json', bytes: 672, sha256: 'ab'.repeat(32) }],
    date: '2026-03-01',
    version: '1.2.3',
    viewer: null,
  };
}

export const reportOf = (input: DrawInput): string => reportHtml(reportInput(input));

/** A report as a document; anything that is not well-formed is an error. */
export function parsedReport(html: string): Document {
  const parser = new DOMParser({
    onError: (level, message) => {
      throw new Error(`${level}: ${message}`);
    },
  });
  return parser.parseFromString(html.replace(/^<!DOCTYPE html>\n/, ''), 'application/xhtml+xml');
}

export const elementsOf = (root: Document | Element, tag: string): Element[] =>
  Array.from(root.getElementsByTagName(tag));

export const textOf = (element: Element): string => (element.textContent ?? '').replace(/\s+/g, ' ').trim();

/** Cells of the table with such a caption, row by row, headings first. */
export function tableOf(html: Document, caption: RegExp): string[][] {
  const table = elementsOf(html, 'table').find((one) => caption.test(textOf(elementsOf(one, 'caption')[0] as Element)));
  if (table === undefined) throw new Error(`no table ${caption}`);
  return elementsOf(table, 'tr').map((row) =>
    Array.from(row.childNodes)
      .filter((node): node is Element => node.nodeType === 1)
      .map(textOf),
  );
}

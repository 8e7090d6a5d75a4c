import { closestLines, firstTouchFacts, foulingRows } from '../../words/contact-text.ts';
import { unwrapped } from '../../words/layout.ts';
import { legRows } from '../../words/report-text.ts';
import { chartCaption } from '../../words/travel-text.ts';
import { travelChart } from '../fit/travel-chart.ts';
import { figure } from './figures.ts';
import { facts, type Html, paragraphs, section, subheading, table } from './html.ts';
import type { ReportInput } from './report-input.ts';

/** Leg by leg, how near it comes, where it stops, and every part of it that fouls. */
export function wayIn(input: ReportInput): Html | null {
  const { joint, check, checkFacts } = input;
  const { answer } = check;
  const closest = unwrapped(closestLines(joint, answer));
  return section(
    'way-in',
    answer.install === null ? 'How near it comes' : 'The way in',
    table('The way in that was asked about', legRows(joint)),
    ...subheading('Where it will first touch', facts(firstTouchFacts(joint, answer, checkFacts))),
    ...chart(input),
    table('What fouls on the way in', foulingRows(joint, answer, checkFacts)),
    ...subheading('Where it is nearest', closest === '' ? null : paragraphs([closest])),
  );
}

function chart({ joint, check, curve }: ReportInput): Html[] {
  const { install } = check.answer;
  if (install === null || curve === null) return [];
  const { legs, units } = joint.fit;
  return [figure('travel', travelChart({ curve, install, legs, units }), chartCaption(curve, install), 'chart')];
}

import { steeringTexts } from '../../words/check-text.ts';
import { closestLines, firstTouchFacts, foulingRows } from '../../words/contact-text.ts';
import { unwrapped } from '../../words/layout.ts';
import { legRows } from '../../words/report-text.ts';
import { chartCaption } from '../../words/travel-text.ts';
import { foretoldTexts } from '../../words/trial-text.ts';
import { travelChart } from '../fit/travel-chart.ts';
import { figure } from './figures.ts';
import { facts, type Html, paragraphs, section, subheading, table } from './html.ts';
import type { ReportInput } from './report-input.ts';

/** Leg by leg, how near it comes, where it stops, and every part of it that fouls. */
export function wayIn(input: ReportInput): Html | null {
  const { joint, check, foretold, forgives } = input;
  const stops = check.wayIn === null ? [] : foretoldTexts(joint, foretold);
  const steering = steeringTexts(joint, check, forgives);
  const closest = unwrapped(closestLines(joint, check));
  return section(
    'way-in',
    check.wayIn === null ? 'How near it comes' : 'The way in',
    table('The way in that was asked about', legRows(joint)),
    ...subheading('Where it will first touch', facts(firstTouchFacts(joint, check))),
    ...(stops.length === 0 ? [] : [paragraphs(stops)]),
    ...chart(input),
    ...(steering.length === 0 ? [] : [paragraphs(steering)]),
    table('What fouls on the way in', foulingRows(joint, check)),
    ...subheading('Where it is nearest', closest === '' ? null : paragraphs([closest])),
  );
}

function chart({ joint, check, curve, curveAfter }: ReportInput): Html[] {
  const { wayIn } = check;
  if (wayIn === null || curve === null) return [];
  const { legs, units } = joint.fit;
  const shown = travelChart({ curve, after: curveAfter, wayIn, legs, units });
  return [figure('travel', shown, chartCaption(curve, curveAfter, wayIn), 'chart')];
}

import { mapCaption } from '../../words/turn-map-text.ts';
import { wayFound } from '../../words/ways-text.ts';
import { turnMapChart } from '../fit/turn-map-chart.ts';
import { figure } from './figures.ts';
import { type Html, list, paragraphs, section } from './html.ts';
import type { ReportInput } from './report-input.ts';

/** Whether any way in needs no cutting, with the map it is read from; left out where that was not asked. */
export function everyWay({ joint, ways }: ReportInput): Html | null {
  if (ways === null) return null;
  const [verdict, ...rest] = wayFound(joint, ways);
  return section(
    'every-way',
    'Every way in',
    paragraphs([verdict]),
    list(rest),
    ways.strips.length === 0 ? null : figure('turn-map', turnMapChart(joint, ways), mapCaption(ways), 'chart'),
  );
}

import type { Finding, Reading } from '../files/finding.ts';
import { mostVertices } from '../job/part-findings.ts';
import type { Drawing, DrawnShape, Note } from './drawing.ts';
import type { LengthUnit } from './length-unit.ts';

/** What comes of one thing in a file: a shape, nothing (and why), a fault; or just one more thing looked at. */
export type DrawingItem =
  | ({ readonly kind: 'shape' } & DrawnShape)
  | { readonly kind: 'unread'; readonly reason: string }
  | { readonly kind: 'fault'; readonly at: string; readonly found: string; readonly expected: string }
  | { readonly kind: 'step' };

export const unread = (reason: string): DrawingItem => ({ kind: 'unread', reason });

export const fault = (at: string, found: string, expected: string): DrawingItem => ({
  kind: 'fault',
  at,
  found,
  expected,
});

export const step: DrawingItem = { kind: 'step' };

/** No part may have more vertices; things that refer to things could otherwise multiply without end. */
const mostThings = mostVertices;
const mostFindings = 20;

/** A drawing of everything drawn, what was passed over counted by reason; or every fault found, up to a few. */
export function gathered(file: string, unit: LengthUnit | null, drawn: Iterable<DrawingItem>): Reading<Drawing> {
  const shapes: DrawnShape[] = [];
  const reasons = new Map<string, number>();
  const findings: Finding[] = [];
  let things = 0;
  for (const thing of drawn) {
    things += 1;
    if (thing.kind === 'shape') shapes.push(thing);
    if (thing.kind === 'unread') reasons.set(thing.reason, (reasons.get(thing.reason) ?? 0) + 1);
    if (thing.kind === 'fault') findings.push({ file, at: thing.at, found: thing.found, expected: thing.expected });
    if (things > mostThings) {
      findings.push({
        file,
        at: '',
        found: `more than ${mostThings} things once references are followed`,
        expected: 'fewer',
      });
    }
    if (things > mostThings || findings.length >= mostFindings) break;
  }
  if (findings.length > 0) return { ok: false, findings };
  return {
    ok: true,
    value: {
      unit,
      inPixels: false,
      shapes,
      holes: [],
      hollows: [],
      doNotCut: [],
      wallReadings: [],
      facts: new Map(),
      notes: notesOf(reasons),
    },
  };
}

function notesOf(reasons: ReadonlyMap<string, number>): Note[] {
  if (reasons.size === 0) return [];
  const counts = [...reasons].map(([reason, count]) => `${count} ${reason}`);
  return [{ code: 'not-read', text: `not read: ${counts.join(', ')}` }];
}

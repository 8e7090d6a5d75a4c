import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { markingCsv } from '../../../src/drawing/markout/marking-csv.ts';
import { markingOut } from '../../../src/markout/marking-out.ts';
import type { MarkingRow } from '../../../src/markout/marking-row.ts';
import { castingOf } from '../../support/jobs.ts';
import { plannedDemo } from '../../support/markout-jobs.ts';

const { joint, plan } = plannedDemo('transfer-case');
const [rows = []] = markingOut(joint, plan);
const part = joint.fixed;

const read = (text: string): string[][] => Papa.parse<string[]>(text, { delimiter: ',', skipEmptyLines: true }).data;
const named = (section: string): MarkingRow => ({ ...(rows[0] as MarkingRow), section });

describe('the marking-out table as CSV', () => {
  const [heads = [], ...lines] = read(markingCsv(rows, part, joint));

  it('has a line for every row, and as many cells as headings', () => {
    expect(lines.length).toBe(rows.length);
    for (const line of lines) expect(line.length).toBe(heads.length);
  });

  it('prints every length to a tenth, with a point', () => {
    const lengths = heads.flatMap((head, i) => (head.endsWith('(mm)') ? [i] : []));
    expect(lengths.length).toBeGreaterThan(8);
    for (const line of lines) for (const i of lengths) expect(line[i]).toMatch(/^(-?\d+\.\d)?$/);
  });

  it('names the two dowels the dividers are set from, and the face one looks at', () => {
    expect(heads.join()).toContain('divider from D1');
    expect(heads.join()).toContain('divider from D2');
    expect(heads.join()).toContain('in plan from D1');
    expect(heads.join()).toContain('looking at the mating face of Iron four');
  });

  it('gives the figures of the rows', () => {
    const planned = heads.indexOf('take off: planned (mm)');
    expect(lines.map((line) => line[planned])).toEqual(rows.map(({ plannedMm }) => plannedMm.toFixed(1)));
  });

  it('prints inches to a hundredth where the fit is in inches', () => {
    const [heads = [], line = []] = read(markingCsv(rows, part, { ...joint, fit: { ...joint.fit, units: 'in' } }));
    const radius = heads.indexOf('radius from the crank (in)');
    expect(line[radius]).toBe(((rows[0]?.radiusMm ?? 0) / 25.4).toFixed(2));
  });

  it.each(['ribs, left', 'the "ear"', 'two\nlines'])('keeps a name whole: %j', (name) => {
    expect(read(markingCsv([named(name)], part, joint))[1]?.[1]).toBe(name);
  });

  it.each(['=1+1', '+cmd', '@x', '-ribs'])('keeps %s from being taken for a formula', (name) => {
    expect(read(markingCsv([named(name)], part, joint))[1]?.[1]).toBe(`'${name}`);
  });

  it('of nothing is its headings alone', () => {
    expect(read(markingCsv([], castingOf(), joint)).length).toBe(1);
  });
});

import { describe, expect, it } from 'vitest';
import type { JobFile } from '../../../src/files/job-file.ts';
import type { GoFile } from '../../../src/files/trial-file.ts';
import { drain } from '../../../src/geometry/progress.ts';
import { demoJob } from '../../../viewer/heavy/demo-job.ts';
import { openedJob } from '../../../viewer/heavy/opened-job.ts';
import type { PointedAt } from '../../../viewer/heavy/questions.ts';
import { carriedIn, placeFound, trialTold } from '../../../viewer/heavy/trial-told.ts';
import { analysed } from '../../../viewer/heavy/work.ts';
import { trialIn, withGo, withReading } from '../../../viewer/job/trial-edits.ts';

const job = demoJob();
const stopped = { turn: 13.5, standOff: 14 };
const pointed = (x: number, y: number, more: Partial<PointedAt> = {}): PointedAt => ({
  at: { x, y },
  withinMm: 5,
  on: null,
  ...more,
});
const placeAt = (go: Omit<GoFile, 'go'> | null, at: PointedAt) => drain(placeFound(job, go && { go: 1, ...go }, at));

describe('what lies under the hand', () => {
  it('is a place on the nearest outline, in the middle of the depths beside which the moving part stands', () => {
    // ribs 12–38 mm deep, and lips of the moving part 30 mm proud of its face at the most, by the files
    const found = placeAt(null, pointed(161.5, 66.5));
    expect(found).toMatchObject({ kind: 'place', place: { section: 'ribs' } });
    const { place } = found as Extract<typeof found, { kind: 'place' }>;
    expect(place.position).toBeUndefined();
    expect(place.depth).toBeGreaterThan(12);
    expect(place.depth).toBeLessThan(38);
  });

  it('is as deep as the moving part reaches where it stopped, and says that it stood there', () => {
    const home = placeAt({}, pointed(161, 66));
    const short = placeAt({ stopped }, pointed(161, 66));
    if (home?.kind !== 'place' || short?.kind !== 'place') throw new Error('there is a place');
    expect(short.place.position).toEqual(stopped);
    expect(short.place.depth).toBeLessThan(home.place.depth);
  });

  it('lies on the outline that is left by then', () => {
    const found = analysed(job);
    const rows = found.ok ? drain(found.value.tables()).flat() : [];
    const { at, plannedMm } = rows.reduce((most, row) => (row.plannedMm > most.plannedMm ? row : most));
    const [before, after] = [{}, { cut: 'planned' as const }].map((go) => {
      const place = placeAt(go, pointed(at.x, at.y, { withinMm: 30 }));
      if (place?.kind !== 'place') throw new Error('there is a place');
      return Math.hypot(place.place.at[0] - at.x, place.place.at[1] - at.y);
    });
    // places of the table lie on the new edge, which a cut keeps to within the thickness of a line
    expect(after).toBeLessThan(0.1);
    expect(before).toBeGreaterThan(plannedMm / 2);
  });

  it('is nothing away from all outlines, and a section that has nothing beside it where the moving part is not', () => {
    expect(placeAt(null, pointed(0, 500))).toBeNull();
    // no moving metal comes beside the flange's face at a stand-off larger than all its proud sections
    expect(placeAt({ stopped: { turn: 22, standOff: 190 } }, pointed(161, 66))).toMatchObject({
      kind: 'nothing-beside',
    });
  });
});

describe('where a go is put right to have stopped', () => {
  const read: GoFile = {
    go: 1,
    readings: [
      { id: '1', kind: 'clay', section: 'ribs', at: [161, 66], depth: 37, thickness: 3 },
      { id: '2', kind: 'clay', section: 'ribs', at: [161, 66], depth: 20, thickness: 3 },
    ],
  };
  const carried = (go: GoFile, to: Parameters<typeof carriedIn>[2]) => drain(carriedIn(job, go, to));

  it('is the same told by turn and by a dowel from its hole', () => {
    expect(carried({ go: 1 }, stopped)).toEqual({ was: 'home', is: stopped, depths: {} });
    // where the command line foretells 37.6 mm from the hole it foretells 13.6°
    const { is } = carried({ go: 1 }, { dowel: 'D1', fromHole: 37.6 }) ?? {};
    expect(is).toMatchObject({ standOff: 14, turn: expect.closeTo(13.6, 1) });
  });

  it('takes a reading to a depth beside which the moving part stands, where its own is none', () => {
    // 14 mm off, the skirt, 44 mm proud at home, reaches no deeper than 30 mm
    expect(carried(read, stopped)?.depths).toEqual({ 1: expect.toSatisfy((depth: number) => depth < 30) });
    expect(carried({ ...read, stopped }, 'home')?.depths).toEqual({});
  });

  it('is home where it went home, or nobody wrote it down', () => {
    for (const to of ['home', null] as const) expect(carried({ go: 1, stopped }, to)).toMatchObject({ is: 'home' });
  });
});

describe('what trial fits say', () => {
  const place = { section: 'ribs', at: [161, 66] as [number, number], depth: 25 };
  const withClay = (thickness: number): JobFile =>
    withReading(withGo(job, '2026-11-30'), 0, place, { kind: 'clay', thickness });
  const told = (of: JobFile) => drain(trialTold(of, trialIn(of) as NonNullable<ReturnType<typeof trialIn>>, null));

  it('is a line, all of it in full, and what to measure next', () => {
    const said = told(withClay(3));
    if (said?.kind !== 'told') throw new Error('one reading is read');
    expect(said.text.replaceAll('\n', ' ').startsWith(said.line)).toBe(true);
    expect(said.measureNext).not.toBeNull();
  });

  it('is refused by place where a reading cannot be', () => {
    expect(told(withClay(40))).toMatchObject({ kind: 'refused', findings: [{ at: 'goes[0].readings[0].thickness' }] });
  });

  it('is no job where the record is no trial', () => {
    const broken = { ...job, records: [{ format: 'fettle-trial/1', goes: 'many' }] };
    const opened = openedJob([{ name: 'a.job.json', text: JSON.stringify(broken) }]);
    expect(opened.ok ? [] : opened.findings.map(({ at }) => at)).toEqual(
      expect.arrayContaining(['records[0].fit', 'records[0].goes']),
    );
    const whole = openedJob([{ name: 'a.job.json', text: JSON.stringify(withClay(3)) }]);
    expect(whole.ok).toBe(true);
  });
});

import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Casting } from '../../../src/job/casting.ts';
import type { Job } from '../../../src/job/job.ts';
import { readJob } from '../../../src/job/read-job.ts';

function readDemo(fit: string): Job {
  const folder = new URL('../../../profiles/', import.meta.url);
  const reading = readJob(fit, (path) => ({ ok: true, value: readFileSync(new URL(path, folder), 'utf8') }));
  if (!reading.ok) throw new Error(JSON.stringify(reading.findings));
  return reading.value;
}

function apart({ holes }: Casting, a: string, b: string): number {
  const [p, q] = [a, b].map((id) => holes.find((hole) => hole.id === id)?.at);
  return p && q ? Math.hypot(p.x - q.x, p.y - q.y) : Number.NaN;
}

describe('the marsh carrier', () => {
  const job = readDemo('marsh-carrier/transfer-case.fit.json');

  it('has its dowels 316.80 apart in the block and 316.92 in the case', () => {
    expect(apart(job.fixed, 'D1', 'D2')).toBeCloseTo(316.8, 2);
    expect(apart(job.moving, 'P1', 'P2')).toBeCloseTo(316.92, 2);
  });

  it('is drawn so that dowelling up has work to do', () => {
    expect([job.fixed.mirrored, job.moving.mirrored]).toEqual([false, true]);
    expect(Math.hypot(job.fit.axis.x, job.fit.axis.y)).toBeGreaterThan(100);
  });

  it('offers its ribs to the grinder, but not the ear that carries a dowel', () => {
    expect(job.fixed.sections.filter(({ mayCut }) => mayCut).map(({ id }) => id)).toEqual(['ribs']);
    expect(job.fixed.doNotCut.map(({ id }) => id)).toEqual(['ear']);
  });
});

describe('the starter', () => {
  it('has a boss whose middle lies 62.5 from its own', () => {
    const { fit, fixed } = readDemo('starter-boss/starter.fit.json');
    const [boss] = fixed.sections.find(({ id }) => id === 'boss')?.loops ?? [];
    expect(boss).toMatchObject({ kind: 'circle', radius: 17 });
    if (boss?.kind === 'circle')
      expect(Math.hypot(boss.centre.x - fit.axis.x, boss.centre.y - fit.axis.y)).toBeCloseTo(62.5, 9);
  });
});

describe('the adapter', () => {
  const { fit, fixed, moving } = readDemo('sae-3-adapter/adapter.fit.json');

  // hole centres of an SAE J617 No. 3 flange: computed from its 428.625 mm bolt circle, first hole 15° from vertical
  it.each([
    ['T1', 55.468, 207.01],
    ['T2', 151.542, 151.542],
    ['T3', 207.01, 55.468],
    ['T7', -55.468, -207.01],
  ])('has %s at (%d, %d) from the axis', (id, x, y) => {
    const hole = fixed.holes.find((candidate) => candidate.id === id);
    expect((hole?.at.x ?? 0) - fit.axis.x).toBeCloseTo(x, 3);
    expect((hole?.at.y ?? 0) - fit.axis.y).toBeCloseTo(y, 3);
  });

  it('is drawn in inches on its own face, and read to within 0.002 mm of the housing', () => {
    expect([moving.units, moving.mirrored]).toEqual(['in', true]);
    for (const { fixed: tapped, moving: hole } of fit.bolts) {
      expect(Math.hypot(tapped.at.x - fit.axis.x - hole.at.x, tapped.at.y - fit.axis.y - hole.at.y)).toBeLessThan(
        0.002,
      );
    }
  });
});

import { describe, expect, it } from 'vitest';
import { readPart } from '../../../src/job/read-part.ts';
import { plainPart } from '../../support/model-files.ts';

const readWith = (changed: object) => readPart('p', JSON.stringify({ ...plainPart, ...changed }), 'fixed');

const sectionOf = (loops: unknown) => ({ sections: [{ id: 'a', loops }] });

/** A ring of so many vertices, rough by about an edge's length. */
const roughRing = (vertices: number) =>
  Array.from({ length: vertices }, (_, i) => {
    const radius = 200 + ((i * 7919) % 101) * (6 / vertices);
    const angle = (2 * Math.PI * i) / vertices;
    return [radius * Math.cos(angle), radius * Math.sin(angle)];
  });

// each of these once took minutes, all memory or the stack; now they only have to come to an end with an answer
describe('reading comes to an end', () => {
  it('with 100,000 rough edges, which are sound', () => {
    expect(readWith(sectionOf([roughRing(100_000)])).ok).toBe(true);
  });

  it.each([
    ['more vertices than a part may have', sectionOf([roughRing(400_001)]), '400001 vertices'],
    ['300,000 vertices that are none', sectionOf([Array.from({ length: 300_000 }, () => [])]), '[]'],
    ['300,000 loops that are none', sectionOf(Array.from({ length: 300_000 }, () => 0)), '0'],
    ['300,000 sections', { sections: Array.from({ length: 300_000 }, () => ({})) }, 'a list of 300000'],
    ['300,000 holes alike', { holes: Array.from({ length: 300_000 }, () => ({ id: 'A' })) }, 'a list of 300000'],
    [
      '100,000 unknown keys',
      Object.fromEntries(Array.from({ length: 1e5 }, (_, i) => [`k${i}`, 1])),
      'the unknown key "k0"',
    ],
    ['an id of ten million letters', { sections: [{ id: 'x'.repeat(1e7), lops: [] }] }, 'nothing'],
  ])('with %s', (_, changed, found) => {
    const reading = readWith(changed);
    expect(reading.ok ? [] : reading.findings.map((finding) => finding.found)).toContain(found);
  });
});

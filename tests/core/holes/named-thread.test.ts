import { describe, expect, it } from 'vitest';
import { threadNamed, threadNames } from '../../../src/holes/named-thread.ts';

describe('a thread is known by its designation', () => {
  it.each([
    ['M12x1.25', 'M12x1.25', '10.8 mm', 'looked up'],
    ['m12 × 1.25-6H', 'M12x1.25', '10.8 mm', 'looked up'],
    ['M11x1.25', 'M11x1.25', '9.75 mm', 'common practice'],
    ['M12', 'M12x1.75', '10.2 mm', 'from memory'],
    ['M13x1.5', 'M13x1.5', '11.5 mm', 'common practice'],
    ['3/8-16', '3/8-16 UNC', '5/16', 'from memory'],
    ['3/8 UNF', '3/8-24 UNF', 'Q', 'from memory'],
    ['#10-24', '#10-24 UNC', '#25', 'from memory'],
    ['No. 10-32', '#10-32 UNF', '#21', 'from memory'],
    ['g1/4', 'G1/4', '11.8 mm', 'from memory'],
    ['Rc1/8', 'Rc1/8', '8.4 mm', 'from memory'],
    ['R 1/2', 'R1/2', '18.25 mm', 'from memory'],
  ])('%s is %s, drilled %s (%s)', (designation, name, drill, basis) => {
    const thread = threadNamed(designation);
    expect(thread?.name).toBe(name);
    expect(thread?.drill.name).toBe(drill);
    expect(thread?.drill.source.basis).toBe(basis);
  });

  it.each([
    '',
    'M',
    'M13',
    'M12x',
    'M0x1',
    'M500x4',
    'M12x0.01',
    'M12x5.9',
    '3/8',
    '10',
    '#11-24',
    '3/8-17',
    'G5/8',
    'R',
    '__proto__',
  ])('%j is none, or leaves its pitch open', (designation) => expect(threadNamed(designation)).toBeNull());

  it('a name of 20,000 letters is none, at once', () => {
    expect(threadNamed('M1'.repeat(10_000))).toBeNull();
  });

  it('every thread of the tables is found by its own name, with a drill inside it', () => {
    const names = threadNames();
    expect(names.length).toBeGreaterThan(80);
    for (const name of names) {
      const thread = threadNamed(name);
      expect(thread?.name).toBe(name);
      expect(thread?.drill.diameterMm).toBeLessThan(thread?.majorMm ?? 0);
    }
  });
});

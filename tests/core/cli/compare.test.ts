import { readFileSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { compareAnswerSchema } from '../../../src/answers/compare-answer.ts';
import { runCli } from '../../support/run-cli.ts';
import { folderWith } from '../../support/temp-folder.ts';

const block = resolve(import.meta.dirname, '../../../profiles/marsh-carrier/block.part.json');

const part = (name: string, far: number, viewedFrom = 'face', units = 'mm'): object => {
  const side = viewedFrom === 'face' ? 1 : -1;
  const per = units === 'mm' ? 1 : 25.4;
  const at = (x: number, y: number): [number, number] => [(side * x) / per, y / per];
  return {
    format: 'fettle-part/1',
    name,
    units,
    viewedFrom,
    traceError: 0.5 / per,
    depthError: 0,
    holes: [
      { id: 'D1', kind: 'dowel', at: at(-100, 0) },
      { id: 'D2', kind: 'dowel', at: at(100, 0) },
    ],
    sections: [{ id: 'rib', depth: [12 / per, 90 / per], loops: [[at(0, 0), at(far, 0), at(far, 8), at(0, 8)]] }],
  };
};

describe('fettle compare', () => {
  it('ends with 0 where one casting is compared with itself', async () => {
    const { code, stdout } = await runCli('compare', block, block);
    expect(code).toBe(0);
    expect(stdout).toMatch(/^NOTHING MORE: /);
    expect(stdout).toMatch(/agree to ±0\.0 mm \(95 %\), 0\.0 mm at worst/);
    expect(Math.max(...stdout.split('\n').map((line) => line.length))).toBeLessThanOrEqual(92);
  });

  it('ends with 1 where something stands beyond, seen from whichever side and in whichever unit', async () => {
    const where = folderWith({
      'a.part.json': part('Known', 40),
      'b.part.json': part('Other', 42, 'back', 'in'),
    });
    const files = [join(where, 'a.part.json'), join(where, 'b.part.json')];
    const { code, stdout } = await runCli('compare', ...files, '--json');
    expect(code).toBe(1);
    const answer = compareAnswerSchema.parse(JSON.parse(stdout));
    expect(answer).toMatchObject({ format: 'fettle-compare/1', first: 'Known', second: 'Other', reason: null });
    expect(answer.standing).toMatchObject([{ section: 'rib', untraced: false }]);
    expect(answer.standing[0]?.proudMm).toBeCloseTo(2, 3);
    expect(answer.standing[0]?.at[0]).toBeCloseTo(42, 3);
    expect(answer.standing[0]?.depth?.[1]).toBeCloseTo(90, 6);
    expect((await runCli('compare', ...files.toReversed())).code).toBe(0);
  });

  it('ends with 3 where the dowels are not as far apart', async () => {
    const other = part('Other', 40) as { holes: { at: number[] }[] };
    (other.holes[1] as { at: number[] }).at = [110, 0];
    const where = folderWith({ 'a.part.json': part('Known', 40), 'b.part.json': other });
    const { code, stdout } = await runCli('compare', join(where, 'a.part.json'), join(where, 'b.part.json'));
    expect(code).toBe(3);
    expect(stdout).toMatch(/^UNDECIDED: the drawings do not register/);
  });

  it.each([
    [['--dowels', 'D1'], '--dowels: found "D1"', 'pairs of names: D1=P1,D2=P2'],
    [['--dowels', 'D1=D9,D2=D2'], '--dowels: found "D9"', 'one of D1, D2'],
    [['--dowels', 'D1=D1'], 'one dowel of the same name', '--dowels D1=P1,D2=P2'],
    [['--dowels', 'D1=D1,D1=D1'], 'stands where dowels[0] stands', 'different places'],
    [['--dowels', 'x'.repeat(5000)], '--dowels: found "xxx', 'pairs of names'],
  ])('refuses %j with a line', async (flags, found, expected) => {
    const where = folderWith({ 'a.part.json': part('Known', 40), 'b.part.json': part('Other', 40) });
    const files = [join(where, 'a.part.json'), join(where, 'b.part.json')];
    const { code, stderr } = await runCli('compare', ...files, ...flags);
    expect(code).toBe(2);
    expect(stderr).toContain(found);
    expect(stderr).toContain(expected);
    expect(stderr.length).toBeLessThan(1000);
  });

  it('tells everything that is wrong with either file', async () => {
    const where = folderWith({ 'a.part.json': part('Known', 40) });
    writeFileSync(join(where, 'b.part.json'), readFileSync(block, 'utf8').replace('"face"', '"above"'));
    const { code, stderr } = await runCli('compare', join(where, 'b.part.json'), join(where, 'nothing.part.json'));
    expect(code).toBe(2);
    expect(stderr).toMatch(/nothing\.part\.json: found no such file/);
    expect(stderr).toMatch(/b\.part\.json, viewedFrom: found "above"/);
  });
});

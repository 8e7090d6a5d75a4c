import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { roomAnswerSchema } from '../../../src/answers/room-answer.ts';
import { runCli } from '../../support/run-cli.ts';
import { folderWith } from '../../support/temp-folder.ts';

const demo = resolve(import.meta.dirname, '../../../profiles/marsh-carrier');
const fit = join(demo, 'transfer-case.fit.json');

describe('fettle room', () => {
  it('tells a buyer how far across, by depth, and what limits it', async () => {
    const { code, stdout } = await runCli('room', fit);
    expect(code).toBe(0);
    expect(stdout).toMatch(/^ROOM for 91\.0 mm across at worst/);
    expect(stdout.replaceAll(/\s+/g, ' ')).toContain(
      'From 48 to 290 mm out from the face: 263.9 mm across at most, limited by "bell, rear" of Marsh carrier transfer case, on leg 1 of the way in.',
    );
    expect(Math.max(...stdout.split('\n').map((line) => line.length))).toBeLessThanOrEqual(92);
    expect(stdout).not.toMatch(/NaN|undefined|null|Infinity|-0/);
  });

  it('gives the same as JSON, radii rounded down', async () => {
    const answer = roomAnswerSchema.parse(JSON.parse((await runCli('room', fit, '--json')).stdout));
    expect(answer).toMatchObject({ format: 'fettle-room/1', reason: null, rotatingMm: 4, homeOnly: false });
    expect(answer.ranges[0]).toEqual({ depth: [null, -290], radiusMm: null, diameterMm: null, limits: [] });
    expect(answer.ranges[1]).toMatchObject({ depth: [-290, -48], limits: [{ part: 'moving', leg: 1, at: 0 }] });
    expect(answer.worstRanges[1]?.radiusMm).toBeLessThan(answer.ranges[1]?.radiusMm ?? 0);
  });

  it('writes a part that the fit can take among what turns, and that then is clear', async () => {
    const where = folderWith();
    for (const part of ['block', 'transfer-case'])
      writeFileSync(join(where, `${part}.part.json`), readFileSync(join(demo, `${part}.part.json`)));
    const own = join(where, 'own.fit.json');
    writeFileSync(own, JSON.stringify({ ...JSON.parse(readFileSync(fit, 'utf8')), rotating: ['room.part.json'] }));
    const part = join(where, 'room.part.json');
    expect((await runCli('room', fit, '-o', part)).stderr).toMatch(/The room at worst is written to/);
    const check = JSON.parse((await runCli('check', own, '--json')).stdout);
    expect(check.rotating).toMatchObject([{ state: 'clear' }, { state: 'clear' }]);
    for (const { clearanceMm } of check.rotating) expect(clearanceMm).toBeGreaterThan(4);
    // written again over its own kind
    expect((await runCli('room', fit, '-o', part)).code).toBe(0);
  });

  it.each([
    ['clutch.part.json', 'a file that is no room of Fettle'],
    ['room.json', 'a name that ends in .part.json'],
  ])('does not write to %s', async (name, said) => {
    const where = folderWith({ 'clutch.part.json': { format: 'fettle-part/1', name: 'Clutch' } });
    const file = join(where, name);
    const { code, stderr } = await runCli('room', fit, '-o', file);
    expect(code).toBe(2);
    expect(stderr).toContain(said);
    expect(existsSync(file) && readFileSync(file, 'utf8').includes('ring')).toBe(false);
  });

  it('does not write over a part of the job', async () => {
    const before = readFileSync(join(demo, 'clutch.part.json'), 'utf8');
    const { code, stderr } = await runCli('room', fit, '-o', join(demo, 'clutch.part.json'));
    expect(code).toBe(2);
    expect(stderr).toContain('a file of the job');
    expect(readFileSync(join(demo, 'clutch.part.json'), 'utf8')).toBe(before);
  });

  it('says what it misses where there is no fit', async () => {
    const { code, stderr } = await runCli('room', join(demo, 'nothing.fit.json'));
    expect(code).toBe(2);
    expect(stderr).toMatch(/no such file/);
  });
});

import { describe, expect, it } from 'vitest';
import { boreAnswerSchema } from '../../../src/answers/bore-answer.ts';
import { Random } from '../../support/random.ts';
import { runCli } from '../../support/run-cli.ts';

const inLine = '12:0,3:0.02,6:0.01,9:0';
const running = (text: string): string => text.replaceAll(/\s+/g, ' ');

describe('fettle bore', () => {
  it('says first whether the bore is in line, and how far off', async () => {
    const { code, stdout } = await runCli('bore', '--bore', inLine);
    expect(code).toBe(0);
    expect(running(stdout)).toMatch(/^IN LINE: the bore's centre is 0\.011 mm off the crank, ±0\.014 mm; 0\.0635 mm/);
    expect(stdout).toContain('None are needed');
  });

  it('out of line it names the dowels, which way they are turned, and that their sizes are from memory', async () => {
    const { code, stdout } = await runCli('bore', '--bore', '12:0,3:0.05,6:0.29,9:0.24');
    expect(code).toBe(1);
    expect(running(stdout)).toMatch(/^OUT OF LINE: .*Turn the eccentric ends of both dowels toward 7 o'clock/);
    expect(running(stdout)).toContain('0.007, 0.014, 0.021 in (workshop practice, from memory)');
    expect(running(stdout)).toContain('Take 0.007 in: 0.004 mm ±0.014 mm are left');
  });

  it('an oval bore is undecided, and its TIR is told to be no twice its offset', async () => {
    const { code, stdout } = await runCli('bore', '--bore', '12:0,3:0.08,6:-0.05,9:0.08');
    expect(code).toBe(3);
    expect(running(stdout)).toContain('TIR is not twice the offset here (0.130 mm against 0.050 mm)');
    expect(running(stdout)).toContain('0.210 mm less than');
  });

  it('names the pairs across from one another in whatever order they were read', async () => {
    const { stdout } = await runCli('bore', '--bore', '12:0,6:-0.05,9:0.08,3:0.08');
    expect(running(stdout)).toContain("12 o'clock and 6 o'clock add up to 0.210 mm less than 3 o'clock and 9 o'clock");
  });

  it('readings that do not close are undecided, and no dowels are named', async () => {
    const { code, stdout } = await runCli('bore', '--bore', '12:0,3:0.4,6:0.8,9:0.4,12:0.05');
    expect(code).toBe(3);
    expect(running(stdout)).toMatch(/^UNDECIDED: the readings of the bore do not close: .* 0\.050 mm more at the end/);
    expect(stdout).toContain('None until the readings close.');
  });

  it('no line is wider than 80 columns but those that are prose', async () => {
    const { stdout } = await runCli(
      'bore',
      '--bore',
      '12:0,3:0.05,6:0.29,9:0.24',
      '--face',
      inLine,
      '--face-radius',
      '150',
      '--flange',
      'SAE 3',
    );
    const tables = stdout.split('\n').filter((line) => /^ {2}\S.* {2}\S/.test(line));
    expect(tables.length).toBeGreaterThan(10);
    expect(Math.max(...tables.map((line) => line.length))).toBeLessThanOrEqual(80);
  });

  it('sag is taken off, clock and angles name one place, inches are read', async () => {
    const answer = async (...argv: string[]) =>
      boreAnswerSchema.parse(JSON.parse((await runCli('bore', '--bore', ...argv, '--json')).stdout));
    const clock = await answer('12:0,3:0.01in,6:0.02in,9:0.01in', '--sag', '0.02in');
    expect(clock.bore.offMm).toBeCloseTo(0, 6);
    const angles = await answer(
      '90deg:0,0deg:0.254,270°:0.508,180:0.254'.replace('180:', '-180deg:'),
      '--sag',
      '0.508',
    );
    expect(angles.bore.tirMm).toBeCloseTo(0, 6);
    const raw = await answer('12:0,3:0.01in,6:0.02in,9:0.01in');
    expect(raw.bore.offsetMm[1]).toBeCloseTo(0.254, 6);
  });

  it.each([
    ['3', 0.25],
    ['SAE 3', 0.25],
    ['sae j617 no. 1/2', 0.36],
    ['SAE 00', 0.48],
  ])('--flange "%s" allows %f mm of run-out (SAE J1033, looked up)', async (flange, tirMm) => {
    const { stdout } = await runCli('bore', '--bore', inLine, '--flange', flange, '--json');
    expect(boreAnswerSchema.parse(JSON.parse(stdout)).limit).toMatchObject({ tirMm, of: 'flange' });
  });

  it.each([
    ['three places', ['--bore', '12:0,4:0,8:0'], '--bore: found 3 places'],
    ['one place', ['--bore', '12:0'], '--bore: found 1 place'],
    ['a place twice with different readings', ['--bore', '12:0,3:0,3:0.1,6:0,9:0'], '--bore: found 0deg twice'],
    ['one place by two names', ['--bore', '12:0,3:0,0deg:0.1,6:0,9:0'], '--bore: found 0deg twice'],
    ['places too near', ['--bore', '12:0,3:0,3.1:0,6:0,9:0'], '--bore: found 0deg and -3deg'],
    ['13 o’clock', ['--bore', '13:0,3:0,6:0,9:0'], '--bore: found the place "13"'],
    ['noon', ['--bore', 'noon:0,3:0,6:0,9:0'], '--bore: found the place "noon"'],
    ['a bare angle', ['--bore', '90:0,3:0,6:0,9:0'], '--bore: found the place "90"'],
    ['eleven millimetres', ['--bore', '12:0,3:11,6:0,9:0'], '--bore: found the reading "11"'],
    ['an inch', ['--bore', '12:0,3:-1in,6:0,9:0'], '--bore: found the reading "-1in"'],
    ['no number', ['--bore', '12:NaN,3:0,6:0,9:0'], '--bore: found the reading "NaN"'],
    ['two signs', ['--bore', '12:--1,3:0,6:0,9:0'], '--bore: found the reading "--1"'],
    ['no reading', ['--bore', '12,3,6,9'], '--bore: found "12"'],
    ['nothing', ['--bore', ''], '--bore: found ""'],
    ['one half', ['--bore', '12:0,1:0,3:0,6:0'], '--bore: found places on one half'],
    ['20,000 letters', ['--bore', '12:0,'.repeat(4000)], '--bore: found 20000 letters'],
    ['a face without its radius', ['--bore', inLine, '--face', inLine], '--face-radius: found nothing'],
    ['a radius without its face', ['--bore', inLine, '--face-radius', '100'], '--face: found nothing'],
    ['a radius of nothing', ['--bore', inLine, '--face', inLine, '--face-radius', '0'], '--face-radius: found "0"'],
    ['a flange of no standard', ['--bore', inLine, '--flange', 'SAE 7'], '--flange: found "SAE 7"'],
    ['two limits', ['--bore', inLine, '--flange', '3', '--limit', '0.1'], '--limit: found a limit beside'],
    ['a limit of nothing', ['--bore', inLine, '--limit', '0'], '--limit: found "0"'],
    ['an error below nothing', ['--bore', inLine, '--error=-1'], '--error: found "-1"'],
    ['a sag of a mile', ['--bore', inLine, '--sag', '1600000'], '--sag: found "1600000"'],
  ])('%s is refused in one clear line, with 2', async (_, argv, begins) => {
    const { code, stdout, stderr } = await runCli('bore', ...argv);
    expect({ code, stdout }).toEqual({ code: 2, stdout: '' });
    expect(stderr.startsWith(begins), stderr).toBe(true);
    expect(stderr.split('\n')).toHaveLength(3);
    expect(stderr.length).toBeLessThan(500);
  });

  it('whatever is read is answered in figures, or refused with 2', async () => {
    const random = new Random(3);
    const places = ['12', '1.5', '3', '4h', '6', '7.25', '9', '10', '30deg', '-75deg', '200°', '13', ''];
    const lengths = ['0', '0.05', '-0.05', '0.002in', '-.1', '+1', '10', '-9', '1e-3', '11'];
    const seen = new Set<number>();
    for (let i = 0; i < 300; i++) {
      const readings = Array.from({ length: random.whole(3, 9) }, (_, k) => {
        const [place, read] = random.chance(0.99)
          ? [places[k], lengths[random.whole(0, 3)]]
          : [random.pick(places), random.pick(lengths)];
        return `${place}:${read}`;
      });
      const argv = ['bore', '--bore', readings.join(','), ...(random.chance(0.3) ? ['--sag', '0.02'] : [])];
      const { code, stdout } = await runCli(...argv);
      seen.add(code);
      expect([0, 1, 2, 3], argv.join(' ')).toContain(code);
      if (code === 2) continue;
      expect(stdout, argv.join(' ')).not.toMatch(/NaN|Infinity|undefined|null| -0\.000/);
      const json = await runCli(...argv, '--json');
      expect(json.code).toBe(code);
      boreAnswerSchema.parse(JSON.parse(json.stdout));
    }
    expect([...seen].sort()).toEqual([0, 1, 2, 3]);
  });

  it('--help ends in examples that work as they are printed', async () => {
    const { stdout } = await runCli('bore', '--help');
    const examples = stdout.split('\n').filter((line) => line.startsWith('  fettle bore '));
    expect(examples.length).toBeGreaterThan(2);
    for (const line of examples) {
      const argv = [...line.trim().matchAll(/"([^"]*)"|(\S+)/g)].map(([, quoted, bare]) => quoted ?? bare ?? '');
      const { code, stderr } = await runCli(...argv.slice(1));
      expect({ ok: [0, 1, 3].includes(code), stderr }).toEqual({ ok: true, stderr: '' });
    }
  });
});

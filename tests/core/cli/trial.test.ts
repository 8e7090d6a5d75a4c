import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { trialAnswerSchema } from '../../../src/answers/trial-answer.ts';
import { Random } from '../../support/random.ts';
import { runCli } from '../../support/run-cli.ts';
import { readOff, spotsNear, TrueCastings } from '../../support/simulated-trial.ts';
import { folderWith } from '../../support/temp-folder.ts';
import { trialFiles, trialJoint } from '../../support/trial-job.ts';

const joint = trialJoint();
const truth = { shift: { x: 0.3, y: -0.3 }, turnRad: 0, offsetMm: () => 0, wanderMm: 0 };
const exact = { clayMm: 0.1, stopRad: (0.3 * Math.PI) / 180 };
const [read] = readOff(joint, new TrueCastings(joint, truth), spotsNear(joint, 15, 1), exact, new Random(4)).goes;

const clay = (read?.readings ?? []).flatMap((one) =>
  one.kind === 'clay'
    ? ['--clay', `section=${one.section},at=${one.at.x}/${one.at.y},depth=30,thickness=${one.thicknessMm.toFixed(2)}`]
    : [],
);
const stopDeg = read?.stopped?.kind === 'at' ? (read.stopped.position.turnRad * 180) / Math.PI : 0;
const stopped = ['--stopped', `turn=${stopDeg.toFixed(2)},standOff=14,error=0.3`];

const folder = (): string => folderWith(trialFiles as Record<string, unknown>);
const trial = (where: string, ...options: string[]) => runCli('trial', join(where, 'pump.fit.json'), ...options);
const fileIn = (where: string): string => join(where, 'pump.trial.json');

describe('fettle trial', () => {
  it('foretells where it will stop, and within what', async () => {
    const { code, stdout } = await trial(folder());
    expect(code).toBe(0);
    expect(stdout).toMatch(
      /It will stop at 10\.7° and 14\.0 mm stand-off \(D1 22\.3 mm from its hole\), on "boss" of\s+Block/,
    );
    expect(stdout).toMatch(/as early as 1\d\.\d° .* or as late as 10\.\d°/s);
  });

  it('keeps what was read in a file beside the fit, go by go, and solves it', async () => {
    const where = folder();
    const added = await trial(where, 'add', '--date', '2026-11-30', '--cut', 'none', ...stopped, ...clay);
    expect(added).toMatchObject({ code: 0, stderr: '' });
    const more = await trial(where, 'add', '--note', 'the paint was wet', '--face', 'at=0/120,gap=0.2');
    expect(more.code).toBe(0);
    const [go] = JSON.parse(readFileSync(fileIn(where), 'utf8')).goes;
    expect(go).toMatchObject({ go: 1, cut: 'none', note: 'the paint was wet', faces: [{ at: [0, 120], gap: 0.2 }] });
    expect(go.readings).toHaveLength(clay.length / 2);
    const { code, stdout } = await trial(where, 'solve', '--json');
    expect(code).toBe(0);
    const answer = trialAnswerSchema.parse(JSON.parse(stdout));
    expect(answer.conclusion).toBe('explained');
    expect(Math.hypot(answer.shiftMm[0] - 0.3, answer.shiftMm[1] + 0.3)).toBeLessThan(answer.shiftErrorMm);
    expect(answer.nextCut?.format).toBe('fettle-grind/1');
    const text = await trial(where, 'solve');
    expect(text.stdout).toMatch(/^EXPLAINED: by these readings/);
    expect(text.stdout).toMatch(
      /Its outlines lie 0\.\d\d mm to the right of where the fit puts them and 0\.\d\d\s+mm below/,
    );
    expect(text.stdout).toContain('stood 0.20 mm apart where they were gauged');
  });

  it('exits 3 where too little was read, and 1 where an outline was traced wrong', async () => {
    const little = folder();
    await trial(little, 'add', ...clay.slice(0, 4));
    const unsettled = await trial(little, 'solve');
    expect(unsettled.code).toBe(3);
    expect(unsettled.stdout).toMatch(/^NOT SETTLED:/);
    expect(unsettled.stdout).toContain('Measure next');

    const ribTooSmall = {
      ...truth,
      shift: { x: 0, y: 0 },
      offsetMm: (part: string, id: string) => (part === 'fixed' && id === 'rib 6' ? 2 : 0),
    };
    const [go] = readOff(
      joint,
      new TrueCastings(joint, ribTooSmall),
      spotsNear(joint, 15, 2),
      exact,
      new Random(5),
    ).goes;
    const wrong = folder();
    const readings = (go?.readings ?? []).flatMap((one) =>
      one.kind === 'clay'
        ? [
            '--clay',
            `section=${one.section},at=${one.at.x}/${one.at.y},depth=30,thickness=${one.thicknessMm.toFixed(2)}`,
          ]
        : [],
    );
    await trial(wrong, 'add', ...readings);
    const again = await trial(wrong, 'solve');
    expect(again.code).toBe(1);
    expect(again.stdout).toMatch(/^MEASURE AGAIN:.*Trace "rib 6" of Block/s);
  });

  it('says so where the job has changed since the file was begun', async () => {
    const where = folder();
    await trial(where, 'add', ...clay);
    const fit = { ...(trialFiles['pump.fit.json'] as object), clearance: { home: 3, wayIn: 1 } };
    writeFileSync(join(where, 'pump.fit.json'), JSON.stringify(fit));
    const { code, stderr } = await trial(where, 'solve');
    expect(code).toBe(0);
    expect(stderr).toContain('The job has changed since this trial file was begun');
  });

  const [, first = ''] = clay;
  const at = /at=[^,]*/.exec(first)?.[0] ?? '';
  it.each([
    [
      'no metal where the mark is said to be',
      ['--mark', 'section=rib 1,at=0/0,depth=30'],
      /mm from the outline.*on the surface of rib 1/s,
    ],
    [
      'clay of 40 mm',
      ['--clay', first.replace(/thickness=.*/, 'thickness=40')],
      /found 40; expected the thickness of pressed clay, at most 25 mm/,
    ],
    [
      'a stop before anything shares depth',
      ['--stopped', 'turn=20,standOff=75'],
      /expected a position at which sections of the two parts share depth/,
    ],
    [
      'a section that is none',
      ['--clay', `section=rip 1,${at},depth=30,thickness=2`],
      /found "rip 1".*Did you mean "rib 1"/s,
    ],
    [
      'a depth without metal',
      ['--clay', `section=rib 1,${at},depth=90,thickness=2`],
      /a depth at which rib 1 has metal/,
    ],
    [
      'a depth beside which nothing stands',
      ['--clay', `section=rib 1,${at},depth=58,thickness=2`],
      /the moving part has metal beside it/,
    ],
    ['a dowel that is none', ['--stopped', 'dowel=D9,fromHole=12'], /found "D9"/],
    ['a distance that a dowel never has', ['--stopped', 'dowel=D1,fromHole=400'], /somewhere on the way in/],
    ['a place of no table', ['--clay', 'place=999,thickness=2'], /found place 999/],
    ['letters for a number', ['--clay', 'section=rib 1,at=1/2,depth=deep,thickness=2'], /a number for depth/],
    ['a go that was left out', ['--go', '3'], /expected 1/],
    ['a key that is none', ['--clay', 'colour=red'], /pairs such as thickness/],
  ])('refuses %s in words, and writes nothing', async (_what, options, said) => {
    const where = folder();
    const { code, stdout, stderr } = await trial(where, 'add', ...options);
    expect(code).toBe(2);
    expect(stdout).toBe('');
    expect(stderr).toMatch(said);
    expect(existsSync(fileIn(where))).toBe(false);
  });

  it('foretells nothing of a job without a way in, and solves none that the check leaves undecided', async () => {
    const { offerUp: _way, ...homeOnly } = trialFiles['pump.fit.json'] as Record<string, unknown>;
    const { stdout } = await trial(folderWith({ ...trialFiles, 'pump.fit.json': homeOnly }));
    expect(stdout).toContain('The fit tells of no way in');
    const pump = trialFiles['pump.part.json'] as { holes: readonly { id: string }[] };
    const apart = pump.holes.map((hole) => (hole.id === 'P2' ? { ...hole, at: [135, 0] } : hole));
    const where = folderWith({ ...trialFiles, 'pump.part.json': { ...pump, holes: apart } });
    writeFileSync(fileIn(where), JSON.stringify({ format: 'fettle-trial/1', fit: 'pump.fit.json', goes: [{ go: 1 }] }));
    const { code, stderr } = await trial(where, 'solve');
    expect(code).toBe(2);
    expect(stderr).toContain('a job that the check leaves undecided');
  });

  it('refuses a file of another kind, and a thing it does not do', async () => {
    const where = folder();
    writeFileSync(fileIn(where), '{"format":"fettle-fit/1"}');
    expect((await trial(where, 'solve')).code).toBe(2);
    expect((await trial(where, 'guess')).stderr).toContain('expected foretell, add or solve');
  });
});

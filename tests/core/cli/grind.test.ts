import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { choicesAnswerSchema } from '../../../src/answers/choices-answer.ts';
import { grindAnswerSchema } from '../../../src/answers/grind-answer.ts';
import { runCli } from '../../support/run-cli.ts';
import { jobFiles } from '../../support/small-job.ts';
import { folderWith } from '../../support/temp-folder.ts';

const grind = (files: Record<string, unknown>, ...options: string[]) =>
  runCli('grind', join(folderWith(files), 'job.fit.json'), ...options);

/** The lip meets the end of the rib on its way round. */
const housing = {
  sections: [
    {
      id: 'lip',
      depth: [-40, -20],
      loops: [
        [
          [155, 20],
          [180, 20],
          [180, 40],
          [155, 40],
        ],
      ],
    },
  ],
};
const rib = {
  id: 'rib',
  depth: [12, 60],
  loops: [
    [
      [140, -4],
      [160, -4],
      [160, 4],
      [140, 4],
    ],
  ],
};

describe('fettle grind', () => {
  it('exits 0 with a plan that holds, and says first how much comes off', async () => {
    const { code, stdout, stderr } = await grind(jobFiles({ housing }));
    expect({ code, stderr }).toEqual({ code: 0, stderr: '' });
    expect(stdout).toMatch(/^THE PLAN HOLDS: take .* g \(.* cm³\) of grey iron off Block\./);
    expect(stdout).toMatch(/rib +from face 12 to 28 mm/);
  });

  it('tells which part and which cutter side by side, and exits 0 where one of them holds', async () => {
    const { code, stdout } = await grind(jobFiles({ housing }), '--choices');
    expect(code).toBe(0);
    expect(stdout).toMatch(/^A PLAN HOLDS: /);
    const json = await grind(jobFiles({ housing }), '--choices', '--json');
    const { parts, cutters } = choicesAnswerSchema.parse(JSON.parse(json.stdout));
    expect(parts.map(({ cut }) => cut)).toEqual(['fixed', 'moving', 'both']);
    expect(cutters.map(({ radiusMm }) => radiusMm)).toContain(12.5);
  });

  it('exits 1 where neither part offers what fouls, whatever the cutter', async () => {
    const { code, stdout } = await grind(jobFiles({ housing, block: { sections: [rib] } }), '--choices');
    expect(code).toBe(1);
    expect(stdout).toMatch(/^NO PLAN HOLDS/);
  });

  it('exits 0 where nothing need come off', async () => {
    const { code, stdout } = await grind(jobFiles());
    expect(code).toBe(0);
    expect(stdout).toMatch(/^NOTHING TO TAKE OFF: /);
  });

  it('exits 1 where what fouls is not offered, and names it', async () => {
    const { code, stdout } = await grind(jobFiles({ housing, block: { sections: [rib] } }));
    expect(code).toBe(1);
    expect(stdout).toMatch(/^NO PLAN: /);
    expect(stdout).toMatch(/"rib".*not offered/);
  });

  it('exits 1 where a region that is not to be cut stands in the way, and names it', async () => {
    const doNotCut = [{ id: 'end', loops: [{ circle: [158, 0], radius: 3 }] }];
    const { code, stdout } = await grind(jobFiles({ housing, block: { doNotCut } }));
    expect(code).toBe(1);
    expect(stdout).toContain('"end"');
    expect(stdout).toContain('Do not start cutting');
  });

  it.each([
    ['that holds', { housing }, 0],
    ['that does not', { housing, block: { sections: [rib] } }, 1],
  ])('--json prints the plan alone: one %s', async (_, changed, expected) => {
    const { code, stdout, stderr } = await grind(jobFiles(changed), '--json');
    expect({ code, stderr }).toEqual({ code: expected, stderr: '' });
    expect(grindAnswerSchema.safeParse(JSON.parse(stdout)).error).toBeUndefined();
  });

  it('--straight tells what edges a grinder can follow cost, in the text and in the JSON', async () => {
    const { stdout } = await grind(jobFiles({ housing }), '--straight');
    expect(stdout).toMatch(/Straight edges\n.*flats of 10 mm or more/);
    const { straight } = grindAnswerSchema.parse(
      JSON.parse((await grind(jobFiles({ housing }), '--straight', '--json')).stdout),
    );
    expect(straight).toMatchObject({ leastFlatMm: 10 });
    expect(straight?.extraMassG).toBeGreaterThanOrEqual(0);
  });

  it('wrong input is refused like that of a check', async () => {
    const { code, stdout, stderr } = await grind({ 'job.fit.json': '{' });
    expect({ code, stdout }).toEqual({ code: 2, stdout: '' });
    expect(stderr).toMatch(/found .*; expected .*\.\n/);
  });
});

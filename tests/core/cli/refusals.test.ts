import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { checkAnswerSchema } from '../../../src/answers/check-answer.ts';
import { grindAnswerSchema } from '../../../src/answers/grind-answer.ts';
import { runCli } from '../../support/run-cli.ts';
import { blockFile, fitFile, housingFile, jobFiles } from '../../support/small-job.ts';
import { folderWith } from '../../support/temp-folder.ts';

const bolt = (id: string, at: readonly [number, number]) => ({ id, kind: 'bolt', at, diameter: 13 });

/** The small job with a bolt well off the line of its dowels. */
const bolted = (housing: object) =>
  jobFiles({
    fit: { bolts: [['B1', 'H1']] },
    block: { holes: [...blockFile.holes, bolt('B1', [40, 90])] },
    housing: { holes: [...housingFile.holes, bolt('H1', [40, 90])], ...housing },
  });

const lip = housingFile.sections[0];

/** Jobs that are refused, with how the reason begins in words. */
const refused: [string, Record<string, unknown>, string, RegExp][] = [
  ['mirrored', bolted({ viewedFrom: 'face' }), 'hand-mirrored', /the drawings do not register: /],
  [
    'with a bolt far off',
    bolted({ holes: [...housingFile.holes, bolt('H1', [80, 60])] }),
    'bolts-do-not-register',
    /the drawings do not register: /,
  ],
  [
    'with the signs of depths turned round',
    jobFiles({ housing: { sections: [{ ...lip, depth: [20, 40] }] } }),
    'never-shares-depth',
    /nothing was measured/,
  ],
];

const fileIn = (files: Record<string, unknown>): string => join(folderWith(files), 'job.fit.json');

describe('a job that cannot be judged', () => {
  it.each(refused)('%s: check exits 3 and says first why', async (_, files, reason, words) => {
    const fit = fileIn(files);
    const { code, stdout } = await runCli('check', fit);
    expect(code).toBe(3);
    expect(stdout).toMatch(new RegExp(`^UNDECIDED: ${words.source}`));
    const json = await runCli('check', fit, '--json');
    expect(json.code).toBe(3);
    expect(checkAnswerSchema.parse(JSON.parse(json.stdout))).toMatchObject({ verdict: 'undecided', reason });
  });

  it.each(refused)('%s: grind plans nothing, exits 3 and says why', async (_, files, reason, words) => {
    const fit = fileIn(files);
    const { code, stdout } = await runCli('grind', fit);
    expect(code).toBe(3);
    expect(stdout).toMatch(new RegExp(`^NOT PLANNED: ${words.source}`));
    expect(stdout).not.toContain('What else would give');
    const json = await runCli('grind', fit, '--json');
    expect(json.code).toBe(3);
    expect(grindAnswerSchema.parse(JSON.parse(json.stdout))).toMatchObject({ holds: false, reason, sections: [] });
  });

  it.each(refused)('%s: markout writes no sheets and says so', async (_, files) => {
    const fit = fileIn(files);
    const folder = join(fit, '..', 'sheets');
    const { code, stdout } = await runCli('markout', fit, '-o', folder);
    expect(code).toBe(3);
    expect(stdout).toMatch(/^NOT PLANNED: /);
    expect(stdout).toContain('no sheets were written');
    expect(existsSync(folder)).toBe(false);
  });

  it.each(refused)('%s: report and drawing are written, and say it first', async (_, files) => {
    const fit = fileIn(files);
    const [html, svg] = ['job.html', 'job.svg'].map((name) => join(fit, '..', name)) as [string, string];
    expect(await runCli('report', fit, '-o', html)).toMatchObject({ code: 0 });
    expect(readFileSync(html, 'utf8')).toMatch(/class="verdict">UNDECIDED: .*class="plan">NOT PLANNED: /s);
    expect(await runCli('draw', fit, '-o', svg)).toMatchObject({ code: 0 });
    expect(readFileSync(svg, 'utf8')).toContain('NOT PLANNED');
  });

  it('stands up to being measured again', async () => {
    for (const [, files] of refused) {
      const fit = fileIn(files);
      expect(await runCli('check', fit, '--verify')).toMatchObject({ code: 3 });
      expect(await runCli('grind', fit, '--verify')).toMatchObject({ code: 3 });
    }
  });

  it('is judged where the fit says that it is meant', async () => {
    const fit = fileIn(
      jobFiles({ fit: { ...fitFile, nothingShares: true }, housing: { sections: [{ ...lip, depth: [20, 40] }] } }),
    );
    expect(await runCli('check', fit)).toMatchObject({ code: 0, stdout: expect.stringMatching(/^GOES: /) });
  });
});

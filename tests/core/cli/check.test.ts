import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { checkAnswerSchema } from '../../../src/answers/check-answer.ts';
import { runCli } from '../../support/run-cli.ts';
import { blockFile, housingFile, jobFiles } from '../../support/small-job.ts';
import { folderWith } from '../../support/temp-folder.ts';

const check = (files: Record<string, unknown>, ...options: string[]) =>
  runCli('check', join(folderWith(files), 'job.fit.json'), ...options);

/** A lip that reaches in as far as `fromX`, against a rib that ends at x = 160. */
const lipFrom = (fromX: number) => ({
  sections: [
    {
      id: 'lip',
      depth: [-40, -20],
      loops: [
        [
          [fromX, 20],
          [180, 20],
          [180, 40],
          [fromX, 40],
        ],
      ],
    },
  ],
});

describe('fettle check', () => {
  it('exits 0 where the clearance asked is met, and says so first', async () => {
    const { code, stdout, stderr } = await check(jobFiles());
    expect({ code, stderr }).toEqual({ code: 0, stderr: '' });
    expect(stdout).toMatch(/^GOES: /);
  });

  it('exits 1 where it is not', async () => {
    expect(await check(jobFiles({ housing: lipFrom(155) }))).toMatchObject({
      code: 1,
      stdout: expect.stringMatching(/^FOULS /),
    });
    expect(await check(jobFiles({ housing: lipFrom(160.2) }))).toMatchObject({
      code: 1,
      stdout: expect.stringMatching(/^TOO CLOSE: /),
    });
  });

  it('exits 3 where the lip passes over what nobody traced', async () => {
    const traced = { loops: [{ circle: [150, 0], radius: 12 }] };
    const { code, stdout } = await check(jobFiles({ block: { traced } }));
    expect(code).toBe(3);
    expect(stdout).toMatch(/^UNDECIDED /);
  });

  it.each([
    ['met', {}, 0],
    ['not met', { housing: lipFrom(155) }, 1],
    ['undecided', { block: { traced: { loops: [{ circle: [150, 0], radius: 12 }] } } }, 3],
  ])('--json prints the answer alone: clearance %s', async (_, changed, expected) => {
    const { code, stdout, stderr } = await check(jobFiles(changed), '--json');
    expect({ code, stderr }).toEqual({ code: expected, stderr: '' });
    expect(checkAnswerSchema.safeParse(JSON.parse(stdout)).error).toBeUndefined();
  });

  it('reports everything that is wrong with a job at once, each with its file and place', async () => {
    const files = jobFiles({
      fit: {
        clearence: 3,
        dowels: [
          ['D1', 'P1'],
          ['D2', 'P7'],
        ],
      },
      block: { sections: [{ ...blockFile.sections[0], depth: [60, 12] }] },
      housing: { viewedFrom: 'front' },
    });
    const { code, stdout, stderr } = await check(files);
    expect({ code, stdout }).toEqual({ code: 2, stdout: '' });
    expect(stderr).toMatch(/job\.fit\.json.*clearence.*Did you mean "clearance"\?/);
    expect(stderr).toMatch(/job\.fit\.json.*P7/);
    expect(stderr).toMatch(/block\.part\.json.*sections\[0\]\.depth/);
    expect(stderr).toMatch(/housing\.part\.json.*viewedFrom/);
  });

  it('the same under --json is JSON on standard output', async () => {
    const { code, stdout, stderr } = await check(jobFiles({ housing: { viewedFrom: 'front' } }), '--json');
    expect(code).toBe(2);
    expect(JSON.parse(stdout)).toMatchObject({ format: 'fettle-findings/1', findings: [{ at: 'viewedFrom' }] });
    expect(stderr).toContain('viewedFrom');
  });

  const deep = `${'['.repeat(100_000)}${']'.repeat(100_000)}`;
  const damaged: [string, Record<string, unknown>][] = [
    ['no fit at all', {}],
    ['an empty fit', { 'job.fit.json': '' }],
    ['a fit cut short', { 'job.fit.json': '{"format": "fettle-fit/1", "units"' }],
    ['a fit that is a list', { 'job.fit.json': [] }],
    ['a fit that is null', { 'job.fit.json': 'null' }],
    ['a fit that is a part', { ...jobFiles(), 'job.fit.json': blockFile }],
    ['a fit of bytes', { 'job.fit.json': new Uint8Array([0xff, 0xd8, 0xff, 0xe0, 0, 0x10]) }],
    ['a fit that is a folder', { 'job.fit.json/inside': '' }],
    ['a part that is missing', { 'job.fit.json': jobFiles()['job.fit.json'] }],
    ['a part that is a folder', { ...jobFiles(), 'block.part.json': undefined, 'block.part.json/inside': '' }],
    ['deep nesting', { ...jobFiles(), 'block.part.json': deep }],
    [
      'deep nesting in a known key',
      { ...jobFiles(), 'block.part.json': JSON.stringify(blockFile).replace('"sections":[', `"sections":[${deep},`) },
    ],
    [
      'prototype keys',
      {
        ...jobFiles(),
        'block.part.json': JSON.stringify(blockFile).replace(
          '"units"',
          '"__proto__": {"units": "in"}, "constructor": 1, "units"',
        ),
      },
    ],
    [
      'a number too large',
      { ...jobFiles(), 'block.part.json': JSON.stringify(blockFile).replace('[140,-4]', '[1e400,-4]') },
    ],
    ['control characters', jobFiles({ block: { 'na\u001b[31mme\u0007': 1 } })],
    [
      'an outline that crosses itself',
      jobFiles({
        block: {
          sections: [
            {
              id: 'rib',
              loops: [
                [
                  [0, 0],
                  [10, 10],
                  [10, 0],
                  [0, 10],
                ],
              ],
            },
          ],
        },
      }),
    ],
    [
      'a thousand faults',
      jobFiles({ block: Object.fromEntries(Array.from({ length: 1000 }, (_, i) => [`key${i}`, i])) }),
    ],
  ];

  it.each(damaged)('damaged input gets exit 2, plain words and no stack: %s', async (_, files) => {
    const present = Object.fromEntries(Object.entries(files).filter(([, content]) => content !== undefined));
    const folder = folderWith(present);
    const before = readdirSync(folder);
    const { code, stdout, stderr } = await runCli('check', join(folder, 'job.fit.json'));
    expect({ code, stdout }).toEqual({ code: 2, stdout: '' });
    expect(stderr).toMatch(/found .*; expected .*\.\n/);
    expect(stderr).not.toMatch(/\n\s+at |node:|undefined|\[object/);
    expect(stderr).not.toMatch(/[^\P{Cc}\n]/u);
    expect(readdirSync(folder)).toEqual(before);
  });

  it('a file bitten anywhere is answered or refused, never a fault of ours', async () => {
    const whole = JSON.stringify(housingFile);
    const bites = ['', '0', '-', '"', '[', '}', 'null', '1e9', ',', '\\', 'é'];
    for (let i = 0; i < 150; i += 1) {
      const at = (i * 7919) % whole.length;
      const bitten = whole.slice(0, at) + bites[i % bites.length] + whole.slice(at + 1 + (i % 3));
      const { code, stderr } = await check({ ...jobFiles(), 'housing.part.json': bitten });
      expect([0, 1, 2, 3], bitten).toContain(code);
      expect(stderr).not.toMatch(/\n\s+at /);
    }
  });
});

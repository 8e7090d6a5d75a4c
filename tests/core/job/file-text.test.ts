import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { fileText, schemaIds } from '../../../src/files/file-text.ts';
import { fitFile as fitSchema } from '../../../src/files/fit-file.ts';
import { jobFile as jobSchema } from '../../../src/files/job-file.ts';
import { partFile as partSchema } from '../../../src/files/part-file.ts';
import { readJob } from '../../../src/job/read-job.ts';
import { readPart } from '../../../src/job/read-part.ts';
import { homeTexts } from '../../../viewer/heavy/home-texts.ts';
import { newJob } from '../../../viewer/job/new-job.ts';
import { blockFile, fitFile, housingFile } from '../../support/small-job.ts';

const own = '../schemas/mine.json';
const block = partSchema.parse(blockFile);
const fit = fitSchema.parse(fitFile);
const parts = { 'block.part.json': blockFile, 'housing.part.json': housingFile };

describe('a file that is written', () => {
  it('names its schema first', () => {
    const text = fileText(block);
    expect(text).toMatch(/^\{\s+"\$schema": "urn:fettle:part:1",\s+"format": "fettle-part\/1",/);
    expect(fileText(newJob({ fixed: 'a', moving: 'b' }))).toMatch(/^\{\s+"\$schema": "urn:fettle:job:1"/);
  });

  it('keeps the schema it came with, and has it first', () => {
    expect(fileText({ ...block, $schema: own })).toMatch(/^\{\s+"\$schema": "\.\.\/schemas\/mine\.json",/);
  });

  it('is what it was but for that', () => {
    expect(JSON.parse(fileText(fit))).toEqual({ $schema: schemaIds['fettle-fit/1'], ...fitFile });
  });

  it('each in its own place, as saving in place writes them', () => {
    const job = { format: 'fettle-job/1', fit: { ...fitFile, $schema: own }, parts } as const;
    const { texts } = homeTexts(jobSchema.parse(job), 'job.fit.json', ['job.fit.json', ...Object.keys(parts)]);
    const schemas = [...texts].map(([name, text]) => [name, JSON.parse(text).$schema]);
    expect(Object.fromEntries(schemas)).toEqual({
      'job.fit.json': own,
      'block.part.json': schemaIds['fettle-part/1'],
      'housing.part.json': schemaIds['fettle-part/1'],
    });
  });
});

describe('a schema that a file names', () => {
  it('changes nothing in how the file is read', () => {
    const read = (extra: object) =>
      readJob('job.fit.json', (path) => {
        const file = path === 'job.fit.json' ? fitFile : parts[path as keyof typeof parts];
        return { ok: true, value: JSON.stringify({ ...extra, ...file }) };
      });
    const plain = read({});
    expect(plain.ok).toBe(true);
    expect(read({ $schema: own })).toEqual(plain);
  });

  it('is a text, or is told of', () => {
    expect(readPart('a.part.json', JSON.stringify({ ...blockFile, $schema: 1 }), 'fixed')).toEqual({
      ok: false,
      findings: [{ file: 'a.part.json', at: '$schema', found: '1', expected: 'a text in double quotes' }],
    });
  });

  it.each(['part', 'fit', 'job'] as const)('%s: the name is that of the schema which is published', (kind) => {
    const path = new URL(`../../../profiles/schemas/${kind}.schema.json`, import.meta.url);
    expect(JSON.parse(readFileSync(path, 'utf8')).$id).toBe(schemaIds[`fettle-${kind}/1`]);
  });
});

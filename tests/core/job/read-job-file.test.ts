import { describe, expect, it } from 'vitest';
import { readJob } from '../../../src/job/read-job.ts';
import { jobInFile, readJobFile } from '../../../src/job/read-job-file.ts';
import { blockFile, fitFile, housingFile } from '../../support/small-job.ts';

const parts = { 'block.part.json': blockFile, 'housing.part.json': housingFile };
const held = { format: 'fettle-job/1', fit: fitFile, parts };
const read = (job: object) => readJobFile('a.job.json', JSON.stringify(job));

describe('a job in one file', () => {
  it('reads as its fit and parts do in files of their own', () => {
    const files = new Map(
      Object.entries({ 'a.job.json': fitFile, ...parts }).map(([name, file]) => [`jobs/${name}`, file]),
    );
    const apart = readJob('jobs/a.job.json', (path) => ({ ok: true, value: JSON.stringify(files.get(path)) }));
    const job = read(held);
    expect(job.ok && jobInFile(job.value, 'jobs/a.job.json')).toEqual(apart);
    expect(apart.ok).toBe(true);
  });

  it('may hold a part of which nothing is traced yet, which then keeps the fit from being read', () => {
    const { viewedFrom, ...unseen } = { ...housingFile, sections: [] };
    const job = read({ ...held, parts: { ...parts, 'housing.part.json': unseen } });
    expect(job.ok).toBe(true);
    const inside = job.ok && jobInFile(job.value, 'jobs/a.job.json');
    expect(inside && !inside.ok && inside.findings.map(({ file, at }) => [file, at])).toEqual([
      ['jobs/housing.part.json', 'viewedFrom'],
      ['jobs/housing.part.json', 'sections'],
    ]);
  });

  it('names a part that the fit asks for and the job lacks', () => {
    const job = read({ ...held, parts: { 'block.part.json': blockFile } });
    expect(job.ok && jobInFile(job.value, 'jobs/a.job.json')).toMatchObject({
      ok: false,
      findings: [{ file: 'jobs/housing.part.json', found: 'not in the job' }],
    });
  });

  it.each([
    ['another format', { ...held, format: 'fettle-fit/1' }, 'format'],
    ['an unknown key', { ...held, picture: [] }, 'picture'],
    ['a picture that is no base64', { ...held, pictures: [{ ...picture(), data: '%' }] }, 'pictures[0].data'],
  ])('says where it holds %s', (_, job, at) => {
    expect(read(job)).toMatchObject({ ok: false, findings: [{ file: 'a.job.json', at }] });
  });
});

function picture() {
  const [part] = Object.keys(parts);
  return { id: 'one', part, name: 'one.jpg', mediaType: 'image/jpeg', data: 'AAAA', touches: [] };
}

import { createHash } from 'node:crypto';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { gunzipSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { writeReport } from '../../../cli/report.ts';
import { elementsOf, parsedReport } from '../../support/reports.ts';
import { heard, runCli } from '../../support/run-cli.ts';
import { jobFiles } from '../../support/small-job.ts';
import { folderWith } from '../../support/temp-folder.ts';
import { smallPage } from '../../support/view-server.ts';

const job = (changed = {}): { fit: string; out: string; folder: string } => {
  const folder = folderWith(jobFiles(changed));
  return { folder, fit: join(folder, 'job.fit.json'), out: join(folder, 'job.html') };
};

/** A lip over the end of the rib. */
const lip = [
  [155, 20],
  [180, 20],
  [180, 40],
  [155, 40],
];
const fouling = { sections: [{ id: 'lip', depth: [-40, -20], loops: [lip] }] };

describe('fettle report', () => {
  it('writes one file and exits 0, whatever the verdict', async () => {
    const { fit, out } = job({ fit: { clearance: 20 } });
    const check = await runCli('check', fit);
    const { code, stdout } = await runCli('report', fit, '-o', out);
    expect(check.code).toBe(1);
    expect(code).toBe(0);
    expect(stdout).toContain(check.stdout.split('\n')[0]);
    expect(stdout).toContain(`open ${out} in a browser`);
    expect(readFileSync(out, 'utf8')).toMatch(/^<!DOCTYPE html>\n<html lang="en"/);
  });

  it('--straight says what edges a grinder can follow cost', async () => {
    const { fit, out } = job({ housing: fouling });
    await runCli('report', fit, '-o', out);
    expect(readFileSync(out, 'utf8')).not.toContain('Straight edges');
    await runCli('report', fit, '-o', out, '--straight');
    expect(readFileSync(out, 'utf8')).toMatch(/Straight edges.*flats of 10 mm or more/s);
  });

  it('names every file it was made from, by the hash of its bytes', async () => {
    const { folder, fit, out } = job();
    await runCli('report', fit, '-o', out);
    const html = readFileSync(out, 'utf8');
    for (const name of ['job.fit.json', 'block.part.json', 'housing.part.json']) {
      const bytes = readFileSync(join(folder, name));
      expect(html).toContain(createHash('sha256').update(bytes).digest('hex'));
      expect(html).toContain(name);
    }
  });

  it('replaces a report of its own', async () => {
    const { fit, out } = job();
    await runCli('report', fit, '-o', out);
    expect((await runCli('report', fit, '-o', out)).code).toBe(0);
  });

  it('leaves a page that is not its own alone', async () => {
    const { fit, out } = job();
    writeFileSync(out, '<!DOCTYPE html>\n<html><body>mine</body></html>');
    const { code, stderr } = await runCli('report', fit, '-o', out);
    expect(code).toBe(2);
    expect(stderr).toContain('not a report of Fettle');
    expect(readFileSync(out, 'utf8')).toContain('mine');
  });

  it('writes nothing and exits 2 where an input is wrong', async () => {
    const { fit, out } = job({ fit: { clearance: -1 } });
    const { code, stderr } = await runCli('report', fit, '-o', out);
    expect(code).toBe(2);
    expect(stderr).toContain('clearance');
    expect(existsSync(out)).toBe(false);
  });

  it('holds the viewer with the very files it names, and lets nothing else run', async () => {
    const { folder, fit, out } = job();
    const { stdout, stderr } = await heard(() => writeReport(fit, out, smallPage));
    expect(stdout).toMatch(/in a browser; \d\.\d MB\.$/m);
    expect(stderr).toBe('');
    const html = readFileSync(out, 'utf8');
    const report = parsedReport(html);
    const [viewer, opening, ...more] = elementsOf(report, 'script');
    expect(more).toEqual([]);
    const page = gunzipSync(Buffer.from(viewer?.textContent ?? '', 'base64')).toString();
    const [, held = ''] = /<script id="job" type="application\/json">(.*?)<\/script><title>/.exec(page) ?? [];
    const inFile = (name: string) => JSON.parse(readFileSync(join(folder, name), 'utf8'));
    const parts = { 'block.part.json': inFile('block.part.json'), 'housing.part.json': inFile('housing.part.json') };
    expect(JSON.parse(held)).toEqual({ format: 'fettle-job/1', fit: inFile('job.fit.json'), parts });
    const hashes = [opening?.textContent ?? '', '\nlet a = 1;'].map(
      (text) => `'sha256-${createHash('sha256').update(text).digest('base64')}'`,
    );
    expect(html).toContain(
      `content="default-src 'none'; style-src 'unsafe-inline'; script-src ${hashes.join(' ')}; worker-src blob:; img-src blob: data:; form-action 'none'; base-uri 'none'"`,
    );
  });

  it('lets no name in a job end the script that holds it', async () => {
    const { fit, out } = job({ fit: { title: '</script><script>alert(1)</script><!--' } });
    await heard(() => writeReport(fit, out, smallPage));
    const [viewer] = elementsOf(parsedReport(readFileSync(out, 'utf8')), 'script');
    const page = gunzipSync(Buffer.from(viewer?.textContent ?? '', 'base64')).toString();
    expect(page.match(/<script/g)).toHaveLength(2);
    expect(page).not.toContain('<!--');
  });

  it('is written without a viewer where none is built, and says so', async () => {
    const { fit, out } = job();
    const { stderr } = await heard(() => writeReport(fit, out, null));
    expect(stderr).toMatch(/^The report holds no viewer.*npm run build/);
    expect(readFileSync(out, 'utf8')).not.toMatch(/<script|<iframe|<button/);
  });

  it('asks for the name of the report', async () => {
    expect((await runCli('report', job().fit)).code).toBe(2);
  });
});

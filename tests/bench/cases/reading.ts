import { readAnyJob } from '../../../src/job/read-any-job.ts';
import type { Contest } from '../contest.ts';
import { jobFilesOf } from '../job-files.ts';
import { flangeInRing } from '../outlines.ts';

const peer = 'JSON.parse';

/** A job of scans read, validated and looked through for crossings, against its texts only parsed. */
export function* readingContests(): Generator<Contest> {
  for (const edges of [10_000, 100_000]) {
    const files = jobFilesOf(flangeInRing('noisy', edges));
    const texts = new Map(Object.entries(files).map(([name, raw]) => [name, JSON.stringify(raw)]));
    yield {
      edges,
      within: Number.POSITIVE_INFINITY,
      runs: {
        reading: () => verticesRead(texts),
        [peer]: () => [...texts.values()].reduce((sum, text) => sum + Object.keys(JSON.parse(text)).length, 0),
      },
      cases: [{ name: 'a job read, noisy', ours: 'reading', peer, ...(edges === 100_000 ? { atLeast: 1 / 5 } : {}) }],
    };
  }
}

function verticesRead(texts: ReadonlyMap<string, string>): number {
  const read = readAnyJob('bench.fit.json', (path) => ({ ok: true, value: texts.get(path) ?? '' }));
  if (!read.ok) throw new Error(JSON.stringify(read.findings));
  return read.value.job.fixed.sections.length;
}

import { describe, expect, test } from 'vitest';
import { checkJoint } from '../../src/clearance/check.ts';
import type { CheckResult } from '../../src/clearance/check-result.ts';
import { drain } from '../../src/geometry/progress.ts';
import { readJob } from '../../src/job/read-job.ts';
import { placeJob } from '../../src/joint/place-job.ts';
import { loadFrom } from '../support/model-files.ts';
import { Random } from '../support/random.ts';
import { type SoundJob, type SoundPart, soundJob } from '../support/sound-jobs.ts';

/**
 * A mistake is caught where `fettle check` does not end with 0: its files are refused with findings (exit 2), the
 * verdict is undecided (3), or it says that the parts foul or come too close (1). It escapes where the verdict is that
 * it goes, or should go. What a mistake is caught by is told besides, where only one answer is honest.
 */
type Detection = 'findings' | 'too-close' | 'fouls' | `undecided: ${string}`;

const jobs = 300;
const seeds = Array.from({ length: jobs }, (_, i) => 7100 + i);

const answerTo = ({ fit, block, housing }: SoundJob): CheckResult | null => {
  const files = { 'job.fit.json': fit, 'block.part.json': block, 'housing.part.json': housing };
  const read = readJob('job.fit.json', loadFrom(files));
  const placed = read.ok ? placeJob(read.value) : read;
  return placed.ok ? drain(checkJoint(placed.value)) : null;
};

function caughtBy(job: SoundJob): Detection | 'escaped' {
  const answer = answerTo(job);
  if (answer === null) return 'findings';
  switch (answer.verdict) {
    case 'goes':
    case 'should-go':
      return 'escaped';
    case 'undecided':
      return `undecided: ${answer.reason}`;
    default:
      return answer.verdict;
  }
}

type Mistake = (job: SoundJob, random: Random) => SoundJob;

const inOnePart = (job: SoundJob, random: Random, change: (part: SoundPart) => SoundPart): SoundJob =>
  random.chance(0.5) ? { ...job, block: change(job.block) } : { ...job, housing: change(job.housing) };

const seenFromWrongSide: Mistake = (job, random) =>
  inOnePart(job, random, (part) => ({ ...part, viewedFrom: part.viewedFrom === 'face' ? 'back' : 'face' }));

const boltsSwapped: Mistake = (job, random) => {
  const a = random.whole(0, job.fit.bolts.length - 1);
  const b = (a + random.whole(1, job.fit.bolts.length - 1)) % job.fit.bolts.length;
  const moving = job.fit.bolts.map(([, id]) => id);
  const swapped = moving.map((id, i) => (i === a ? moving[b] : i === b ? moving[a] : id) as string);
  return { ...job, fit: { ...job.fit, bolts: job.fit.bolts.map(([id], i) => [id, swapped[i] as string]) } };
};

const signsTurned: Mistake = (job, random) =>
  inOnePart(job, random, (part) => ({
    ...part,
    sections: part.sections.map((section) => ({ ...section, depth: [0 - section.depth[1], 0 - section.depth[0]] })),
  }));

const unitMistaken: Mistake = (job, random) =>
  inOnePart(job, random, (part) => ({ ...part, units: part.units === 'mm' ? 'in' : 'mm' }));

const pathReversed: Mistake = (job) => ({ ...job, fit: { ...job.fit, offerUp: [...job.fit.offerUp].reverse() } });

const partsExchanged: Mistake = (job) => ({
  ...job,
  fit: { ...job.fit, fixed: job.fit.moving, moving: job.fit.fixed },
});

/** Each with all that may honestly be answered to it. */
const mistakes: [string, Mistake, RegExp][] = [
  ['one drawing is said to be seen from the other side', seenFromWrongSide, /^undecided: hand-mirrored$/],
  ['two bolts are paired crosswise', boltsSwapped, /^undecided: (bolts-do-not-register|hand-mirrored)$/],
  [
    'the signs of all depths of one part are turned round',
    signsTurned,
    /^(fouls|undecided: (never-shares-depth|home-shares-nothing|starts-in-shared-depth))$/,
  ],
  ['one part is said to be in the other unit', unitMistaken, /^(findings|undecided: dowels-do-not-register)$/],
  ['the way in is told from home outwards', pathReversed, /^findings$/],
  ['the two parts are exchanged in the fit', partsExchanged, /^findings$/],
];

describe(`of ${jobs} sound jobs`, () => {
  test('none is refused, and all go', () => {
    const refused = seeds.flatMap((seed) => {
      const answer = answerTo(soundJob(new Random(seed)));
      return answer?.verdict === 'goes' || answer?.verdict === 'should-go'
        ? []
        : [{ seed, verdict: answer?.verdict, reason: answer?.reason }];
    });
    expect(refused).toEqual([]);
  });
});

describe(`of ${jobs} jobs with one mistake each, none goes`, () => {
  test.each(mistakes)('where %s', (title, mistake, honest) => {
    const row = mistakes.findIndex(([name]) => name === title);
    const own = seeds.filter((_, i) => i % mistakes.length === row);
    const dishonest = own.flatMap((seed) => {
      const random = new Random(seed);
      const job = soundJob(random);
      const caught = caughtBy(mistake(job, random));
      return honest.test(caught) ? [] : [{ seed, caught }];
    });
    expect(own).toHaveLength(jobs / mistakes.length);
    expect(dishonest).toEqual([]);
  });
});

import type { JobFile } from '../../../src/files/job-file.ts';
import { type Keeping, keeperOf } from '../../../viewer/job/keeper.ts';
import { Random } from '../../support/random.ts';
import { blockFile, fitFile, housingFile } from '../../support/small-job.ts';

type Pictures = NonNullable<JobFile['pictures']>;

const alphabet = [...new TextEncoder().encode('ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/')];
const made = new Map<number, string>();

/** Letters of base64 without order, as those of a photograph, which no browser can make smaller. */
function bytesOf(n: number, letters: number): string {
  const random = new Random(n);
  const known =
    made.get(n) ?? new TextDecoder().decode(Uint8Array.from({ length: letters }, () => random.pick(alphabet)));
  made.set(n, known);
  return known;
}

const pictureOf = (n: number, letters: number): Pictures[number] => ({
  id: `p${n}`,
  part: 'block.part.json',
  name: `${n}.jpg`,
  mediaType: 'image/jpeg',
  data: bytesOf(n, letters),
  touches: [],
});

/** The large picture a job has from its start, as many letters as 5 MB take, and the smaller ones that come and go. */
const large = 6_990_512;
const small = 400_000;

/** The job as it is after so many edits, always the same: its title counts them, and every seventh changes a picture. */
function jobAfter(count: number): JobFile {
  const later = Math.floor(count / 7);
  const changing = later === 0 ? [] : [pictureOf(later, small)];
  return {
    format: 'fettle-job/1',
    fit: { ...(fitFile as JobFile['fit']), title: `edit ${count}` },
    parts: { 'block.part.json': blockFile, 'housing.part.json': housingFile } as unknown as JobFile['parts'],
    pictures: [pictureOf(0, large), ...changing],
  };
}

const editsIn = (job: JobFile): number => Number(/^edit (\d+)$/.exec(job.fit.title ?? '')?.[1]);

/** What a job says, whatever schema it names. */
const saidBy = ({ $schema, ...job }: JobFile): string => JSON.stringify(job);

const sameJob = (a: JobFile, b: JobFile): boolean => saidBy(a) === saidBy(b);

const options = (id: string, onKeeping: (keeping: Keeping) => void) => ({
  id,
  titleOf: ({ fit }: JobFile) => fit.title ?? '',
  openedFrom: null,
  onKeeping,
});

/**
 * Edits a job without end, and says on the console `begun N` at the first edit of a gesture and `kept N` whenever the
 * keeper says so. Paced: a gesture starts once the one before is kept. Otherwise edits come as fast as they may.
 */
async function editWithoutEnd(id: string, seed: number, paced: boolean): Promise<void> {
  const random = new Random(seed);
  let count = 0;
  const keeper = keeperOf(
    options(id, ({ state }) => {
      if (state !== 'keeping') console.log(`${state} ${count}`);
    }),
  );
  keeper.keep(jobAfter(count));
  await keeper.settled();
  for (;;) {
    count += 1;
    console.log(`begun ${count}`);
    for (let more = random.whole(0, 6); more > 0; more -= 1) {
      keeper.keep(jobAfter(count));
      await new Promise((done) => setTimeout(done, random.whole(0, 10)));
      count += 1;
    }
    keeper.keep(jobAfter(count));
    if (paced) await keeper.settled();
  }
}

export const edits = { jobAfter, editsIn, sameJob, options, editWithoutEnd };

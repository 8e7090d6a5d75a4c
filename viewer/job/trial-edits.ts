import type { PositionFile } from '../../src/files/fit-file.ts';
import type { JobFile } from '../../src/files/job-file.ts';
import type { GoFile, TrialFile, TrialReadingFile } from '../../src/files/trial-file.ts';
import { jobFileName } from './job-file-name.ts';
import { amended } from './part-edits.ts';

/** A place to be read: on a section of the fixed part, and where the moving part stands meanwhile. */
export type PlaceToRead = Pick<TrialReadingFile, 'section' | 'at' | 'depth' | 'position'>;

/** What was read at a place. */
export type Said =
  | { readonly kind: 'clay'; readonly thickness: number }
  | { readonly kind: 'mark'; readonly touched: boolean };

export type Stopped = NonNullable<GoFile['stopped']>;
export type Stand = NonNullable<TrialReadingFile['position']>;
export type FaceGap = NonNullable<GoFile['faces']>[number];
export type TookOff = Exclude<NonNullable<GoFile['cut']>, string>[number];

const format = 'fettle-trial/1';

/** The trial fits of a job: its one record of that format, the same object as long as nothing of it changes. */
export const trialIn = ({ records = [] }: JobFile): TrialFile | null =>
  // a worker has held it against its schema when the job was opened
  (records.find((record) => record.format === format) as TrialFile | undefined) ?? null;

/** Trial fits in place of those a job has; null takes them away. */
export function withTrial(job: JobFile, trial: TrialFile | null): JobFile {
  const others = (job.records ?? []).filter((record) => record.format !== format);
  const records = trial === null ? others : [...others, amended(trial, { $schema: undefined })];
  return amended(job, { records: records.length === 0 ? undefined : records });
}

export const goesIn = (job: JobFile): readonly GoFile[] => trialIn(job)?.goes ?? [];

const withGoes = (job: JobFile, goes: GoFile[]): JobFile =>
  withTrial(job, { ...(trialIn(job) ?? { format, fit: jobFileName(job) }), goes });

/** The next go, of a day, year first. */
export const withGo = (job: JobFile, date: string): JobFile =>
  withGoes(job, [...goesIn(job), { go: goesIn(job).length + 1, date }]);

/** Goes are counted in order, so only the last can be taken out. */
export function withoutLastGo(job: JobFile): JobFile {
  const goes = goesIn(job).slice(0, -1);
  return goes.length === 0 ? withTrial(job, null) : withGoes(job, goes);
}

const withGoChanged = (job: JobFile, index: number, change: (go: GoFile) => GoFile): JobFile =>
  withGoes(
    job,
    goesIn(job).map((go, i) => (i === index ? change(go) : go)),
  );

export const withCut = (job: JobFile, index: number, cut: GoFile['cut']): JobFile =>
  withGoChanged(job, index, (go) => amended(go, { cut }));

const withMeasured = (job: JobFile, index: number, change: (took: readonly TookOff[]) => TookOff[]): JobFile =>
  withGoChanged(job, index, (go) => {
    const took = change(typeof go.cut === 'object' ? go.cut : []);
    return amended(go, { cut: took.length === 0 ? undefined : took });
  });

/** What came off at a place of the marking-out table; a place that was measured before is measured anew. */
export const withTook = (job: JobFile, index: number, at: TookOff): JobFile =>
  withMeasured(job, index, (took) =>
    [...took.filter(({ place }) => place !== at.place), at].sort((a, b) => a.place - b.place),
  );

export const withoutTook = (job: JobFile, index: number, place: number): JobFile =>
  withMeasured(job, index, (took) => took.filter((one) => one.place !== place));

export const withNote = (job: JobFile, index: number, note: string): JobFile =>
  withGoChanged(job, index, (go) => amended(go, { note: note === '' ? undefined : note }));

/** How readings come along where it is put right at what place their go stopped. */
export interface Carried {
  readonly was: Stand;
  readonly is: Stand;
  /** By reading, the depth beside which the moving part stands now; left out where it does at the old one. */
  readonly depths: Readonly<Record<string, number>>;
}

/** Where a go stopped; undefined where that is not written down. What was read where it stopped is carried along. */
export function withStopped(
  job: JobFile,
  index: number,
  stopped: Stopped | undefined,
  { was, is, depths }: Carried,
): JobFile {
  const carried = (reading: TrialReadingFile): TrialReadingFile =>
    isSameStand(reading.position ?? 'home', was)
      ? { ...amended(reading, { position: written(is) }), depth: depths[reading.id] ?? reading.depth }
      : reading;
  return withGoChanged(job, index, (go) => amended(go, { stopped, readings: go.readings?.map(carried) }));
}

const written = (stand: Stand): PositionFile | undefined => (stand === 'home' ? undefined : stand);

export function isSameStand(a: Stand, b: Stand): boolean {
  const plain = (stand: Stand): number[] => {
    const { standOff = 0, turn = 0, shift: [x, y] = [0, 0] }: PositionFile = stand === 'home' ? {} : stand;
    return [standOff, turn, x, y];
  };
  const others = plain(b);
  return plain(a).every((value, i) => value === others[i]);
}

/** A reading in a go, under the least number that none goes by. */
export function withReading(job: JobFile, index: number, place: PlaceToRead, said: Said): JobFile {
  const taken = new Set(goesIn(job).flatMap(({ readings = [] }) => readings.map(({ id }) => id)));
  let n = 1;
  while (taken.has(String(n))) n++;
  const reading = { id: String(n), ...place, ...said };
  return withGoChanged(job, index, (go) => ({ ...go, readings: [...(go.readings ?? []), reading] }));
}

const withReadings = (
  job: JobFile,
  index: number,
  change: (readings: readonly TrialReadingFile[]) => TrialReadingFile[],
): JobFile =>
  withGoChanged(job, index, (go) => {
    const readings = change(go.readings ?? []);
    return amended(go, { readings: readings.length === 0 ? undefined : readings });
  });

/** The same place read anew. */
export const withSaid = (job: JobFile, index: number, k: number, said: Said): JobFile =>
  withReadings(job, index, (readings) =>
    readings.map((reading, i) => {
      if (i !== k) return reading;
      const { id, section, at, depth, position, error } = reading;
      return { ...amended({ id, section, at, depth, position, error }, {}), ...said };
    }),
  );

export const withDepth = (job: JobFile, index: number, k: number, depth: number): JobFile =>
  withReadings(job, index, (readings) => readings.map((reading, i) => (i === k ? { ...reading, depth } : reading)));

/** The ± limit of a reading; undefined leaves it at what is usual. */
export const withError = (job: JobFile, index: number, k: number, error: number | undefined): JobFile =>
  withReadings(job, index, (readings) =>
    readings.map((reading, i) => (i === k ? amended(reading, { error }) : reading)),
  );

export const withoutReading = (job: JobFile, index: number, k: number): JobFile =>
  withReadings(job, index, (readings) => readings.filter((_, i) => i !== k));

const withFaces = (job: JobFile, index: number, change: (faces: readonly FaceGap[]) => FaceGap[]): JobFile =>
  withGoChanged(job, index, (go) => {
    const faces = change(go.faces ?? []);
    return amended(go, { faces: faces.length === 0 ? undefined : faces });
  });

/** A feeler gauge between the faces; a place that was measured before is measured anew. */
export const withFace = (job: JobFile, index: number, face: FaceGap): JobFile =>
  withFaces(job, index, (faces) => [...faces.filter(({ at }) => at.join() !== face.at.join()), face]);

export const withoutFace = (job: JobFile, index: number, k: number): JobFile =>
  withFaces(job, index, (faces) => faces.filter((_, i) => i !== k));

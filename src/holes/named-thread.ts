import { inchDrillNamed } from '../trade/inch-drills.ts';
import { metricThreads } from '../trade/metric-threads.ts';
import {
  type PipeThread,
  pipeDrillSource,
  pipeThreadHeightMm,
  pipeThreadSource,
  pipeThreads,
} from '../trade/pipe-threads.ts';
import type { Source } from '../trade/sourced.ts';
import { largestMinor6HMm, minorDiameterMm, parseThread, pitchDiameterMm, stressAreaMm2 } from '../trade/threads.ts';
import { minorTolerance2BMm, type UnifiedThread, unifiedThreads } from '../trade/unified-threads.ts';
import type { TappingDrill, ThreadData } from './thread-data.ts';

const iso724: Source = { basis: 'computed', from: 'ISO 724' };
const b11: Source = { basis: 'computed', from: 'ASME B1.1, the same profile as ISO 724' };
const tolerance6H: Source = { basis: 'from memory', from: 'ISO 965-1' };
const tolerance2B: Source = { basis: 'from memory', from: 'ASME B1.1' };
const byPitch: Source = { basis: 'common practice', from: '' };

/** Longer than any designation. */
const longestName = 40;
const [leastMajorMm, largestMajorMm] = [1, 100];
/** The least pitch of ISO 261, and a hair above the coarsest for its size, M1 × 0.25; from memory. */
const leastPitchMm = 0.2;
const coarsestShare = 0.3;

/**
 * The thread of a designation: metric (`M12x1.25`, `M12` for the coarse one), unified (`3/8-16`, `3/8 UNF`, `#10-24`),
 * pipe (`G1/4`) or taper pipe (`R1/4`, `Rc1/4`); letter case and blanks don't matter. Metric sizes that are in no table
 * have their geometry computed. Null where it is none of them, leaves its pitch open, or is of no size between 1 and 100 mm.
 */
export function threadNamed(designation: string): ThreadData | null {
  if (designation.length > longestName) return null;
  const text = designation.replace(/\s/g, '').toUpperCase();
  return pipeNamed(text) ?? unifiedNamed(text) ?? metricNamed(text);
}

/** The name of every thread in the tables. */
export const threadNames = (): readonly string[] => [
  ...metricThreads.map(({ majorMm, pitchMm }) => metricName(majorMm, pitchMm)),
  ...unifiedThreads.map(unifiedName),
  ...pipeThreads.flatMap(({ size }) => [`G${size}`, `R${size}`, `Rc${size}`]),
];

function metricNamed(text: string): ThreadData | null {
  const size = text.startsWith('M') ? parseThread(text) : null;
  if (size === null || size.pitchMm === null) return null;
  const { majorMm, pitchMm } = size;
  if (majorMm < leastMajorMm || majorMm > largestMajorMm || pitchMm < leastPitchMm) return null;
  if (pitchMm > coarsestShare * majorMm) return null;
  const listed = metricThreads.find((t) => t.majorMm === majorMm && t.pitchMm === pitchMm);
  return {
    ...sharpProfile(majorMm, pitchMm),
    name: metricName(majorMm, pitchMm),
    system: 'metric',
    geometrySource: iso724,
    largestMinorMm: largestMinor6HMm(majorMm, pitchMm),
    limitsOf: '6H',
    limitsSource: tolerance6H,
    drill:
      listed === undefined
        ? drillByPitch(majorMm, pitchMm)
        : { ...plainDrill(listed.tappingDrillMm), source: listed.drillSource },
  };
}

/** Thread sizes are written without needless noughts. */
const metricName = (majorMm: number, pitchMm: number): string => `M${majorMm}x${pitchMm}`;

const plainDrill = (diameterMm: number) => ({ name: `${diameterMm} mm`, diameterMm });

/** Major diameter less pitch, to a tenth: what is drilled where no table has the thread. */
const drillByPitch = (majorMm: number, pitchMm: number): TappingDrill => ({
  ...plainDrill(Math.round((majorMm - pitchMm) * 10) / 10),
  source: byPitch,
});

const sharpProfile = (majorMm: number, pitchMm: number) => ({
  majorMm,
  pitchMm,
  pitchDiameterMm: pitchDiameterMm(majorMm, pitchMm),
  minorMm: minorDiameterMm(majorMm, pitchMm),
  stressAreaMm2: stressAreaMm2(majorMm, pitchMm),
  usefulLengthMm: null,
});

const unified = /^(?:#|NO\.?)?(\d+(?:\/\d+)?)(?:-(\d+))?(UNC|UNF)?$/;

function unifiedNamed(text: string): ThreadData | null {
  const [, size, perInch, series] = unified.exec(text) ?? [];
  if (size === undefined || (perInch === undefined && series === undefined)) return null;
  const named = size.includes('/') ? size : `#${size}`;
  const thread = unifiedThreads.find(
    (t) =>
      t.size === named &&
      (perInch === undefined || t.perInch === Number(perInch)) &&
      (series === undefined || t.series === series),
  );
  return thread === undefined ? null : unifiedData(thread);
}

const unifiedName = ({ size, perInch, series }: UnifiedThread): string => `${size}-${perInch} ${series}`;

function unifiedData(thread: UnifiedThread): ThreadData | null {
  const drill = inchDrillNamed(thread.drill);
  if (drill === null) return null;
  const pitchMm = 25.4 / thread.perInch;
  const profile = sharpProfile(thread.majorMm, pitchMm);
  return {
    ...profile,
    name: unifiedName(thread),
    system: 'unified',
    geometrySource: b11,
    largestMinorMm: profile.minorMm + minorTolerance2BMm(thread.majorMm, pitchMm),
    limitsOf: '2B',
    limitsSource: tolerance2B,
    drill: { ...drill, source: thread.drillSource },
  };
}

const pipe = /^(G|RC?)(\d\/\d)$/;

function pipeNamed(text: string): ThreadData | null {
  const [, letter, size] = pipe.exec(text) ?? [];
  const thread = pipeThreads.find((t) => t.size === size);
  if (letter === undefined || thread === undefined) return null;
  return pipeData(thread, letter === 'RC' ? 'Rc' : letter);
}

function pipeData(thread: PipeThread, letter: string): ThreadData {
  const pitchMm = 25.4 / thread.perInch;
  const heightMm = pipeThreadHeightMm(pitchMm);
  const minorMm = thread.majorMm - 2 * heightMm;
  const taper = letter !== 'G';
  return {
    name: `${letter}${thread.size}`,
    system: taper ? 'taper-pipe' : 'pipe',
    majorMm: thread.majorMm,
    pitchMm,
    pitchDiameterMm: thread.majorMm - heightMm,
    minorMm,
    geometrySource: pipeThreadSource,
    largestMinorMm: taper ? null : minorMm + thread.minorToleranceMm,
    limitsOf: taper ? 'ISO 7' : 'ISO 228',
    limitsSource: pipeThreadSource,
    stressAreaMm2: null,
    drill: { ...plainDrill(taper ? thread.taperDrillMm : thread.drillMm), source: pipeDrillSource },
    usefulLengthMm: taper ? thread.usefulLengthMm : null,
  };
}

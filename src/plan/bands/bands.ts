import { passageOf } from '../../clearance/passages.ts';
import { depthBreaks, type Pass, passesBy, strayedPassesBy } from '../../clearance/passes.ts';
import type { DepthView } from '../../clearance/shared-depth.ts';
import { treeOf } from '../../clearance/trees.ts';
import { leastDistance, staysClear } from '../../geometry/motion/least-distance.ts';
import type { DepthRange, Section } from '../../job/casting.ts';
import type { Part } from '../../job/part.ts';
import type { Joint } from '../../joint/joint.ts';
import { clearanceOf, errorOf } from './room-needed.ts';
import { passKey } from './sweeps.ts';

/** Part of a section's depth, in its own part's depths, that something passes too near. */
export interface Band {
  readonly depth: DepthRange | null;
  /** All that passes nearer than asked, or could if every error of outline and place were against the builder. */
  readonly passes: readonly NearPass[];
  /** The same with the errors of depth against the builder too. */
  readonly atWorst: readonly NearPass[];
}

export interface NearPass extends Pass {
  /**
   * How much nearer than asked it passes as traced, mm; none or less where it only might. A foul where next to no
   * clearance is asked is short beyond measure: what holds for a touch does not for it.
   */
  readonly shortMm: number;
}

/** An asked clearance is held to this. */
export const heldToMm = 1e-3;

/** The bands of a section that something passes too near; neighbours with the same passes are one. */
export function bandsOf(joint: Joint, part: Part, section: Section): Band[] {
  const near = nearPasses(joint, section);
  const passing = (depth: DepthRange | null, view: DepthView): NearPass[] => {
    const strayed = strayedPassesBy(joint, part, section, depth, view);
    return [
      passesBy(joint, part, section, depth, view),
      strayed.filter(({ isSure }) => isSure),
      strayed.filter(({ isSure }) => !isSure),
    ].flatMap((passes) => distinct(passes.flatMap(near)));
  };
  const bands = rangesOf(joint, part, section).map((depth) => ({
    depth,
    passes: passing(depth, 'as-measured'),
    atWorst: passing(depth, 'at-worst'),
  }));
  return joined(bands).filter(({ passes }) => passes.some(({ shortMm }) => shortMm > heldToMm));
}

/** Ranges of depth in which what passes is the same throughout. */
function rangesOf(joint: Joint, part: Part, section: Section): readonly (DepthRange | null)[] {
  if (section.depth === null) return [null];
  const breaks = depthBreaks(joint, part, section);
  return breaks.slice(1).map((toMm, i) => ({ fromMm: breaks[i] as number, toMm }));
}

/** How near passes come to a section; what covers the same ground for the same clearance is measured once. */
function nearPasses(joint: Joint, section: Section): (pass: Pass) => NearPass[] {
  const known = new Map<string, NearPass[]>();
  return (pass) => {
    const key = `${passKey(pass)} ${clearanceOf(joint, pass)}`;
    const near = known.get(key) ?? nearPass(joint, section, pass);
    known.set(key, near);
    return near;
  };
}

function nearPass(joint: Joint, section: Section, pass: Pass): NearPass[] {
  const clearanceMm = clearanceOf(joint, pass);
  const passing = [treeOf(section.loops), treeOf(pass.section.loops), pass.start, pass.motion] as const;
  if (staysClear(...passing, clearanceMm + errorOf(joint, pass))) return [];
  const { distanceMm } = leastDistance(...passing);
  const isFoul = distanceMm === 0 && clearanceMm <= heldToMm && passageOf(...passing).state === 'fouls';
  return [{ ...pass, shortMm: isFoul ? Number.POSITIVE_INFINITY : clearanceMm - distanceMm }];
}

function joined(bands: readonly Band[]): Band[] {
  const result: Band[] = [];
  for (const band of bands) {
    const last = result.at(-1);
    if (last?.depth && band.depth && samePasses(last, band)) {
      result[result.length - 1] = { ...last, depth: { fromMm: last.depth.fromMm, toMm: band.depth.toMm } };
    } else {
      result.push(band);
    }
  }
  return result;
}

/** A leg that only closes the stand-off stands where home does: of passes over the same ground, the one most short. */
function distinct(passes: readonly NearPass[]): NearPass[] {
  const byKey = new Map<string, NearPass>();
  for (const pass of passes.toSorted((a, b) => a.shortMm - b.shortMm)) byKey.set(passKey(pass), pass);
  return [...byKey.values()];
}

const samePasses = (a: Band, b: Band): boolean =>
  keysOf(a.passes) === keysOf(b.passes) && keysOf(a.atWorst) === keysOf(b.atWorst);

const keysOf = (passes: readonly NearPass[]): string =>
  passes
    .map((pass) => `${passKey(pass)} ${pass.shortMm}`)
    .sort()
    .join();

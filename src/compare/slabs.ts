import { distinctDepths } from '../clearance/distinct-depths.ts';
import { reachOf, stretchOf } from '../clearance/shared-depth.ts';
import type { DepthRange, Section } from '../job/casting.ts';

/** A range of depth in which the same sections of the other casting stand beside a section; null: every depth. */
export interface Slab {
  readonly depth: DepthRange | null;
  /** As measured. */
  readonly beside: readonly Section[];
  /** With the errors of both depths: those that may stand there as well. */
  readonly besideAtWorst: readonly Section[];
}

/** The slabs of a section, in order, beside the sections of the other casting. */
export function slabsOf(section: Section, others: readonly Section[]): Slab[] {
  const reaches = others.map((other) => ({ other, atWorst: reachAtWorst(section, other) }));
  const whole = section.depth ?? depthOfAll(others);
  if (whole === null) return [{ depth: null, beside: others, besideAtWorst: others }];
  const ends = reaches.flatMap(({ other, atWorst }) => [other.depth, atWorst].flatMap(endsOf));
  const within = ends.filter((mm) => mm > whole.fromMm && mm < whole.toMm);
  const breaks = distinctDepths([whole.fromMm, ...within, whole.toMm]);
  const slabs = breaks.slice(1).map((toMm, i): Slab => {
    const fromMm = breaks[i] as number;
    const middleMm = (fromMm + toMm) / 2;
    return {
      depth: { fromMm, toMm },
      beside: others.filter(({ depth }) => holds(depth, middleMm)),
      besideAtWorst: reaches.filter(({ atWorst }) => holds(atWorst, middleMm)).map(({ other }) => other),
    };
  });
  return joined(slabs);
}

/** Where the other may reach to, the errors of both depths at their worst; an end on the face has none. */
function reachAtWorst(section: Section, other: Section): DepthRange | null {
  const [of, to] = [stretchOf(other), stretchOf(section)];
  if (of.depth === null || of.whole === null) return null;
  const facing = to.depth ?? of.depth;
  const stretch = { ...of, depth: of.depth, whole: of.whole };
  return reachOf(stretch, { ...to, depth: facing, whole: facing }, { marginMm: 0, facesMate: false }, 'at-worst');
}

/** All depths at which anything stands: a section that reaches through every depth is compared there. */
function depthOfAll(sections: readonly Section[]): DepthRange | null {
  const depths = sections.map(({ depth }) => depth).filter((depth) => depth !== null);
  if (depths.length === 0) return null;
  return {
    fromMm: Math.min(...depths.map(({ fromMm }) => fromMm)),
    toMm: Math.max(...depths.map(({ toMm }) => toMm)),
  };
}

const endsOf = (depth: DepthRange | null): number[] => (depth === null ? [] : [depth.fromMm, depth.toMm]);

const holds = (depth: DepthRange | null, mm: number): boolean =>
  depth === null || (depth.fromMm < mm && mm < depth.toMm);

/** Neighbours beside which the same stands are one. */
function joined(slabs: readonly Slab[]): Slab[] {
  const merged: Slab[] = [];
  for (const slab of slabs) {
    const last = merged.at(-1);
    const same =
      last && isSame(last.beside, slab.beside) && isSame(last.besideAtWorst, slab.besideAtWorst) ? last.depth : null;
    if (same === null || slab.depth === null) merged.push(slab);
    else merged[merged.length - 1] = { ...slab, depth: { fromMm: same.fromMm, toMm: slab.depth.toMm } };
  }
  return merged;
}

const isSame = (a: readonly Section[], b: readonly Section[]): boolean =>
  a.length === b.length && a.every((section, i) => section === b[i]);

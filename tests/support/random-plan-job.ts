import { type Loop, moveLoop } from '../../src/geometry/plane/loop.ts';
import { apply, rigid } from '../../src/geometry/plane/rigid.ts';
import { polar, vec } from '../../src/geometry/plane/vec.ts';
import type { Hole } from '../../src/job/casting.ts';
import type { Cutter } from '../../src/job/job.ts';
import type { Joint } from '../../src/joint/joint.ts';
import { box, type CastingSpec, castingOf, disc, holeOf, outline, type PositionSpec, ringPiece } from './jobs.ts';
import { jointOf } from './joints.ts';
import type { Random } from './random.ts';

type SectionSpec = NonNullable<CastingSpec['sections']>[0];

/** What all features of a job are laid out by, mm. */
interface Plan {
  readonly clearanceMm: number;
  readonly marginMm: number;
  readonly minWallMm: number | null;
  /** How far the skirts and lips reach past the face. */
  readonly reachMm: number;
  readonly way: 'home' | 'straight' | 'turned';
}

/** Features of both parts about one place on the rim: x along the rim, y outward. */
interface Group {
  readonly fixed: SectionSpec[];
  readonly moving: SectionSpec[];
  readonly hollows: NonNullable<CastingSpec['hollows']>[0][];
  readonly doNotCut: NonNullable<CastingSpec['doNotCut']>[0][];
  readonly holes: Hole[];
}

/**
 * A block with a flange, ribs and bosses, some of them offered, and a housing whose skirt or lip passes so near to an
 * offered one that a little of it has to go; all about it what must not be cut: sections in front, behind, beside and
 * overlapping in plan, regions, holes and hollows, mostly out of the way. Most such jobs have a plan that holds.
 */
export function randomPlanJob(random: Random): Joint {
  const clearanceMm = random.between(0.5, 3);
  const cutter = cutterOf(random);
  const plan: Plan = {
    clearanceMm,
    marginMm: random.pick([0, random.between(0, 2), Math.min(2, clearanceMm)]),
    minWallMm: random.chance(0.4) ? random.between(2, 6) : null,
    reachMm: random.between(18, 45),
    way: random.pick(['home', 'straight', 'turned', 'turned']),
  };
  const start = random.between(-180, 180);
  const groups = Array.from({ length: random.chance(0.3) ? 2 : 1 }, (_, i) =>
    groupAt(random, plan, start + 120 * i, random.between(90, 130)),
  );
  const all = <Key extends keyof Group>(key: Key): Group[Key][number][] => groups.flatMap((group) => [...group[key]]);
  const numbered = <T extends { id?: string }>(list: readonly T[]): T[] =>
    list.map((one, i) => ({ ...one, id: `${one.id ?? 'feature'}-${i + 1}` }));
  return jointOf({
    cut: random.pick(['fixed', 'fixed', 'fixed', 'fixed', 'fixed', 'fixed', 'moving', 'moving', 'both'] as const),
    share: random.between(0, 1),
    clearance: random.chance(0.5)
      ? clearanceMm
      : { homeMm: clearanceMm, wayInMm: clearanceMm * random.between(0.3, 1) },
    depthMarginMm: plan.marginMm,
    minWallMm: plan.minWallMm,
    cutter,
    offerUp: wayIn(random, plan),
    fixed: castingOf({
      name: 'block',
      sections: numbered(all('fixed')),
      hollows: numbered(all('hollows')),
      doNotCut: numbered(all('doNotCut')),
      holes: numbered(all('holes')),
    }),
    moving: castingOf({ name: 'housing', sections: numbered(all('moving')) }),
  });
}

function cutterOf(random: Random): Cutter | null {
  if (random.chance(0.2)) return null;
  return {
    radiusMm: random.between(2, 8),
    nose: random.chance(0.65) ? 'ball' : 'flat',
    handErrorMm: random.pick([0, 0.5]),
    runOut: random.chance(0.85) ? 'cut-past' : 'leave',
    stepoverMm: null,
  };
}

function wayIn(random: Random, { way, reachMm, marginMm }: Plan): PositionSpec[] {
  if (way === 'home') return [];
  const far = reachMm + 30 + marginMm;
  if (way === 'straight') return [{ standOff: far }, {}];
  const turn = random.pick([-1, 1]) * random.between(1, 8);
  const near = random.between(3, 14);
  return [{ standOff: far, turn }, { standOff: near, turn }, { standOff: near }, {}];
}

function groupAt(random: Random, plan: Plan, deg: number, rimMm: number): Group {
  const rad = (deg * Math.PI) / 180;
  const place = rigid(rad - Math.PI / 2, polar(vec(0, 0), rimMm, rad));
  const carry = (loop: Loop): Loop => moveLoop(loop, place);
  const carried = <T extends { loops?: readonly Loop[] }>(list: readonly T[]): T[] =>
    list.map((one) => ({ ...one, loops: (one.loops ?? []).map(carry) }));
  const { fixed, moving, hollows, doNotCut, holes } = localGroup(random, plan, rimMm);
  return {
    fixed: carried(fixed),
    moving: carried(moving),
    hollows: carried(hollows),
    doNotCut: carried(doNotCut),
    holes: holes.map((hole) => ({ ...hole, at: apply(place, hole.at) })),
  };
}

/** A block of metal from `y0` out to `y1` over some width: straight, along the rim, or leaning. */
function blockOf(random: Random, round: boolean, rimMm: number, x0: number, x1: number, y0: number, y1: number): Loop {
  if (round) {
    const degAt = (x: number): number => 90 - (x / rimMm) * (180 / Math.PI);
    return ringPiece(rimMm + y0, rimMm + y1, degAt(x1), degAt(x0), [0, -rimMm]);
  }
  if (random.chance(0.6)) return box(x0, y0, x1, y1);
  const lean = random.between(0, 0.3) * (x1 - x0);
  return outline([x0, y0], [x1, y0], [x1 - lean, y1], [x0 + lean, y1]);
}

function localGroup(random: Random, plan: Plan, rimMm: number): Group {
  const { clearanceMm, reachMm } = plan;
  const round = random.chance(0.5);
  const block = (x0: number, x1: number, y0: number, y1: number): Loop => blockOf(random, round, rimMm, x0, x1, y0, y1);
  const overlapMm = random.between(-0.5, 3);
  // metal out to here is in nobody's way
  const safe =
    -Math.max(overlapMm, 0) - clearanceMm - random.between(0.3, 4) - (round ? 0 : plan.way === 'turned' ? 6 : 0);
  const rarely = (share: number, mm: number): number => (random.chance(share) ? mm : safe);
  const flange = random.between(5, 14);
  const lipOnly = random.chance(plan.way === 'home' ? 0.6 : 0.15);
  const lipFrom = lipOnly ? random.between(flange, reachMm - 6) : 0;
  const half = random.between(8, 28);
  const ribFrom = random.pick([0, flange, flange, flange, random.between(flange, reachMm - 4)]);
  const ribTo = Math.max(ribFrom + 8, reachMm + random.pick([-6, random.between(2, 30), random.between(8, 30)]));
  const offered =
    random.chance(0.15) && !round
      ? disc(0, -half, half)
      : block(-half, half, -25, random.pick([0, 0, random.between(-1, 0)]));
  const fixed: SectionSpec[] = [
    { id: 'flange', depth: [0, flange], loops: [block(-50, 50, -35, rarely(0.08, 0))], mayCut: false },
    { id: 'rib', depth: [ribFrom, ribTo], loops: [offered], mayCut: true },
  ];
  const other = random.whole(0, 4);
  for (let i = 0; i < other; i++) fixed.push(neighbour(random, block, { half, safe, ribFrom, ribTo, flange }));
  const skirtHalf = random.pick([half + 15, 60, random.between(0.4, 0.9) * half]);
  const thick = random.between(5, 14);
  const moving: SectionSpec[] = [
    { id: 'housing-flange', depth: [0, random.between(8, 14)], loops: [block(-50, 50, -30, 25)], mayCut: false },
    {
      id: lipOnly ? 'lip' : 'skirt',
      depth: [-reachMm, -lipFrom],
      loops: [block(-skirtHalf, skirtHalf, -overlapMm, thick - overlapMm)],
      mayCut: true,
    },
  ];
  if (random.chance(0.2)) {
    // one that passes by farther out, unoffered
    moving.push({
      id: 'wall',
      depth: [-reachMm * 0.8, 0],
      loops: [block(-60, 60, thick + 1, thick + 6)],
      mayCut: false,
    });
  }
  return { fixed, moving, ...guards(random, plan, safe, half, ribTo) };
}

interface Around {
  readonly half: number;
  readonly safe: number;
  readonly ribFrom: number;
  readonly ribTo: number;
  readonly flange: number;
}

/** A section behind, in front, beside or over the offered one. */
function neighbour(
  random: Random,
  block: (x0: number, x1: number, y0: number, y1: number) => Loop,
  { half, safe, ribFrom, ribTo, flange }: Around,
): SectionSpec {
  const mayCut = random.chance(0.3);
  const out = random.chance(mayCut ? 0.5 : 0.3) ? 0 : safe;
  const gap = random.pick([0, random.between(0, 8)]);
  switch (random.pick(['behind', 'front', 'beside', 'over'] as const)) {
    case 'behind':
      return {
        id: 'behind',
        mayCut,
        depth: [ribTo + gap / 2, ribTo + 20],
        loops: [block(-half, random.between(-4, 30), -25, out)],
      };
    case 'front':
      return {
        id: 'front',
        mayCut,
        depth: [Math.min(0, ribFrom - 4), Math.max(ribFrom - gap / 2, flange - 1)],
        loops: [block(-8, half, -28, out)],
      };
    case 'beside':
      return {
        id: 'beside',
        mayCut,
        depth: [flange, ribTo + 5],
        loops: [block(half + gap, half + gap + 12, -25, out)],
      };
    case 'over':
      return { id: 'over', mayCut, depth: [ribFrom + 3, ribTo - 2], loops: [block(-half / 2, half + 6, -30, out)] };
  }
}

function guards(
  random: Random,
  plan: Plan,
  safe: number,
  half: number,
  ribTo: number,
): Pick<Group, 'hollows' | 'doNotCut' | 'holes'> {
  const keep = (): number | null => (random.chance(0.5) ? random.between(2, 6) : null);
  const depth = (): [number, number] | null =>
    random.pick([null, [0, random.between(14, 28)], [ribTo - 10, ribTo + 10]]);
  // most keep well out of the cut's way
  const back = (mm: number): number => safe - mm - (random.chance(0.6) ? (plan.minWallMm ?? 0) + 8 : 0);
  const holes: Hole[] = [];
  const hollows: Group['hollows'] = [];
  const doNotCut: Group['doNotCut'] = [];
  const along = (): number => random.between(-1.2, 1.2) * half;
  if (random.chance(0.6)) {
    const kind = random.pick(['tapped', 'bolt', 'dowel', 'stud'] as const);
    const thread = kind === 'tapped' || kind === 'stud' ? random.pick(['M8x1.25', 'M10x1.5', 'M12x1.75']) : null;
    const diameterMm = thread === null ? random.between(8, 14) : null;
    const at: [number, number] = [along(), back(7)];
    holes.push(
      holeOf({
        id: kind,
        kind,
        at,
        thread,
        diameterMm,
        depth: depth(),
        keepWallMm: keep(),
        mayBreak: random.chance(0.15),
      }),
    );
  }
  if (random.chance(0.4)) {
    const y = back(4);
    const loops = [
      random.chance(0.5) ? disc(along(), y - 2, random.between(3, 6)) : box(-half / 2, y - 8, half, y + 3),
    ];
    hollows.push({ id: 'jacket', loops, depth: depth(), keepWallMm: keep(), traceErrorMm: 0.2 });
  }
  if (random.chance(0.3)) {
    const y = random.chance(0.9) ? safe - 0.5 : 0;
    doNotCut.push({ id: 'ear', loops: [box(-half / 3, y - 6, half / 2, y)], depth: depth() });
  }
  return { holes, hollows, doNotCut };
}

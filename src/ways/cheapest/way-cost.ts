import { numberOf, remembered } from '../../geometry/remembered.ts';
import type { DepthRange } from '../../job/casting.ts';
import { type TurnRange, widthRad } from '../turns.ts';
import type { Target, Tool } from './metal-model.ts';
import type { RingCover, Sector } from './ring-cover.ts';

/** A figure known to lie in a range: both ends the same where it is known. */
export interface Between {
  readonly from: number;
  readonly to: number;
}

/**
 * A way farther in all the time: turned by `turns[0]` it slides from where nothing meets to `standOffs[0]`, turns there to
 * `turns[1]`, and so on; at last to 0, and home. Radians and millimetres, or ranges of them.
 */
export interface WayBox {
  readonly turns: readonly Between[];
  readonly standOffs: readonly Between[];
}

/** Metal that goes whatever is chosen within the ranges: all turns from `from` to `to`, or where `to` is less, what lies in the way at each of them. */
interface Sweep {
  readonly from: number;
  readonly to: number;
  /** Stand-offs from the nearest to the farthest. */
  readonly inMm: number;
  readonly outMm: number;
  readonly atHome: boolean;
}

/** Sections that are not offered weigh as much more, so that a way that spares them comes first. */
const notOfferedWeighs = 1e3;

/** Nobody holds a turn finer, radians. */
export const finestRad = (0.1 * Math.PI) / 180;

const weightOf = ({ mayCut }: Target): number => (mayCut ? 1 : notOfferedWeighs);

const circleRad = 2 * Math.PI;

/**
 * The metal that a way must take off for the clearance alone, mm³; of a box of ways what each of them must, at the least.
 * `middle` is as good as its rings are fine; `surely` is never too much.
 *
 * A turn about the axis leaves every point on its ring, so on each ring what is swept is what stands there, widened by the
 * turn: ranges of one number.
 */
export const metalMm3 = (targets: readonly Target[], box: WayBox, told: keyof RingCover, weighing = false): number => {
  const sweeps = sweepsOf(box);
  return targets.reduce((sum, target) => {
    return sum + (weighing ? weightOf(target) : 1) * targetMm3(target, sweeps, told);
  }, 0);
};

function sweepsOf({ turns, standOffs }: WayBox): Sweep[] {
  const sweeps: Sweep[] = [];
  const home: Between = { from: 0, to: 0 };
  let outMm = Number.POSITIVE_INFINITY;
  for (const [i, at] of standOffs.entries()) {
    const [turn, next] = [turns[i] as Between, turns[i + 1] ?? home];
    sweeps.push({ from: turn.to, to: turn.from, inMm: at.to, outMm, atHome: false });
    const [from, to] = [Math.min(turn.to, next.to), Math.max(turn.from, next.from)];
    sweeps.push({ from, to, inMm: at.to, outMm: at.from, atHome: false });
    outMm = at.from;
  }
  sweeps.push({ from: 0, to: 0, inMm: 0, outMm, atHome: false }, { from: 0, to: 0, inMm: 0, outMm: 0, atHome: true });
  return sweeps;
}

/** What goes through some depth of a section: a tool, widened by its turns. */
interface Pass {
  readonly tool: Tool;
  readonly from: number;
  readonly to: number;
  readonly depth: DepthRange;
}

function targetMm3(target: Target, sweeps: readonly Sweep[], told: keyof RingCover): number {
  const passes = sweeps.flatMap((sweep) =>
    (sweep.atHome ? target.homeTools : target.tools).flatMap((tool) => passOf(target, tool, sweep)),
  );
  const areas = new Map<string, number>();
  return overDepths(passes, (active) => {
    const key = active.map((pass) => passes.indexOf(pass)).join();
    const mm2 = areas.get(key) ?? sweptMm2(target, active, told);
    areas.set(key, mm2);
    return mm2;
  });
}

/** Volume of what is taken over all depths, told by what goes through each of them. */
function overDepths<P extends Pick<Pass, 'depth'>>(
  passes: readonly P[],
  mm2Of: (active: readonly P[]) => number,
): number {
  const breaks = [...new Set(passes.flatMap(({ depth }) => [depth.fromMm, depth.toMm]))].sort((a, b) => a - b);
  let mm3 = 0;
  for (const [i, toMm] of breaks.slice(1).entries()) {
    const fromMm = breaks[i] as number;
    const active = passes.filter(({ depth }) => depth.fromMm <= fromMm && toMm <= depth.toMm);
    mm3 += mm2Of(active) * (toMm - fromMm);
  }
  return mm3;
}

/**
 * What any way inward takes off, weighed, however often it turns: a section that comes in passes each depth there is
 * between outside and its place at home, at one turn or another, and takes no less there than at the turn at which it
 * takes least. Of several that pass a depth the one that takes most counts.
 */
export function passingMm3(targets: readonly Target[], asked: TurnRange): number {
  const inward: Sweep = { from: 0, to: 0, inMm: 0, outMm: Number.POSITIVE_INFINITY, atHome: false };
  return targets.reduce((sum, target) => {
    const passes = target.tools.flatMap((tool) =>
      passOf(target, tool, inward).map(({ depth }) => ({ depth, mm2: leastPassingMm2(target, tool, asked) })),
    );
    const mm3 = overDepths(passes, (active) => Math.max(0, ...active.map(({ mm2 }) => mm2)));
    return sum + weightOf(target) * mm3;
  }, 0);
}

/** Ranges of turns looked into for the least that one section takes of another; decides on the bound alone. */
const mostTurnsLooked = 400;

/** No more than one section takes of another at any one turn of those asked about, mm². */
function leastPassingMm2(target: Target, tool: Tool, asked: TurnRange): number {
  // what lies in the way at each turn of a range
  const boundOf = (range: TurnRange) => {
    const sweep: Sweep = {
      from: range.toRad,
      to: range.fromRad,
      inMm: 0,
      outMm: Number.POSITIVE_INFINITY,
      atHome: false,
    };
    return { range, mm2: sweptMm2(target, passOf(target, tool, sweep), 'surely') };
  };
  let open = [boundOf(asked)];
  for (let looks = 0; looks < mostTurnsLooked; looks++) {
    const [least, ...others] = open.toSorted((a, b) => a.mm2 - b.mm2);
    if (least === undefined || widthRad(least.range) <= finestRad) break;
    const { fromRad, toRad } = least.range;
    const middleRad = (fromRad + toRad) / 2;
    open = [boundOf({ fromRad, toRad: middleRad }), boundOf({ fromRad: middleRad, toRad }), ...others];
  }
  return Math.min(...open.map(({ mm2 }) => mm2));
}

function passOf({ depth, sense }: Target, tool: Tool, { from, to, inMm, outMm }: Sweep): Pass[] {
  const fromMm = Math.max(depth.fromMm, -outMm - tool.depth.toMm);
  const toMm = Math.min(depth.toMm, -inMm - tool.depth.fromMm);
  if (!(toMm > fromMm)) return [];
  const turned = sense === 1 ? { from, to } : { from: 0 - to, to: 0 - from };
  return [{ tool, ...turned, depth: { fromMm, toMm } }];
}

const known = remembered<number>(4096);

/** Most ways have most of their sweeps in common with one before. */
function sweptMm2(target: Target, passes: readonly Pass[], told: keyof RingCover): number {
  if (passes.length === 0) return 0;
  const key = passes.map(({ tool, from, to }) => `${numberOf(tool.cover)} ${from} ${to}`).join();
  return known(target, `${told} ${key}`, () => measuredMm2(target, passes, told));
}

/** Sectors of one ring, from and to in turn; made once, since this is what a search spends its time on. */
let swept = new Float64Array(64);

function measuredMm2({ cover, ringMm2 }: Target, passes: readonly Pass[], told: keyof RingCover): number {
  const own = cover[told];
  let mm2 = 0;
  for (let k = 0; k < ringMm2.length; k++) {
    const sectors = own[k] as readonly Sector[];
    if (sectors.length === 0) continue;
    let count = 0;
    for (const { tool, from, to } of passes) {
      for (const [a, b] of tool.cover[told][k] as readonly Sector[]) {
        if (a + from >= b + to) continue;
        if (count + 2 > swept.length) swept = widened(swept);
        swept[count++] = a + from;
        swept[count++] = b + to;
      }
    }
    if (count === 0) continue;
    for (const [from, to] of sectors) mm2 += (ringMm2[k] as number) * sharedRad(from, to, count);
  }
  return mm2;
}

function widened(array: Float64Array): typeof swept {
  const wider = new Float64Array(2 * array.length);
  wider.set(array);
  return wider;
}

let inside = new Float64Array(64);

/** How much of a sector what is swept covers, radians. */
function sharedRad(from: number, to: number, count: number): number {
  let found = 0;
  for (let i = 0; i < count; i += 2) {
    const [a, b] = [swept[i] as number, swept[i + 1] as number];
    for (let n = Math.ceil((from - b) / circleRad); a + n * circleRad < to; n++) {
      if (found + 2 > inside.length) inside = widened(inside);
      insert(Math.max(from, a + n * circleRad), Math.min(to, b + n * circleRad), found);
      found += 2;
    }
  }
  let sum = 0;
  let until = from;
  for (let i = 0; i < found; i += 2) {
    const [a, b] = [inside[i] as number, inside[i + 1] as number];
    if (b > until) sum += b - Math.max(a, until);
    until = Math.max(until, b);
  }
  return sum;
}

/** Keeps what is inside in order: there are few, nearly in order. */
function insert(a: number, b: number, found: number): void {
  let i = found;
  for (; i > 0 && (inside[i - 2] as number) > a; i -= 2) {
    inside[i] = inside[i - 2] as number;
    inside[i + 1] = inside[i - 1] as number;
  }
  inside[i] = a;
  inside[i + 1] = b;
}

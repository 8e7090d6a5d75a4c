import type { Progress } from '../../geometry/progress.ts';
import type { TurnRange } from '../turns.ts';
import { plainWay, type WayPoint } from '../way-along.ts';
import type { Target } from './metal-model.ts';
import { type Between, finestRad, metalMm3, type WayBox } from './way-cost.ts';

/** Ways of so many turns: how far it is turned before each of them, and at which of the stand-offs they are made. */
interface Box {
  readonly turns: readonly Between[];
  /** Which of the stand-offs, counted from home outwards. */
  readonly at: readonly Between[];
}

interface BoundedBox extends Box {
  /** No way of these weighs less. */
  readonly least: number;
}

export interface LeastMetal {
  readonly way: readonly WayPoint[];
  /** What the clearance alone takes, as good as the rings are fine. */
  readonly mm3: number;
  /** How it was weighed: more where sections are not offered. */
  readonly weight: number;
}

/** What a search ended with. No way of as many turns weighs less than `boundMm3`: none that spares what is not offered takes off less. */
export interface LeastFound {
  readonly best: LeastMetal;
  readonly boundMm3: number;
}

/** Ranges of ways looked into before what has been found must do; decides on the bound and on time. */
const mostLooks = 1000;
/** A range of ways that cannot save as much is not looked into: rings tell no finer. */
const worthLooking = 0.95;

const steps = [2, 0.5, 0.1].map((deg) => (deg * Math.PI) / 180);

/** A plain figure is worth as much more metal. */
const rounds = 1e-3;
const plainSteps = [0.1, 0.5, 1].map((deg) => (deg * Math.PI) / 180);

/**
 * The way of so many turns that takes off the least metal for the clearance alone, by branch and bound over ranges of
 * turns and stand-offs: all ways of a range take off what lies in the way of every one of them.
 */
export function* leastMetal(
  targets: readonly Target[],
  asked: TurnRange,
  standOffsMm: readonly number[],
  count: number,
  farMm: number,
): Generator<Progress, LeastFound> {
  const mmAt = ({ from, to }: Between): Between => ({
    from: standOffsMm[from] as number,
    to: standOffsMm[to] as number,
  });
  const wayBox = ({ turns, at }: Box): WayBox => ({ turns, standOffs: at.map(mmAt) });
  const weigh = (box: Box): number => metalMm3(targets, wayBox(box), 'middle', true);
  const boundOf = (box: Box): BoundedBox => ({ ...box, least: metalMm3(targets, wayBox(box), 'surely', true) });
  const last = standOffsMm.length - 1;
  const whole: Box = {
    turns: Array.from({ length: count }, () => ({ from: asked.fromRad, to: asked.toRad })),
    at: Array.from({ length: count }, () => ({ from: 0, to: last })),
  };

  let best: Box = middleOf(whole);
  let weight = weigh(best);
  const consider = (box: Box, factor = 1): boolean => {
    const other = weigh(box);
    if (other >= factor * weight) return false;
    [best, weight] = [box, other];
    return true;
  };
  const polish = (): void => {
    for (const step of steps)
      for (let better = true; better; ) better = neighbours(best, step, asked, last).some((box) => consider(box));
  };

  polish();
  const open: BoundedBox[] = [boundOf(whole)];
  let boundMm3 = Number.POSITIVE_INFINITY;
  for (let look = 0; look < mostLooks && open.length > 0; look++) {
    yield { step: `ways of ${count} ${count === 1 ? 'turn' : 'turns'}`, done: look, of: mostLooks };
    const box = takeLeast(open);
    const parts = box.least >= worthLooking * weight ? [] : telling(partings(box).map((halves) => halves.map(boundOf)));
    if (parts.length === 0) boundMm3 = Math.min(boundMm3, box.least);
    for (const part of parts) {
      if (consider(middleOf(part))) polish();
      open.push(part);
    }
  }
  for (const box of open) boundMm3 = Math.min(boundMm3, box.least);
  for (const step of plainSteps) consider(rounded(best, step, asked), 1 + rounds);
  const way = wayOf(wayBox(best), farMm);
  return { best: { way, mm3: metalMm3(targets, wayBox(best), 'middle'), weight }, boundMm3 };
}

function takeLeast(open: BoundedBox[]): BoundedBox {
  const least = open.reduce((at, box, i) => (box.least < (open[at] as BoundedBox).least ? i : at), 0);
  return open.splice(least, 1)[0] as BoundedBox;
}

const middleOf = ({ turns, at }: Box): Box => ({
  turns: turns.map(({ from, to }) => single((from + to) / 2)),
  at: at.map(({ from, to }) => single(Math.floor((from + to) / 2))),
});

const single = (value: number): Between => ({ from: value, to: value });

/** Of the ways to part a box the one that tells most: nothing where it is as small as counts. */
function telling(partings: readonly (readonly BoundedBox[])[]): readonly BoundedBox[] {
  const least = (boxes: readonly BoundedBox[]): number => Math.min(...boxes.map((box) => box.least));
  const sum = (boxes: readonly BoundedBox[]): number => boxes.reduce((all, box) => all + box.least, 0) / boxes.length;
  return partings.reduce<readonly BoundedBox[]>(
    (best, boxes) =>
      best.length === 0 || least(boxes) > least(best) || (least(boxes) === least(best) && sum(boxes) > sum(best))
        ? boxes
        : best,
    [],
  );
}

/** A box halved along each of its ranges that is not as small as counts. */
function partings({ turns, at }: Box): Box[][] {
  const byTurn = turns.flatMap(({ from, to }, i): Box[][] => {
    const middle = (from + to) / 2;
    if (to - from <= finestRad) return [];
    return [
      [
        { from, to: middle },
        { from: middle, to },
      ].map((half) => ({ turns: turns.with(i, half), at })),
    ];
  });
  const byStandOff = at.flatMap(({ from, to }, i): Box[][] => {
    const middle = Math.floor((from + to) / 2);
    if (from === to) return [];
    return [
      [
        { from, to: middle },
        { from: middle + 1, to },
      ].flatMap((half) => inward({ turns, at: at.with(i, half) })),
    ];
  });
  return [...byTurn, ...byStandOff].filter((boxes) => boxes.length > 0);
}

/** A box without the ways that would go out again; nothing where all would. */
function inward({ turns, at }: Box): Box[] {
  const limited = [...at];
  for (let i = 1; i < limited.length; i++) {
    const [before, own] = [limited[i - 1] as Between, limited[i] as Between];
    limited[i] = { from: own.from, to: Math.min(own.to, before.to) };
  }
  for (let i = limited.length - 2; i >= 0; i--) {
    const [own, after] = [limited[i] as Between, limited[i + 1] as Between];
    limited[i] = { from: Math.max(own.from, after.from), to: own.to };
  }
  return limited.every(({ from, to }) => from <= to) ? [{ turns, at: limited }] : [];
}

function neighbours({ turns, at }: Box, stepRad: number, asked: TurnRange, last: number): Box[] {
  const turned = turns.flatMap(({ from }, i) =>
    [from - stepRad, from + stepRad]
      .filter((turnRad) => turnRad >= asked.fromRad && turnRad <= asked.toRad)
      .map((turnRad): Box => ({ turns: turns.with(i, single(turnRad)), at })),
  );
  const moved = at.flatMap(({ from }, i) =>
    [from - 1, from + 1]
      .filter((k) => k >= (at[i + 1]?.from ?? 0) && k <= (at[i - 1]?.from ?? last))
      .map((k): Box => ({ turns, at: at.with(i, single(k)) })),
  );
  return [...turned, ...moved];
}

const rounded = ({ turns, at }: Box, stepRad: number, { fromRad, toRad }: TurnRange): Box => ({
  turns: turns.map(({ from }) => single(Math.max(fromRad, Math.min(toRad, Math.round(from / stepRad) * stepRad)))),
  at,
});

/** A way of no ranges as its positions, without those that change nothing. */
function wayOf({ turns, standOffs }: WayBox, farMm: number): WayPoint[] {
  const way: WayPoint[] = [{ turnRad: turns[0]?.from ?? 0, standOffMm: farMm }];
  for (const [i, { from: standOffMm }] of standOffs.entries()) {
    const [before, after] = [turns[i]?.from ?? 0, turns[i + 1]?.from ?? 0];
    way.push({ turnRad: before, standOffMm }, { turnRad: after, standOffMm });
  }
  return plainWay([...way, { turnRad: 0, standOffMm: 0 }]);
}

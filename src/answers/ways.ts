import { round6, roundUp6 } from '../geometry/plane/rounding.ts';
import type { Units } from '../job/lengths.ts';
import type { Position } from '../job/path.ts';
import type { Joint } from '../joint/joint.ts';
import type { WayCut } from '../ways/cheapest/cheapest-ways.ts';
import type { Lifts, WaysResult } from '../ways/find-ways.ts';
import type { TurnRange } from '../ways/turns.ts';
import type { WayPoint } from '../ways/way-along.ts';
import { againstTexts } from '../words/hindrance-text.ts';
import { strayedAnswer, wanderAnswer } from './check.ts';
import { roundDegrees, roundOrNull } from './rounded.ts';
import type { WaysAnswer } from './ways-answer.ts';

/** Every way in as JSON, the answer of `fettle ways --json`: mm and degrees, rounded to 1e-6. */
export function waysAnswer(joint: Joint, ways: WaysResult): WaysAnswer {
  const { widest, check, cheapest, asked } = ways;
  return {
    format: 'fettle-ways/1',
    title: joint.fit.title,
    reason: ways.reason,
    turnFrom: roundDegrees(asked.fromRad),
    turnTo: roundDegrees(asked.toRad),
    askedMm: ways.askedMm,
    exists: ways.exists,
    widest: widest && {
      clearanceMm: roundOrNull(widest.clearanceMm),
      boundMm: roundUp6(widest.boundMm),
      worstClearanceMm: roundOrNull(check?.wayIn?.worstClearanceMm ?? null),
      verdict: check?.verdict ?? 'undecided',
      way: wayAnswer(widest.way),
      forgives: ways.forgives && wanderAnswer(ways.forgives.each),
      astray: check?.wander ? strayedAnswer(check.wander) : null,
    },
    corridors: ways.corridors.map(({ clearanceMm, boundMm, way, windows }) => ({
      clearanceMm: roundOrNull(clearanceMm),
      boundMm: roundUp6(boundMm),
      way: wayAnswer(way),
      windows: windows.map(({ fromMm, toMm, turns }) => ({
        fromMm: round6(fromMm),
        toMm: round6(toMm),
        turnFrom: roundDegrees(turns.fromRad),
        turnTo: roundDegrees(turns.toRad),
      })),
    })),
    cheapest: (cheapest?.ways ?? []).map(({ of, also, way, ...cut }) => ({
      of,
      also: [...also],
      way: wayAnswer(way),
      ...cutAnswer(cut, joint.fit.units),
    })),
    aside: ways.lifts && asideAnswer(joint, ways.lifts),
    lowerBoundMm3: roundOrNull(cheapest?.lowerBoundMm3 ?? null),
    strips: ways.strips.map(({ strip: { fromMm, toMm, onDowels }, free, near, foul, unknown }) => ({
      fromMm: round6(fromMm),
      toMm: round6(toMm),
      onDowels,
      free: turnsAnswer(free),
      near: turnsAnswer(near),
      foul: turnsAnswer(foul),
      unknown: turnsAnswer(unknown),
    })),
  };
}

const asideAnswer = (joint: Joint, { lift, shifts, way, cut }: Lifts): NonNullable<WaysAnswer['aside']> => ({
  mostMm: round6(lift.mostMm),
  stepMm: round6(lift.stepMm),
  shifts,
  way: way && placedAnswer(way.positions),
  clearanceMm: roundOrNull(way?.check.wayIn?.clearanceMm ?? null),
  worstClearanceMm: roundOrNull(way?.check.wayIn?.worstClearanceMm ?? null),
  verdict: way?.check.verdict ?? null,
  cut: cut && { way: placedAnswer(cut.positions), ...cutAnswer(cut, joint.fit.units) },
});

const cutAnswer = ({ holds, volumeMm3, massG, leastWallMm, against }: WayCut, units: Units) => ({
  holds,
  volumeMm3: roundOrNull(volumeMm3),
  massG: roundOrNull(massG),
  leastWallMm: roundOrNull(leastWallMm),
  against: againstTexts(against, units),
});

const placedAnswer = (positions: readonly Position[]) =>
  positions.map(({ turnRad, standOffMm, shift }) => ({
    turn: roundDegrees(turnRad),
    standOff: round6(standOffMm),
    shift: [round6(shift.x), round6(shift.y)] as [number, number],
  }));

const wayAnswer = (way: readonly WayPoint[]): { turn: number; standOff: number }[] =>
  way.map(({ turnRad, standOffMm }) => ({ turn: roundDegrees(turnRad), standOff: round6(standOffMm) }));

const turnsAnswer = (turns: readonly TurnRange[]): [number, number][] =>
  turns.map(({ fromRad, toRad }) => [roundDegrees(fromRad), roundDegrees(toRad)]);

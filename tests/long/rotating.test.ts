import { describe, expect, test } from 'vitest';
import { checkJoint } from '../../src/clearance/check.ts';
import type { RotatingResult } from '../../src/clearance/check-result.ts';
import { moveRegion, type Region } from '../../src/geometry/plane/loop.ts';
import { rigid } from '../../src/geometry/plane/rigid.ts';
import { polar, vec } from '../../src/geometry/plane/vec.ts';
import { drain } from '../../src/geometry/progress.ts';
import { castingOf } from '../support/jobs.ts';
import { jointOf } from '../support/joints.ts';
import { placeSolid, solidDistance, solidOf } from '../support/oracles/solid.ts';
import { Random } from '../support/random.ts';
import { randomRegion } from '../support/random-outlines.ts';

// Reference: the rotor turned by whole steps before the housing at many places of its way, edge by edge.
const jobs = 80;
const firstSeed = 7_000_000;
const rotorSteps = 240;
const places = 13;
const origin = vec(0, 0);

interface Turning {
  readonly rotor: Region;
  readonly housing: Region;
  readonly turnDeg: number;
}

function randomTurning(random: Random): Turning {
  const rotor = moveRegion(randomRegion(random, random.between(20, 60)), rigid(0, vec(random.between(-30, 30), 0)));
  const away = polar(origin, random.between(70, 190), random.between(-3, 3));
  const housing = moveRegion(randomRegion(random, random.between(15, 60)), rigid(0, away));
  return { rotor, housing, turnDeg: random.pick([-40, 15, 22, 90]) };
}

function answered({ rotor, housing, turnDeg }: Turning): RotatingResult {
  const exact = { traceErrorMm: 0, depthErrorMm: 0 };
  const joint = jointOf({
    moving: castingOf({ name: 'housing', sections: [{ depth: [0, 40], loops: housing, ...exact }] }),
    rotating: [castingOf({ name: 'rotor', sections: [{ depth: [-40, -10], loops: rotor, ...exact }] })],
    offerUp: [{ standOff: 5, turn: turnDeg }, { standOff: 5 }, {}],
  });
  const { rotating } = drain(checkJoint(joint));
  const found = rotating.find(({ against }) => against === 'moving');
  if (found === undefined) throw new Error('no answer for the rotor');
  return found;
}

/** The least distance over all the steps, mm: never less than the true one. */
function leastStepped({ rotor, housing, turnDeg }: Turning): number {
  const solid = solidOf(housing);
  const turned = Array.from({ length: rotorSteps }, (_, i) =>
    placeSolid(solidOf(rotor), rigid((i * 2 * Math.PI) / rotorSteps, origin)),
  );
  let least = Number.POSITIVE_INFINITY;
  for (let k = 0; k < places; k += 1) {
    const placed = placeSolid(solid, rigid((((turnDeg * k) / (places - 1)) * Math.PI) / 180, origin));
    for (const one of turned) least = Math.min(least, solidDistance(placed, one));
  }
  return least;
}

/** No point of the rotor goes farther between two steps, mm: none lies more than 90 + 60 from the axis. */
const stepMm = (150 * Math.PI) / rotorSteps;

describe(`a part that turns with the crank, in ${jobs} random jobs`, () => {
  const seen = Array.from({ length: jobs }, (_, i) => {
    const turning = randomTurning(new Random(firstSeed + i));
    return { seed: firstSeed + i, answer: answered(turning), leastMm: leastStepped(turning) };
  });

  test('is never said to be farther off than some step has it', () => {
    const wrong = seen.filter(({ answer, leastMm }) => (answer.clearanceMm ?? 0) > leastMm + answer.toleranceMm);
    expect(wrong).toEqual([]);
  });

  test('is never said to be clear where some step fouls', () => {
    expect(seen.filter(({ answer, leastMm }) => answer.state === 'clear' && leastMm === 0)).toEqual([]);
  });

  test('is no nearer than the steps have it, but for what they go over', () => {
    expect(seen.filter(({ answer, leastMm }) => leastMm - (answer.clearanceMm ?? 0) > stepMm)).toEqual([]);
  });

  test('is clear in some and fouls in some', () => {
    const states = new Set(seen.map(({ answer }) => answer.state));
    expect([...states].sort()).toEqual(expect.arrayContaining(['clear', 'fouls']));
  });
});

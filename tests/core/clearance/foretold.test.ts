import { describe, expect, it } from 'vitest';
import { firstTouch } from '../../../src/clearance/first-touch.ts';
import { foretold } from '../../../src/clearance/foretold.ts';
import { Random } from '../../support/random.ts';
import { TrueCastings } from '../../support/simulated-trial.ts';
import { trialFiles, trialJoint } from '../../support/trial-job.ts';

const joint = trialJoint();
const asDrawn = { shift: { x: 0, y: 0 }, turnRad: 0, offsetMm: () => 0, wanderMm: 0 };

/** Five outlines of nine corners a part at random depths, and a way in that turns and slides past them. */
function randomJoint(random: Random) {
  const outline = (): number[][] => {
    const [radius, way, wide] = [random.between(130, 170), random.between(0, 2 * Math.PI), random.between(4, 10)];
    return Array.from({ length: 9 }, (_, k) => {
      const [turn, out] = [(2 * Math.PI * k) / 9, wide * random.between(0.5, 1)];
      return [radius * Math.cos(way) + out * Math.cos(turn), radius * Math.sin(way) + out * Math.sin(turn)];
    });
  };
  const sections = (isProud: boolean): object[] =>
    Array.from({ length: 5 }, (_, k) => {
      const [from, long] = [random.between(5, 40), random.between(10, 40)];
      return { id: `s${k}`, depth: isProud ? [-from - long, -from] : [from, from + long], loops: [outline()] };
    });
  const turn = random.between(5, 30);
  const offerUp = [{ standOff: 90, turn }, { standOff: random.between(9, 30), turn }, { standOff: 9 }, { standOff: 0 }];
  return trialJoint({
    'pump.fit.json': { ...trialFiles['pump.fit.json'], depthMargin: 0, nothingShares: true, offerUp },
    'block.part.json': { ...trialFiles['block.part.json'], sections: sections(false) },
    'pump.part.json': { ...trialFiles['pump.part.json'], sections: sections(true) },
  });
}

describe('where castings are foretold to stop', () => {
  it('is where corners and sides first meet, on the sections they are of, with the dowel as far from its hole', () => {
    const { stop } = foretold(joint);
    const turnRad = new TrueCastings(joint, asDrawn).stopTurnRad() ?? Number.NaN;
    expect(stop).toMatchObject({ leg: 2, fixedSection: 'boss', movingSection: 'lip at the boss', standOffMm: 14 });
    expect(stop?.turnRad).toBeCloseTo(turnRad, 5);
    // a chord of the circle that the hole goes round: 2 r sin(θ/2)
    expect(stop?.dowelGaps[0]?.gapMm).toBeCloseTo(240 * Math.sin(turnRad / 2), 3);
    expect(stop?.depth).toEqual({ fromMm: 10, toMm: 36 });
  });

  it('is where the check has them meet first, and no sooner or later than with larger or smaller metal, at random', () => {
    const random = new Random(99);
    const along = (stop: { readonly leg: number; readonly at: number } | null): number =>
      stop === null ? Number.POSITIVE_INFINITY : stop.leg + stop.at;
    let stops = 0;
    for (let run = 0; run < 200; run++) {
      const joint = randomJoint(random);
      const { stop, earliest, latest, unknown } = foretold(joint);
      if (unknown !== null) continue;
      const met = along(firstTouch(joint));
      if (stop !== null) stops++;
      // halvings of a leg end within a millionth of it
      if (met !== along(stop)) expect(Math.abs(met - along(stop)), `run ${run}`).toBeLessThan(1e-5);
      expect(along(earliest)).toBeLessThanOrEqual(along(stop) + 1e-5);
      expect(along(latest)).toBeGreaterThanOrEqual(along(stop) - 1e-5);
    }
    expect(stops).toBeGreaterThan(50);
  });

  it('lies between where larger and smaller metal would stop', () => {
    const { stop, earliest, latest } = foretold(joint);
    const errorMm = Math.hypot(0.5, 0.5);
    const stopOf = (offsetMm: number): number =>
      new TrueCastings(joint, { ...asDrawn, offsetMm: (part) => (part === 'moving' ? offsetMm : 0) }).stopTurnRad() ??
      Number.NaN;
    expect(earliest?.turnRad ?? 0).toBeGreaterThan(stop?.turnRad ?? 0);
    expect(latest?.turnRad ?? 0).toBeLessThan(stop?.turnRad ?? 0);
    // sides that meet flat are as much sooner as metal is larger; a corner that is rounded meets no sooner than a sharp one
    expect(stopOf(errorMm)).toBeGreaterThanOrEqual((earliest?.turnRad ?? 0) - 1e-4);
    expect(stopOf(-errorMm)).toBeCloseTo(latest?.turnRad ?? 0, 4);
  });

  it('is not told where only home was asked, nor of drawings that do not register', () => {
    const fit = trialFiles['pump.fit.json'] as { dowels: unknown };
    const { offerUp: _way, ...homeOnly } = fit as Record<string, unknown>;
    expect(foretold(trialJoint({ ...trialFiles, 'pump.fit.json': homeOnly })).unknown).toBe('no-way-in');
    const pump = trialFiles['pump.part.json'] as { holes: readonly { id: string }[] };
    const apart = pump.holes.map((hole) => (hole.id === 'P2' ? { ...hole, at: [135, 0] } : hole));
    const misread = trialJoint({ ...trialFiles, 'pump.part.json': { ...pump, holes: apart } });
    expect(foretold(misread).unknown).toBe('not-judged');
  });

  it('says so where it passes metal that nobody has traced', () => {
    const block = trialFiles['block.part.json'] as object;
    const traced = { depth: [0, 60], loops: [{ circle: [0, 0], radius: 155 }] };
    const { untraced, unknown } = foretold(trialJoint({ ...trialFiles, 'block.part.json': { ...block, traced } }));
    expect({ untraced, unknown }).toEqual({ untraced: true, unknown: null });
  });

  it('is nowhere where nothing meets', () => {
    const pump = trialFiles['pump.part.json'] as { sections: readonly { id: string }[] };
    const clear = trialJoint({
      ...trialFiles,
      'pump.part.json': { ...pump, sections: pump.sections.filter(({ id }) => id === 'lip 2') },
    });
    expect(foretold(clear)).toEqual({ unknown: null, untraced: false, stop: null, earliest: null, latest: null });
  });
});

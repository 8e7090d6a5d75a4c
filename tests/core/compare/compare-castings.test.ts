import { describe, expect, it } from 'vitest';
import { type CompareResult, compareCastings } from '../../../src/compare/compare-castings.ts';
import { layTogether, type NamePair } from '../../../src/compare/lay-together.ts';
import { rigid } from '../../../src/geometry/plane/rigid.ts';
import { vec } from '../../../src/geometry/plane/vec.ts';
import { drain } from '../../../src/geometry/progress.ts';
import type { Casting } from '../../../src/job/casting.ts';
import type { Joint } from '../../../src/joint/joint.ts';
import { carried, moveCasting } from '../../../src/joint/move-casting.ts';
import { compareText } from '../../../src/words/compare-text.ts';
import { demoToDraw } from '../../support/demos.ts';
import { box, type CastingSpec, castingOf, disc, dowel } from '../../support/jobs.ts';

const holes = [dowel('D1', [-100, 0]), dowel('D2', [100, 0])];
const part = (name: string, ...sections: NonNullable<CastingSpec['sections']>): Casting =>
  castingOf({ name, holes, sections });

/** A rib of 40 by 8, from 12 to 90 deep. */
const rib = (loops = [box(0, 0, 40, 8)], depth: readonly [number, number] = [12, 90]) => ({ id: 'rib', depth, loops });
const known = part('Known', rib());
const iron = { name: 'grey iron', densityGPerCm3: 7.15 };

function laid(a: Casting, b: Casting, named: readonly NamePair[] | null = null): Joint {
  const joint = layTogether(a, b, named);
  if (!joint.ok) throw new Error(JSON.stringify(joint.findings));
  return joint.value;
}
const compared = (a: Casting, b: Casting): CompareResult => drain(compareCastings(laid(a, b)));

describe('two castings of one face', () => {
  it('that are one have nothing beyond one another, and agree', () => {
    expect(compared(known, part('Same', rib()))).toEqual({
      refusal: null,
      settled: true,
      beyond: [],
      within: [],
      groundBack: null,
      agreement: { mostMm: 0, largestMm: 0, at: expect.anything(), depth: { fromMm: 12, toMm: 90 } },
    });
  });

  it('with arcs, holes and a boss are the same as themselves: the demo’s', () => {
    const { fixed, moving } = demoToDraw('transfer-case').joint;
    for (const casting of [fixed, moving]) {
      const { beyond, within, agreement } = compared(casting, casting);
      expect({ beyond, within }).toEqual({ beyond: [], within: [] });
      expect(agreement?.largestMm).toBeLessThan(1e-6);
    }
  });

  // closed forms: 2 mm of 8 by 78 is 1248 mm³; of grey iron, 7.15 g/cm³, 8.92 g
  it('tells what grinding the second back to the first takes, and how far the errors may leave it beyond', () => {
    const grown = compared(
      known,
      castingOf({ name: 'Grown', holes, sections: [rib([box(0, 0, 42, 8)])], material: iron }),
    );
    expect(grown.groundBack).toMatchObject({ remainsMm: 1, notOffered: ['rib'], complete: true });
    expect(grown.groundBack?.volumeMm3).toBeCloseTo(1248, 0);
    expect(grown.groundBack?.massG).toBeCloseTo(8.92, 2);
  });

  it('grinds back what stands over by less than the errors too, as it is traced', () => {
    const { beyond, groundBack } = compared(
      known,
      part('A little more', { ...rib([box(0, 0, 40.6, 8)]), mayCut: true }),
    );
    expect(beyond).toEqual([]);
    expect(groundBack).toMatchObject({ massG: null, notOffered: [] });
    expect(groundBack?.volumeMm3).toBeCloseTo(0.6 * 8 * 78, 0);
  });

  it('says of what is ground back that nobody traced the first there', () => {
    const traced = { depth: null, loops: [box(-10, -10, 30, 30)] };
    const partly = castingOf({ name: 'Partly', holes, sections: [rib([box(0, 0, 18, 8)])], traced });
    const { groundBack } = compared(partly, known);
    expect(groundBack?.complete).toBe(false);
  });

  // closed forms: the second rib is 2 longer; both are traced to 0.5, so 1 of it is certain
  it('tells what was grown on one side, how proud, and what of it the errors cannot be', () => {
    const { beyond, within, agreement } = compared(known, part('Grown', rib([box(0, 0, 42, 8)])));
    expect(within).toEqual([]);
    expect(beyond).toHaveLength(1);
    const [grown] = beyond;
    expect(grown).toMatchObject({ section: 'rib', depth: { fromMm: 12, toMm: 90 }, errorMm: 1, untraced: false });
    expect(grown?.proudMm).toBeCloseTo(2, 3);
    expect(grown?.beyondMm).toBeCloseTo(1, 3);
    expect(grown?.areaMm2).toBeCloseTo(8, 2);
    expect(grown?.at.x).toBeCloseTo(42, 3);
    expect(agreement?.largestMm).toBeCloseTo(2, 3);
  });

  it('finds nothing the other way round: what is less is not more', () => {
    const { beyond, within, agreement } = compared(part('Grown', rib([box(0, 0, 42, 8)])), known);
    expect({ beyond, within }).toEqual({ beyond: [], within: [] });
    expect(agreement?.largestMm).toBeCloseTo(2, 3);
  });

  it('settles nothing where nothing was found but not all of the second was traced, or a depth is not stated', () => {
    const traced = { depth: null, loops: [box(-20, -20, 60, 30)] };
    const partly = { ...part('Partly', rib()), traced };
    expect(compared(known, partly).settled).toBe(false);
    expect(compareText(laid(known, partly), compared(known, partly))).toMatch(/^UNDECIDED: nothing was found/);
    expect(compared({ ...known, traced }, partly).settled).toBe(true);
    const endless = castingOf({
      name: 'Endless',
      holes,
      sections: [{ id: 'rib', depth: null, loops: [box(0, 0, 40, 8)] }],
    });
    expect(compared(endless, known).settled).toBe(false);
  });

  it('tells what stands out by less than both may err as within tracing error', () => {
    const { beyond, within } = compared(known, part('Grown', rib([box(0, 0, 40.8, 8)])));
    expect(beyond).toEqual([]);
    expect(within).toMatchObject([{ section: 'rib', beyondMm: 0 }]);
    expect(within[0]?.proudMm).toBeCloseTo(0.8, 3);
    expect(within[0]?.areaMm2).toBeCloseTo(6.4, 2);
  });

  it('finds a boss that was added, by its farthest place', () => {
    const boss = { id: 'boss', depth: [12, 90] as const, loops: [disc(20, 60, 10)] };
    const { beyond } = compared(known, part('Bossed', rib(), boss));
    expect(beyond).toHaveLength(1);
    // from the rib's upper side at 8 to the top of the disc at 70
    expect(beyond[0]?.proudMm).toBeCloseTo(62, 2);
    expect(beyond[0]?.areaMm2).toBeCloseTo(Math.PI * 100, 0);
  });

  it('finds metal at a depth where the other has none at all, past what the depths may err', () => {
    const { beyond, within } = compared(known, part('Deeper', rib(undefined, [12, 95])));
    // both depths are good to 1: from 92 on nothing of the known one can be
    expect(beyond).toMatchObject([{ depth: { fromMm: 92, toMm: 95 }, proudMm: null, beyondMm: null }]);
    expect(beyond[0]?.areaMm2).toBeCloseTo(320, 6);
    expect(within).toMatchObject([{ depth: { fromMm: 90, toMm: 92 }, proudMm: null }]);
  });

  it('are laid on their dowels: a drawing turned and shifted, and seen from the back, is the same casting', () => {
    const grown = part('Grown', rib([box(0, 0, 42, 8)]));
    const elsewhere = moveCasting(grown, rigid(0.7, vec(31, -12)));
    const { beyond } = compared(known, elsewhere);
    expect(beyond).toHaveLength(1);
    expect(beyond[0]?.proudMm).toBeCloseTo(2, 3);
    expect(beyond[0]?.at.x).toBeCloseTo(42, 3);
    const named = { ...elsewhere, holes: elsewhere.holes.map((hole) => ({ ...hole, id: hole.id.replace('D', 'P') })) };
    const byName = laid(known, named, [
      ['D1', 'P1'],
      ['D2', 'P2'],
    ]);
    expect(drain(compareCastings(byName)).beyond[0]?.proudMm).toBeCloseTo(2, 3);
  });

  it('say where the known one was not traced', () => {
    const partly = { ...known, traced: { depth: null, loops: [disc(0, 0, 50)] } };
    const { beyond } = compared(partly, part('Far', rib(), { id: 'far', depth: [12, 90], loops: [disc(200, 0, 10)] }));
    expect(beyond).toMatchObject([{ section: 'far', untraced: true }]);
    expect(compareText(laid(partly, known), compared(partly, known))).toMatch(/^NOTHING MORE/);
  });

  it('with depths nowhere are compared as they are drawn', () => {
    const flat = (loops: ReturnType<typeof box>[]) => part('Flat', { id: 'rib', depth: null, loops });
    const [a, b] = [flat([box(0, 0, 40, 8)]), flat([box(0, 0, 43, 8)])];
    const { beyond, agreement } = compared(a, b);
    expect(compareText(laid(a, b), compared(a, b)).replaceAll(/\s+/g, ' ')).toContain('"rib" of Flat says no depth');
    expect(beyond).toMatchObject([{ depth: null }]);
    expect(beyond[0]?.proudMm).toBeCloseTo(3, 3);
    expect(agreement?.largestMm).toBeCloseTo(3, 3);
  });

  it('are not judged where their dowels do not register, or one is seen from the wrong side', () => {
    const off = { ...known, holes: [dowel('D1', [-100, 0]), dowel('D2', [110, 0])] };
    const joint = laid(known, off);
    const result = drain(compareCastings(joint));
    expect(result).toMatchObject({ refusal: { code: 'dowels-do-not-register' }, beyond: [], agreement: null });
    expect(compareText(joint, result)).toMatch(/^UNDECIDED: the drawings do not register/);
    const third = { ...known, holes: [...holes, dowel('D3', [30, 90])] };
    const mirrored = carried(third, { point: ({ x, y }) => vec(-x, y), region: (region) => region });
    expect(drain(compareCastings(laid(third, mirrored))).refusal?.code).toBe('hand-mirrored');
  });

  it.each([
    [[], null, 'no dowel of the same name in both parts'],
    [[dowel('D1', [-100, 0])], null, 'one dowel of the same name in both parts'],
    [holes, [['D1', 'Q1']], '"Q1"'],
  ] as const)('are refused where they share too few dowels', (own, named, found) => {
    const joint = layTogether(known, { ...known, holes: own }, named as readonly NamePair[] | null);
    expect(joint).toMatchObject({ ok: false, findings: [{ found }] });
  });

  it('are told in words with figures that say what they are', () => {
    const grown = part('Grown', rib([box(0, 0, 42, 8)]));
    const text = compareText(laid(known, grown), compared(known, grown)).replaceAll(/\s+/g, ' ');
    expect(text).toMatch(
      /^MORE METAL: 1 place of Grown beyond Known by more than both tracings may err; 2\.0 mm at most\./,
    );
    expect(text).toContain(
      '"rib", from face 12 to 90 mm: 8.0 mm², 2.0 mm proud at most, both tracings together being good to ±1.0 mm',
    );
    expect(text).not.toMatch(/NaN|undefined|null|Infinity/);
  });
});

describe('how well two tracings agree', () => {
  // a square of 100 of which one side lies 1 farther out: 98 of some 400 mm of outline are off by 1
  it('is the distance that 95 in 100 places keep, and the worst and where', () => {
    const square = (x: number) => part('Square', rib([box(0, 0, x, 100)]));
    const { agreement } = compared(square(100), square(101));
    expect(agreement?.mostMm).toBeCloseTo(1, 2);
    expect(agreement?.largestMm).toBeCloseTo(1, 2);
  });

  it('counts a place that is far off as one place, not as all of them', () => {
    const plain = part('Plain', rib([box(0, 0, 200, 200)]));
    const notched = part('Notched', {
      id: 'rib',
      depth: [12, 90],
      loops: [box(0, 0, 200, 200), disc(100, 100, 3)],
    });
    const { agreement } = compared(plain, notched);
    expect(agreement?.mostMm).toBeCloseTo(0, 3);
    // from the hole's far points to the two nearest sides
    expect(agreement?.largestMm).toBeCloseTo(100 - 3 * Math.SQRT1_2, 2);
  });
});

describe('two castings of one number', () => {
  it('are told apart by their files', () => {
    const [a, b] = [part('Block', rib()), { ...part('Block', rib([box(0, 0, 42, 8)])), file: 'second.part.json' }];
    expect(compareText(laid(a, b), compared(a, b)).replaceAll(/\s+/g, ' ')).toContain(
      '1 place of second.part.json beyond Block.part.json by more',
    );
  });
});

describe('what goes on from depth to depth', () => {
  it('is told once, though other metal begins and ends beside it', () => {
    const far = { id: 'far', depth: [30, 50] as const, loops: [box(200, 0, 210, 10)] };
    const { beyond } = compared(part('Known', rib(), far), part('Grown', rib([box(0, 0, 42, 8)])));
    expect(beyond).toMatchObject([{ section: 'rib', depth: { fromMm: 12, toMm: 90 } }]);
  });

  it('is told by its proudest places where there are many, with how many more', () => {
    const teeth = Array.from({ length: 30 }, (_, i) => box(10 * i, 20, 10 * i + 5, 30 + i / 10));
    const blunt = Array.from({ length: 30 }, (_, i) => box(10 * i, 20, 10 * i + 5, 27));
    const [a, b] = [part('Blunt', rib(blunt)), part('Sharp', rib(teeth))];
    const text = compareText(laid(a, b), compared(a, b));
    expect(text).toMatch(/^MORE METAL: 30 places/);
    expect(text).toContain('And 10 places less proud: all of them are in --json.');
  });
});

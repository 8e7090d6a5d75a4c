import { readFileSync } from 'node:fs';
import { afterEach, beforeAll, describe, expect, it } from 'vitest';
import type { LoopFile } from '../../../src/files/part-file.ts';
import { loopOf } from '../../../src/job/lengths.ts';
import { jobInFile, readJobFile } from '../../../src/job/read-job-file.ts';
import { placeJob } from '../../../src/joint/place-job.ts';
import { castingOf } from '../../support/jobs.ts';
import { merged } from '../../support/merged.ts';
import { CutterBody, type Tool } from '../../support/oracles/cutter-body.ts';
import { GeosPlane, type Shape } from '../../support/oracles/geos-plane.ts';
import { judgePlan } from '../../support/oracles/judge-plan.ts';
import { type Cuts, layerAt, layersOf } from '../../support/oracles/layered-solid.ts';
import { answerTo } from '../../support/plan-answer.ts';
import { titled } from '../../support/titled.ts';

type Pair = readonly [number, number];
type Rectangle = readonly [x0: number, y0: number, x1: number, y1: number];

/** What is taken off a section, over a range of depth. */
interface CutCase {
  readonly section: string;
  readonly depth: Pair;
  readonly loops: readonly LoopFile[];
}

/** What a cutter leaves of a part, or what is planned to go, measured in plan at a depth; mm. */
interface LeftCase {
  readonly title: string;
  readonly sections: readonly {
    readonly id: string;
    readonly depth: Pair;
    readonly mayCut?: boolean;
    readonly loops: readonly LoopFile[];
  }[];
  readonly cuts: readonly CutCase[];
  readonly cutter: { readonly radius: number; readonly nose: 'ball' | 'flat' } | null;
  readonly source: string;
  readonly expected: readonly {
    /** The fillets, less at most than they are or more at most; or the metal that is to go. */
    readonly of: 'left' | 'left-at-most' | 'planned';
    readonly depth: number;
    /** Only what lies in there. */
    readonly within?: Rectangle;
    readonly measure: 'width' | 'height' | 'area';
    readonly value: number;
    readonly tolerance: number;
    /** How much more it may be, where that is less than the tolerance. */
    readonly over?: number;
    readonly why: string;
  }[];
}

/** A job that stands among `jobs`, merged with what the case says of it (RFC 7396), cut as told, and what is wrong with that. */
interface JudgedCase {
  readonly group: string;
  readonly title: string;
  readonly job: string;
  readonly with?: object;
  readonly cuts: readonly CutCase[];
  readonly source: string;
  readonly expected: readonly string[];
  readonly tolerance: number;
  readonly why: string;
}

const { left, jobs, judged } = JSON.parse(readFileSync(new URL('oracle.json', import.meta.url), 'utf8')) as {
  readonly left: readonly LeftCase[];
  readonly jobs: Readonly<Record<string, object>>;
  readonly judged: readonly JudgedCase[];
};

let geos: GeosPlane;
beforeAll(async () => {
  geos = await GeosPlane.start();
});
afterEach(() => geos.free());

const areas = { areaMm2: 0, takeOffMm: 0, neededAreaMm2: 0, extraAreaMm2: 0, straightExtraAreaMm2: null };

const cutsOf = (cuts: readonly CutCase[]): Cuts =>
  cuts.map(({ section, depth, loops: given }) => {
    const loops = given as Cuts[0]['bands'][0]['loops'];
    const range = { depth: [...depth] as [number, number], lastDepth: [...depth] as [number, number] };
    const band = { ...areas, ...range, cutterWay: null, loops, firstLoops: loops, lastLoops: loops };
    return { id: section, nothingLeft: false, bands: [band] };
  });

const rectangle = ([x0, y0, x1, y1]: Rectangle): Shape => geos.box({ x0, y0, x1, y1 });

function measured(shape: Shape, measure: 'width' | 'height' | 'area'): number {
  if (measure === 'area') return geos.areaMm2(shape);
  const at = geos.bounds(shape);
  if (at === null) return 0;
  return measure === 'width' ? at.x1 - at.x0 : at.y1 - at.y0;
}

describe('what a cutter leaves', () => {
  it.each(titled(left))('%s', (_, { sections, cuts, cutter, expected }) => {
    const casting = castingOf({
      sections: sections.map((section) => ({ ...section, loops: section.loops.map((loop) => loopOf(loop, 1)) })),
    });
    const layers = layersOf(geos, casting, cutsOf(cuts));
    const tool: Tool | null = cutter && { radiusMm: cutter.radius, nose: cutter.nose };
    const body = tool && new CutterBody(geos, layers, tool);
    const shapeOf = (of: 'left' | 'left-at-most' | 'planned', depth: number): Shape | undefined => {
      if (of === 'planned') return layerAt(layers, depth)?.planned;
      return of === 'left' ? body?.leftAt(depth) : body?.leftAtMost(depth);
    };
    for (const { of, depth, within, measure, value, tolerance, over = tolerance } of expected) {
      const whole = shapeOf(of, depth);
      if (whole === undefined) throw new Error(`nothing at depth ${depth}`);
      const more = measured(within ? geos.intersection(whole, rectangle(within)) : whole, measure) - value;
      expect(more).toBeLessThanOrEqual(over);
      expect(-more).toBeLessThanOrEqual(tolerance);
    }
  });
});

function jointOf({ job: name, with: change = {} }: JudgedCase) {
  const file = `${name}.job.json`;
  const read = readJobFile(file, JSON.stringify(merged(jobs[name], change)));
  const job = read.ok ? jobInFile(read.value, file) : read;
  const joint = job.ok ? placeJob(job.value) : job;
  if (!joint.ok) throw new Error(JSON.stringify(joint.findings));
  return joint.value;
}

describe.each([...new Set(judged.map(({ group }) => group))])('judging a plan: %s', (name) => {
  it.each(titled(judged.filter(({ group }) => group === name)))('%s', (_, one) => {
    const joint = jointOf(one);
    // an answer that takes what it is told to, whatever would be needed
    const answer = { ...answerTo(joint), sections: cutsOf(one.cuts) };
    const complaints = judgePlan(geos, joint, answer).map(({ what }) => what);
    expect(complaints.sort()).toEqual(one.expected);
  });
});

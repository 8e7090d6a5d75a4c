import { angleOf, length } from '../../geometry/plane/vec.ts';
import { givenLength, lengthText } from '../../job/length-text.ts';
import type { Bench, BenchBand } from '../../markout/marking-out-bench.ts';
import { plyMm } from '../../markout/marking-out-plate.ts';
import type { BenchTouch } from '../../markout/marking-out-touch.ts';
import { grindCautions } from '../../words/cautions.ts';
import { planLine } from '../../words/grind-text.ts';
import { axisName, shortName, titleOf } from '../../words/names.ts';
import { turnText } from '../../words/units.ts';
import { briefDepth } from '../fit/depth-words.ts';

/** What is written at the head of a template. */
export interface TemplateWords {
  readonly title: string;
  /** Said large, before all else. */
  readonly warnings: readonly string[];
  readonly about: readonly string[];
  /** What to do with it, in order. */
  readonly steps: readonly string[];
  readonly cautions: readonly string[];
}

/** A template's words: what every one of them has to say, and the steps of its own. */
export function templateWords(
  bench: Bench,
  title: string,
  steps: readonly string[],
  viewed = viewWords(bench),
): TemplateWords {
  return {
    title: `${bench.mirrored ? 'MIRRORED: ' : ''}${bench.both ? `${shortName(bench.present)}: ` : ''}${title}`,
    warnings: warningsOf(bench),
    about: [`${titleOf(bench.joint)}. ${partWords(bench)}`, viewed, tracedWords(bench)],
    steps,
    cautions: grindCautions(bench.joint).slice(0, 2),
  };
}

function warningsOf({ joint, plan, mirrored }: Bench): string[] {
  return [
    ...(plan.holds ? [] : [`${planLine(joint, plan)} Do not cut to this yet.`]),
    ...(mirrored ? ['MIRRORED, as was asked: for use with the print away from you.'] : []),
  ];
}

function partWords({ present: { name, castingNumber } }: Bench): string {
  return `Part: ${name}, casting number ${castingNumber ?? 'not given'}.`;
}

const viewWords = ({ present, mirrored }: Bench): string =>
  mirrored
    ? `Viewed from behind the print: a mirror image of what one sees looking at the mating face of ${shortName(present)}.`
    : `Viewed from in front: you look at the mating face of ${shortName(present)}. Hand: as the casting, not mirrored.`;

function tracedWords({ present: { sections, units } }: Bench): string {
  const most = Math.max(...sections.map(({ traceErrorMm }) => traceErrorMm));
  return `Proved for the outlines as traced, ± ${givenLength(most, units)}, from this casting and no other.`;
}

/** A band in words: `ribs, 14–32 mm from face`. */
export const bandWords = ({ section, depth }: BenchBand, { joint }: Bench): string =>
  `${section.id}, ${briefDepth(depth, joint.fit.units)}`;

export const plyWords = (bench: Bench): string => `${givenLength(plyMm, bench.joint.fit.units)} ply`;

/** When and where the castings first meet on the way in, as they are: turn, stand-off, section, depth, and place from the crank. */
export function firstTouchWords({ touch, at, depth }: BenchTouch, { cut, joint }: Bench): string {
  const { units } = joint.fit;
  const section = cut === 'fixed' ? touch.fixedSection : touch.movingSection;
  const place = `${lengthText(length(at), units)} from ${axisName(joint)} at ${turnText(angleOf(at))}`;
  return `turn ${turnText(touch.turnRad)}, stand-off ${lengthText(touch.standOffMm, units)}, on "${section}", ${briefDepth(depth, units)}, ${place}`;
}

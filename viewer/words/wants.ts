import type { Finding } from '../../src/files/finding.ts';
import type { JobFile, PartDraft } from '../../src/files/job-file.ts';
import { dowelsOf } from '../job/part-edits.ts';
import { runsOf } from '../job/run-edits.ts';
import { type StepName, stepNames } from '../state/step-names.ts';

/** What a step needs next, and where that is done. */
export interface Want {
  readonly step: StepName;
  readonly text: string;
  readonly at: { readonly step: StepName; readonly part: string | null };
}

/** Everything a job still needs, step by step: what keeps it from being worked out, then what it does poorly without. */
export function wantsOf(job: JobFile, findings: readonly Finding[]): Want[] {
  // the hand traces first, and then says what it looked at
  const isOfSide = ({ at }: Finding): boolean => at === 'viewedFrom';
  const inOrder = [...findings.filter((each) => !isOfSide(each)), ...findings.filter(isOfSide)];
  const wants = [
    ...inOrder.map((finding) => wantOf(job, finding)),
    ...depthWants(job),
    ...dowelWants(job),
    ...cutWants(job),
  ];
  return stepNames.flatMap((name) => wants.filter(({ step }) => step === name));
}

/** What is needed up to a step, its own among it; later steps wait for earlier ones. */
export const wantsUpTo = (wants: readonly Want[], step: StepName): Want[] =>
  wants.filter((want) => stepNames.indexOf(want.step) <= stepNames.indexOf(step));

const here = (step: StepName, text: string, part: string | null = null): Want => ({ step, text, at: { step, part } });

function wantOf(job: JobFile, finding: Finding): Want {
  const part = job.parts[finding.file];
  if (part !== undefined) return here('outlines', partWords(job, finding.file, part, finding), finding.file);
  const step = fitSteps.find(([key]) => finding.at.startsWith(key))?.[1];
  if (step !== undefined) return here(step, `${fitPlace(finding.at)}: ${foundWords(job, finding)}`);
  return here(
    'outlines',
    `${[finding.file, finding.at].filter((text) => text !== '').join(', ')}: ${foundWords(job, finding)}`,
  );
}

/** A finding without the paths of files: parts by their names, outlines by their numbers on the page. */
function foundWords({ parts }: JobFile, { found, expected, didYouMean }: Finding): string {
  const hint = didYouMean === undefined ? '' : ` ${didYouMean}, perhaps?`;
  const text = `${found}. Wanted: ${expected}.${hint}`;
  return Object.entries(parts)
    .reduce((said, [file, { name }]) => said.replaceAll(file, name), text)
    .replace(/\b\w+\[\d+\]\.loops\[(\d+)\]/g, (_, n: string) => `outline ${Number(n) + 1}`);
}

function partWords(job: JobFile, file: string, part: PartDraft, finding: Finding): string {
  const { name } = part;
  const { at, found } = finding;
  if (at === 'viewedFrom') return `Say how you saw the ${name}: at its face, or from behind.`;
  const hasNone = found === '[]';
  const [, list, index] = /^(sections|hollows|doNotCut|holes)\[(\d+)\]/.exec(at) ?? [];
  const id = list === undefined ? undefined : part[list as 'sections']?.[Number(index)]?.id;
  if (hasNone && at === 'sections') return `Trace the ${name}'s face first.`;
  if (hasNone && at.endsWith('.loops') && id !== undefined) {
    const isBegun = runsOf(job).some((run) => run.part === file && run.section === id);
    return isBegun ? `Close the line of ${id} on the ${name}.` : `Trace ${id} on the ${name}, or remove it.`;
  }
  const outline = /\.loops\[(\d+)\]/.exec(at)?.[1];
  const place = [
    name,
    ...(id === undefined ? [] : [id]),
    ...(outline === undefined ? [] : [`outline ${Number(outline) + 1}`]),
  ];
  return `${place.join(', ')}: ${foundWords(job, finding)}`;
}

const fitSteps: readonly (readonly [key: string, step: StepName])[] = [
  ['dowels', 'dowel-up'],
  ['bolts', 'dowel-up'],
  ['axis', 'dowel-up'],
  ['offerUp', 'offer-up'],
  ['wander', 'offer-up'],
  ['clearance', 'grind'],
  ['cutter', 'grind'],
  ['minWall', 'grind'],
];

const fitNames: Readonly<Record<string, string>> = {
  dowels: 'Dowel pair',
  bolts: 'Bolt pair',
  axis: 'Crank axis',
  offerUp: 'Position',
  wander: 'How far a hand may stray',
  clearance: 'Clearance',
  cutter: 'Cutter',
  minWall: 'Least wall',
};

function fitPlace(at: string): string {
  const [, key = '', index] = /^(\w+)(?:\[(\d+)\])?/.exec(at) ?? [];
  return `${fitNames[key] ?? key}${index === undefined ? '' : ` ${Number(index) + 1}`}`;
}

/** A section through every depth meets all of the other part: what a drawing brings is so until it is told. */
const depthWants = ({ fit, parts }: JobFile): Want[] =>
  [fit.fixed, fit.moving].flatMap((file) =>
    (parts[file]?.sections ?? [])
      .filter(({ depth, loops }) => depth === undefined && loops.length > 0)
      .map(({ id }) =>
        here('outlines', `Say how deep ${id} on the ${parts[file]?.name} goes: now it goes through every depth.`, file),
      ),
  );

function dowelWants({ fit, parts }: JobFile): Want[] {
  if ((fit.dowels ?? []).length >= 2) return [];
  const lacking = [fit.fixed, fit.moving].flatMap((file) => {
    const part = parts[file];
    const holes = part?.holes ?? [];
    if (part === undefined || dowelsOf(part).length >= 2) return [];
    const text =
      holes.length < 2
        ? `Two dowels are needed: add the ${part.name}'s holes.`
        : `Two dowels are needed: tap them in the ${part.name}'s list.`;
    return [{ step: 'dowel-up', text, at: { step: 'outlines', part: file } } as const];
  });
  return lacking.length > 0 ? lacking : [here('dowel-up', 'Pair the two dowels.')];
}

function cutWants({ fit, parts }: JobFile): Want[] {
  const cut = fit.cut === 'both' ? [fit.fixed, fit.moving] : [fit.cut === 'moving' ? fit.moving : fit.fixed];
  const isOffered = cut.some((file) => parts[file]?.sections.some(({ mayCut }) => mayCut));
  return isOffered ? [] : [here('grind', 'Tick what may be cut.')];
}

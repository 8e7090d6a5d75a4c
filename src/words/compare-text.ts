import type { CompareResult } from '../compare/compare-castings.ts';
import type { Standing } from '../compare/standing-beyond.ts';
import type { Vec } from '../geometry/plane/vec.ts';
import { fineLength, lengthText } from '../job/length-text.ts';
import type { Joint } from '../joint/joint.ts';
import { jointNoticeText } from './joint-notices.ts';
import { counted, inWords, listed, paragraph, wrapped } from './layout.ts';
import { shortName } from './names.ts';
import { depthText } from './places.ts';
import { reasonText } from './reasons.ts';
import { areaText, comparedText, weighedText } from './units.ts';

/** Two castings compared, as a builder reads it: what stands on the second beyond the first, and how well they agree. */
export function compareText(joint: Joint, result: CompareResult): string {
  return [
    ...wrapped(compareLine(joint, result), ''),
    `${joint.moving.name} laid on ${joint.fixed.name}`,
    ...paragraph('Stands beyond', listed(standingTexts(joint, result.beyond, mostBeyond))),
    ...paragraph('Within tracing error', listed(standingTexts(joint, result.within, mostWithin))),
    ...paragraph(`If ${namesOf(joint)[0]} is known to fit`, listed(groundBackTexts(joint, result))),
    ...paragraph('How well they agree', listed(agreementTexts(joint, result))),
    ...paragraph('What this rests on', listed(groundTexts(joint, result))),
    '',
  ].join('\n');
}

/** What was found, in one line, the verdict first. */
export function compareLine(joint: Joint, { refusal, beyond, settled }: CompareResult): string {
  const { units } = joint.fit;
  const [first, second] = namesOf(joint);
  if (refusal !== null) return `UNDECIDED: ${reasonText(refusal.code)}.`;
  const [proudest] = beyond;
  const names = `${second} beyond ${first}`;
  if (!settled)
    return `UNDECIDED: nothing was found on ${names}, but not all of it was traced, or its depth is not stated.`;
  if (proudest === undefined) return `NOTHING MORE: nothing stands on ${names} by more than both tracings may err.`;
  const most =
    proudest.proudMm === null
      ? `"${proudest.section}" stands where the other has no metal at all`
      : `${comparedText(proudest.proudMm, proudest.errorMm, units)} at most`;
  return `MORE METAL: ${counted(beyond.length, 'place')} of ${names} by more than both tracings may err; ${most}.`;
}

/** So many places are told; a list that nobody reads to its end hides what matters. */
const mostBeyond = 20;
const mostWithin = 5;

function standingTexts(joint: Joint, all: readonly Standing[], most: number): string[] {
  const told = all.slice(0, most).map((one) => standingText(joint, one));
  return all.length <= most
    ? told
    : [...told, `And ${counted(all.length - most, 'place')} less proud: all of them are in --json.`];
}

/** What the two are called; by their files where they have one name, as two of a number do. */
function namesOf({ fixed, moving }: Joint): readonly [first: string, second: string] {
  const [first, second] = [shortName(fixed), shortName(moving)];
  return first !== second || fixed.file === moving.file ? [first, second] : [fixed.file, moving.file];
}

function standingText(joint: Joint, standing: Standing): string {
  const { units } = joint.fit;
  const { section, depth, at, areaMm2, proudMm, errorMm, untraced } = standing;
  const proud =
    proudMm === null
      ? `no metal of ${namesOf(joint)[0]} at that depth`
      : `${comparedText(proudMm, errorMm, units)} proud at most, both tracings together being good to ±${lengthText(errorMm, units)}`;
  const unknown = untraced ? `; ${namesOf(joint)[0]} was not traced there` : '';
  return `"${section}", ${depthText(depth, units)}: ${areaText(areaMm2, units)}, ${proud}, ${whereText(joint, at)}${unknown}.`;
}

/** A place of the first part, looking at its face: from the origin of its drawing, and from a dowel. */
function whereText({ fit: { units, dowels } }: Joint, { x, y }: Vec): string {
  const near = dowels
    .map(({ fixed: { id, at } }) => ({ id, mm: Math.hypot(x - at.x, y - at.y) }))
    .sort((a, b) => a.mm - b.mm)[0];
  const place = `at x ${lengthText(x, units)}, y ${lengthText(y, units)}`;
  return near === undefined ? place : `${place} (${lengthText(near.mm, units)} from ${near.id})`;
}

/** What grinding the second back to the first takes, and what that rests on: the other castings need not be traced for it. */
function groundBackTexts(joint: Joint, { groundBack }: CompareResult): string[] {
  if (groundBack === null) return [];
  const { units } = joint.fit;
  const [first, second] = namesOf(joint);
  const { volumeMm3, massG, remainsMm, notOffered, complete } = groundBack;
  const weighed = volumeMm3 === null ? 'metal of unknown depth' : weighedText(volumeMm3, massG, units);
  return [
    `Ground back to ${first} as traced, ${second} loses ${weighed}, and goes wherever ${first} goes with ${lengthText(remainsMm, units)} to spare: by the errors of both tracings it may still stand so far beyond, and along the crank by those of their depths. Measure that clearance on ${first} with modelling clay.`,
    ...(complete ? [] : ['Not all of both was traced, or says its depth: of that this says nothing.']),
    ...(notOffered.length === 0
      ? []
      : [
          `${inWords(notOffered.map((id) => `"${id}"`))} of ${second} would be cut, and ${notOffered.length === 1 ? 'is' : 'are'} not offered to be.`,
        ]),
    'What walls and hollows it leaves is not looked at here: fettle grind does that, of the castings it is to go with.',
  ];
}

function agreementTexts(joint: Joint, { agreement, refusal }: CompareResult): string[] {
  const { units } = joint.fit;
  if (refusal !== null) return [];
  if (agreement === null) return ['They have metal at no common depth: look at the signs of the depths.'];
  const { mostMm, largestMm, at, depth } = agreement;
  const places = `${lengthText(largestMm, units)} at worst ${whereText(joint, at)}, ${depthText(depth, units)}`;
  return [
    `Their outlines agree to ±${lengthText(mostMm, units)} (95 %), ${places}.`,
    'If these are two tracings of one casting, that is the honest ± of the way they were got: state no less as traceError.',
  ];
}

function groundTexts(joint: Joint, { refusal }: CompareResult): string[] {
  const { fit, dowelUp, fixed, moving } = joint;
  if (refusal !== null) return [jointNoticeText(refusal, fit.units)];
  const [first, second] = namesOf(joint);
  const offMm = Math.abs(dowelUp.spacingErrorMm ?? 0);
  const partly = [...(fixed.traced === null ? [] : [first]), ...(moving.traced === null ? [] : [second])];
  return [
    `The two lie together on ${inWords(fit.dowels.map(({ fixed: a, moving: b }) => (a.id === b.id ? a.id : `${a.id} = ${b.id}`)))}, whose spacing differs by ${fineLength(offMm, fit.units)}. Places are looking at the face, from the origin of the drawing of ${first}.`,
    `Only what ${second} has more was looked for: ask the other way round for what it has less.`,
    ...(partly.length === 0 ? [] : [`${inWords(partly)} said how far the tracing goes: beyond that nothing is known.`]),
    ...depthlessTexts(joint),
    'Holes, hollows and walls were not compared.',
  ];
}

/** A section without a depth is metal at every depth there is to compare, which may hide what stands beyond. */
const depthlessTexts = (joint: Joint): string[] =>
  [joint.fixed, joint.moving]
    .map((casting, i) => ({
      name: namesOf(joint)[i],
      ids: casting.sections.filter(({ depth }) => depth === null).map(({ id }) => id),
    }))
    .filter(({ ids }) => ids.length > 0)
    .map(
      ({ name, ids }) =>
        `${inWords(ids.map((id) => `"${id}"`))} of ${name} says no depth, and is taken to stand wherever the other has metal: state depths to be sure.`,
    );

import type { CheckResult, WanderResult } from '../clearance/check-result.ts';
import type { Forgiven } from '../clearance/wander/forgiven.ts';
import type { Joint } from '../joint/joint.ts';
import { checkCautions } from './cautions.ts';
import { closestLines, firstTouchLines, foulingLines } from './contact-text.ts';
import { boltLines, dowelLines } from './dowel-text.ts';
import { inWords, listed, paragraph, wrapped } from './layout.ts';
import { foulLines, measureLines } from './measure-text.ts';
import { shortName, titleOf } from './names.ts';
import { otherWayCommands } from './other-way-text.ts';
import { otherNotices, reasonSteps, reasonTexts } from './reasons.ts';
import { verdictLine } from './verdict.ts';
import { forgivenText, strayedTexts, wanderText } from './wander-text.ts';

/**
 * A check as a builder reads it, the answer of `fettle check`: the verdict, why, what it rests on, and what to do next, in
 * the units of the fit; with `forgives`, of the stage of that name, how far one may stray. Lines that end in `\n`, no colour, no tabs; nothing is thrown.
 *
 * @example The verdict of an adapter on guide studs.
 * ```ts
 * import { readFileSync } from 'node:fs';
 * import { analyse, checkText, drain, readJob } from 'fettle';
 *
 * const fit = 'profiles/sae-3-adapter/adapter.fit.json';
 * const read = readJob(fit, (path) => ({ ok: true, value: readFileSync(path, 'utf8') }));
 * const found = read.ok ? analyse(read.value) : read;
 * if (!found.ok) throw new Error(JSON.stringify(found.findings));
 * const { joint, check } = found.value;
 * const [verdict] = checkText(joint, drain(check())).split('\n');
 * console.log(verdict); // GOES: it keeps the clearance you asked for even with every tracing error against you.
 * ```
 */
export function checkText(joint: Joint, check: CheckResult, forgives: Forgiven | null = null): string {
  return [
    ...wrapped(verdictLine(check), ''),
    titleOf(joint),
    ...paragraph('Why nothing is judged', listed(reasonTexts(joint, check))),
    '',
    ...measureLines(joint, check),
    ...foulLines(joint, check),
    ...paragraph('First touch going in', firstTouchLines(joint, check)),
    ...paragraph('Fouls on the way in', foulingLines(joint, check)),
    ...paragraph('Where it is nearest', closestLines(joint, check)),
    ...paragraph('Steering it in', listed(steeringTexts(joint, check, forgives))),
    ...paragraph('Dowels', dowelLines(joint)),
    ...paragraph(boltHeading(joint), boltLines(joint)),
    ...paragraph('Warnings', listed(otherNotices(joint, check))),
    ...paragraph('What this rests on', listed(groundsOf(joint, check))),
    ...paragraph('Next', listed([...checkSteps(check), ...checkCommands(joint, check)])),
    ...paragraph('Take care', listed(checkCautions(joint))),
  ].join('\n');
}

/** How far one may stray from the way in by hand; `forgives` where that was worked out. */
export const steeringTexts = (
  { fit }: Joint,
  check: Pick<CheckResult, 'wander'>,
  forgives: Forgiven | null,
): string[] => [...(forgives === null ? [] : [forgivenText(forgives, fit.units)]), ...strayedTexts(check, fit.units)];

export function boltHeading({ bolts }: Pick<Joint, 'bolts'>): string {
  const known = bolts.filter(({ linesUp }) => linesUp !== null);
  if (known.length === 0) return 'Bolts';
  return `Bolts: ${known.filter(({ linesUp }) => linesUp).length} of ${bolts.length} line up`;
}

/** What is proved, and what is only taken as given. */
export function groundsOf(
  { fit, fixed, moving }: Joint,
  { wayIn, wander }: { readonly wayIn: object | null; readonly wander: WanderResult | null },
): string[] {
  const over = wayIn === null ? 'at home' : 'at home and at every instant of the way in';
  const untold = [fixed, moving].filter(({ traced }) => traced === null).map(shortName);
  return [
    `Proved for the outlines as traced, ${over}; nothing is sampled. "At worst" has every tracing error against you at once.`,
    ...(untold.length === 0
      ? []
      : [`What was traced of ${inWords(untold)} is taken as complete: metal that nobody traced is not known here.`]),
    ...(wayIn === null ? ['Only the home position was asked; nothing is said about the way in.'] : []),
    ...(wander === null
      ? []
      : [
          `"Astray" has every path counted within ${wanderText(wander.wander, null, fit.units)} of the way in, all at once, until two dowels guide it; of shift and tilt it may be more than need be.`,
        ]),
    wander === null || wander.wander.tiltRad === 0
      ? 'Tilt, flex and play along the axis are not modelled.'
      : 'Flex and play along the axis are not modelled.',
    `Places are seen looking at the mating face of ${shortName(fixed)}: angles from 3 o'clock and turns, both anticlockwise; stand-off from face to face.`,
  ];
}

/** What to do next, at the bench. */
export function checkSteps({ verdict, reason, wayIn }: CheckResult): string[] {
  if (reason !== null) return reasonSteps(reason);
  switch (verdict) {
    case 'goes':
      return ['Offer it up the way it was checked; go by hand, and stop at the first resistance.'];
    case 'should-go':
      return [
        'Trace the closest places again with less error, or offer it up with modelling clay on them and measure what is left.',
      ];
    case 'too-close':
    case 'fouls':
      return wayIn === null
        ? ['Take off the least metal that is enough.']
        : [
            'Take off the least metal that is enough, or try another turn or stand-off on the way in; then check again.',
          ];
    case 'undecided':
      return ['Read the warnings: trace on where they say, then check again.'];
  }
}

/** The commands that go on from a check, for whoever reads it in a terminal. */
function checkCommands(joint: Joint, check: CheckResult): string[] {
  const { fit } = joint;
  const { verdict, reason } = check;
  const draw = `See where: fettle draw ${fit.file} -o fit.svg`;
  if (reason !== null) return [`Check again: fettle check ${fit.file}`, draw];
  if (verdict === 'goes') return [];
  const grind = `The least metal to take off: fettle grind ${fit.file}`;
  return verdict === 'too-close' || verdict === 'fouls' ? [...otherWayCommands(joint, check), grind, draw] : [draw];
}

import type { Warning } from '../answers/check-answer.ts';
import type { Casting, DepthRange, Section } from '../job/casting.ts';
import { home, type Leg } from '../job/path.ts';
import type { Joint } from '../joint/joint.ts';
import { sectionsMeet } from './shared-depth.ts';
import { startWarning } from './warnings.ts';

/** The codes of this file's warnings, beside that of `startWarning`. */
export type DepthReasonCode = 'never-shares-depth' | 'home-shares-nothing';

const warning = (code: DepthReasonCode, text: string): Warning => ({ code, text });

/** What depths alone tell against a job: sections that never share any, or share it before the way in begins. */
export function depthReasons(joint: Joint): Warning[] {
  const starts = startWarning(joint).map((said) => ({ ...said, text: `${said.text} ${startRemedy(joint)}` }));
  if (sharesAtHome(joint)) return starts;
  if (!sharesOnTheWay(joint))
    return [
      warning(
        'never-shares-depth',
        `No two sections ever share depth, so nothing was measured between them. ${signsText(joint)}`,
      ),
    ];
  const text = `Sections share depth on the way in, but none do at home, so nothing was measured there. ${signsText(joint)}`;
  return [warning('home-shares-nothing', text), ...starts];
}

function startRemedy({ fixed, moving }: Joint): string {
  if (sideOf(fixed) === 'proud')
    return `Likeliest the sign of all depths of ${fixed.file} is wrong: ${signRule} Else put a first position farther out.`;
  const endless = [...fixed.sections, ...moving.sections].filter(({ depth }) => depth === null);
  if (endless.length === 0) return 'Put a first position farther out.';
  const ids = endless.map(({ id }) => `"${id}"`).join(', ');
  return `Give ${ids} a depth: without one a section reaches through every depth, however far out the way begins.`;
}

const standing: Pick<Leg, 'from' | 'to'> = { from: home, to: home };

const sharesAtHome = (joint: Joint): boolean => anyShares(joint, standing);

const sharesOnTheWay = (joint: Joint): boolean => joint.fit.legs.some((leg) => anyShares(joint, leg));

type Parts = Pick<Joint, 'fit' | 'fixed' | 'moving'>;

const anyShares = ({ fit, fixed, moving }: Parts, leg: Pick<Leg, 'from' | 'to'>): boolean =>
  fixed.sections.some((f) => moving.sections.some((m) => sectionsMeet(f, m, leg, fit.depthMarginMm) !== null));

/** What signs of depths have to do with it; at home the two parts turned over give the same, so their own sides tell. */
function signsText(joint: Joint): string {
  const { fixed, moving } = joint;
  const measure = `Look again at the depths of ${fixed.file} and ${moving.file}`;
  const turned = [
    { ...joint, fixed: turnedOver(fixed) },
    { ...joint, moving: turnedOver(moving) },
  ];
  if (!turned.some((other) => anyShares(other, standing))) return `${measure}, and at the unit they are in.`;
  const sides = [fixed, moving].map(sideOf);
  if (sides[0] === 'proud') return `Likeliest the sign of all depths of ${fixed.file} is wrong: ${signRule}`;
  if (sides[1] === 'proud') return `Likeliest the sign of all depths of ${moving.file} is wrong: ${signRule}`;
  if (sides.every((side) => side === 'inward'))
    return `All depths of both parts lie on one side, each running into its own part, away from the other. Likeliest the sign of all depths of ${moving.file} is wrong: what reaches past its mating face alongside ${fixed.file} has negative depths.`;
  return `${measure}: with the signs of one of them turned round sections would share depth. ${signRule[0]?.toUpperCase()}${signRule.slice(1)}`;
}

const signRule = "depth runs from a part's own mating face into that part, and is negative only where it stands proud.";

/** On which side of its mating face all of a part's depths lie. */
function sideOf({ sections }: Casting): 'inward' | 'proud' | 'both' {
  const depths = sections.flatMap(({ depth }) => depth ?? []);
  if (depths.length === 0) return 'both';
  if (depths.every(({ fromMm }) => fromMm >= 0)) return 'inward';
  return depths.every(({ toMm }) => toMm <= 0) ? 'proud' : 'both';
}

const turnedOver = (casting: Casting): Casting => ({
  ...casting,
  sections: casting.sections.map((section): Section => ({ ...section, depth: negated(section.depth) })),
});

const negated = (depth: DepthRange | null): DepthRange | null =>
  depth && { fromMm: 0 - depth.toMm, toMm: 0 - depth.fromMm };

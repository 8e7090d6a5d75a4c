import { givenLength, lengthText } from '../job/length-text.ts';
import type { Units } from '../job/lengths.ts';
import type { Hindrance } from '../plan/hindrances.ts';
import type { UncuredFoul } from '../plan/uncured-foul.ts';
import { comparedText } from './units.ts';

/** What stands against an alternative, each in a few words; what reads the same is said once. */
export const againstTexts = (hindrances: readonly Hindrance[], units: Units): string[] => [
  ...new Set(hindrances.map((hindrance) => againstText(hindrance, units))),
];

function againstText(hindrance: Hindrance, units: Units): string {
  switch (hindrance.code) {
    case 'uncured':
      return uncuredText(hindrance.foul);
    case 'wall':
      return `${leftText(hindrance.wallMm, units)} is left at "${hindrance.hollow}"`;
    case 'thin':
      return `${leftText(hindrance.wallMm, units)} is left of "${hindrance.section}" itself`;
    case 'read-wall':
      return `${leftText(hindrance.wallMm, units)} is left of a wall that was read`;
    case 'fillet':
      return `the cutter leaves a fillet in "${hindrance.section}"`;
    case 'keeps-only':
      return `what is left keeps only ${lengthText(hindrance.keptMm, units)} ${places[hindrance.where]}`;
    case 'severed':
    case 'nothing-left':
    case 'still-fouls':
    case 'undecided':
    case 'may-touch':
    case 'section-not-offered':
    case 'moving-not-offered':
      return plainText(hindrance);
  }
}

/** What stands against the plan that was asked for: what its cut does first, what it leaves in the way last. */
export function hindranceTexts(hindrances: readonly Hindrance[], units: Units): string[] {
  const rank = ({ code }: Hindrance): number => (code === 'uncured' ? 2 : code === 'fillet' ? 1 : 0);
  const inOrder = hindrances.toSorted((a, b) => rank(a) - rank(b));
  // bands of one section may be held up by the same
  return [...new Set(inOrder.map((hindrance) => hindranceText(hindrance, units)))];
}

function hindranceText(hindrance: Hindrance, units: Units): string {
  switch (hindrance.code) {
    case 'uncured':
      return `"${hindrance.foul.section}" still stands in the way`;
    case 'wall':
      return hindrance.nominalMm <= 0
        ? `the cut breaks into "${hindrance.hollow}"`
        : `the wall to "${hindrance.hollow}" is too thin`;
    case 'thin':
      return `"${hindrance.section}" would be too thin${hindrance.along === 'crank' ? ' along the axis' : ''}`;
    case 'read-wall':
      return `the wall read at "${hindrance.section}" would be too thin`;
    case 'fillet':
      return `the cutter leaves a fillet in "${hindrance.section}"${hindrance.against === null ? '' : `, against "${hindrance.against}"`}`;
    case 'keeps-only': {
      const { keptMm, askedMm, where } = hindrance;
      const [kept, asked] = [comparedText(keptMm, askedMm, units), givenLength(askedMm, units)];
      return `what is left keeps only ${kept} of the ${asked} asked ${places[where]}`;
    }
    case 'severed':
    case 'nothing-left':
    case 'still-fouls':
    case 'undecided':
    case 'may-touch':
    case 'section-not-offered':
    case 'moving-not-offered':
      return plainText(hindrance);
  }
}

const places = {
  home: 'at home',
  'way-in': 'on the way in',
  astray: 'where one strays from the way in',
  'astray-turning': 'to what runs round, where one strays from the way in',
} as const;

type Plain = Exclude<Hindrance, { readonly code: 'uncured' | 'wall' | 'thin' | 'read-wall' | 'fillet' | 'keeps-only' }>;

/** What reads the same wherever it is said. */
function plainText(hindrance: Plain): string {
  switch (hindrance.code) {
    case 'severed':
      return `a piece of "${hindrance.section}" would come off`;
    case 'nothing-left':
      return `nothing would be left of "${hindrance.section}"`;
    case 'still-fouls':
      return `what is left still fouls ${places[hindrance.where]}`;
    case 'undecided':
      return `what is left is undecided ${places[hindrance.where]}`;
    case 'may-touch':
      return `what is left may come to touch ${places[hindrance.where]}`;
    case 'section-not-offered':
      return `"${hindrance.section}" is not offered`;
    case 'moving-not-offered':
      return 'nothing of the moving part is offered';
  }
}

/** A wall at worst: below nothing it may not be there at all. */
const leftText = (wallMm: number, units: Units): string => (wallMm > 0 ? lengthText(wallMm, units) : 'perhaps nothing');

function uncuredText({ section, why, doNotCut }: UncuredFoul): string {
  switch (why) {
    case 'not-offered':
      return `"${section}" is in the way and not offered`;
    case 'do-not-cut':
      return `"${doNotCut}" is not to be cut`;
    case 'rotating':
      return `"${section}" runs too near`;
  }
}

import { holdsClearance } from '../clearance/measure.ts';
import type { Clearances } from '../job/job.ts';
import type { AfterCut } from './after-cut.ts';
import type { CutFigures } from './part-cut.ts';
import type { UncuredFoul } from './uncured-foul.ts';

/** Something that stands against a plan; lengths in mm. */
export type Hindrance =
  | { readonly code: 'uncured'; readonly foul: UncuredFoul }
  | { readonly code: 'wall'; readonly hollow: string; readonly wallMm: number; readonly nominalMm: number }
  | {
      readonly code: 'thin';
      readonly section: string;
      readonly along: 'plane' | 'crank';
      readonly wallMm: number;
    }
  | { readonly code: 'read-wall'; readonly section: string; readonly wallMm: number }
  | { readonly code: 'severed' | 'nothing-left'; readonly section: string }
  | { readonly code: 'fillet'; readonly section: string; readonly against: string | null }
  /** What is left does not keep what was asked. */
  | { readonly code: 'still-fouls' | 'undecided' | 'may-touch'; readonly where: Where }
  | { readonly code: 'keeps-only'; readonly where: Where; readonly keptMm: number; readonly askedMm: number }
  /** A plan that supposes more metal offered than is: a section of the part it cuts, or any of the moving part. */
  | { readonly code: 'section-not-offered'; readonly section: string }
  | { readonly code: 'moving-not-offered' };

type Where = 'home' | 'way-in' | 'astray' | 'astray-turning';

/** What a plan leaves, as it is judged. */
interface Left {
  readonly cuts: readonly CutFigures[];
  readonly uncured: readonly UncuredFoul[];
  readonly afterCut: AfterCut;
}

/** What stands against a plan that does not hold; what falls short of the clearance asked only where nothing else says why. */
export function hindrancesOf({ cuts, uncured, afterCut }: Left, asked: Clearances): Hindrance[] {
  const short = shortfalls(afterCut, asked);
  const found = [
    ...uncured.map((foul): Hindrance => ({ code: 'uncured', foul })),
    ...cuts.flatMap((cut) => [...cutHindrances(cut), ...(short.length === 0 ? [] : filletHindrances(cut))]),
  ];
  return found.length > 0 ? found : short;
}

const cutHindrances = ({ walls, thin, readings, severed, sections }: CutFigures): Hindrance[] => [
  ...walls
    .filter(({ holds }) => holds === false)
    .map(({ hollow, wallMm, nominalMm }): Hindrance => ({ code: 'wall', hollow, wallMm, nominalMm })),
  ...thin
    .filter(({ holds }) => !holds)
    .map(({ section, along, wallMm }): Hindrance => ({ code: 'thin', section, along, wallMm })),
  ...readings
    .filter(({ holds }) => holds === false)
    .map(({ section, leastWallMm }): Hindrance => ({ code: 'read-wall', section, wallMm: leastWallMm })),
  ...severed.map(({ section }): Hindrance => ({ code: 'severed', section })),
  ...sections
    .filter(({ nothingLeft }) => nothingLeft)
    .map(({ id }): Hindrance => ({ code: 'nothing-left', section: id })),
];

const filletHindrances = ({ cutter }: CutFigures): Hindrance[] =>
  (cutter?.ends ?? [])
    .filter(({ what }) => what === 'left' || what === 'against')
    .map(({ section, against }) => ({ code: 'fillet', section, against }));

/** Where what is left does not keep what was asked, and how near it comes. */
function shortfalls({ home, wayIn, wander }: AfterCut, { homeMm, wayInMm, rotatingMm }: Clearances): Hindrance[] {
  const places = [
    { where: 'home', measure: home, askedMm: homeMm },
    { where: 'way-in', measure: wayIn, askedMm: wayInMm },
    { where: 'astray', measure: wander, askedMm: wayInMm },
    ...(wander?.rotating ?? []).map((measure) => ({ where: 'astray-turning', measure, askedMm: rotatingMm }) as const),
  ] as const;
  return places.flatMap(({ where, measure, askedMm }): Hindrance[] => {
    if (measure === null || holdsClearance(measure.state, measure.clearanceMm, askedMm)) return [];
    if (measure.state === 'undecided') return [{ code: 'undecided', where }];
    if (measure.state === 'fouls' || measure.clearanceMm === null) return [{ code: 'still-fouls', where }];
    if (measure.clearanceMm <= 0 && (where === 'astray' || where === 'astray-turning'))
      return [{ code: 'may-touch', where }];
    return [{ code: 'keeps-only', where, keptMm: measure.clearanceMm, askedMm }];
  });
}

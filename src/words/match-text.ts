import type { Vec } from '../geometry/plane/vec.ts';
import type { MatchedPair, PatternMatch } from '../holes/patterns/match-patterns.ts';
import type { PartMatch } from '../holes/patterns/part-match.ts';
import type { PatternHole } from '../holes/patterns/pattern.ts';
import type { StandardPattern } from '../holes/patterns/standard-pattern.ts';
import { figure } from '../job/length-text.ts';
import { columns, counted, inWords, listed, paragraph, wrapped } from './layout.ts';
import { symmetryTexts } from './symmetry-text.ts';
import { fineMm, fineTurnText, percentText } from './units.ts';

/** Two patterns of holes laid upon one another, as a builder reads it. */
export function matchText(found: PartMatch): string {
  const { match, standards, fixed, moving } = found;
  const isMatch = match.conclusion === 'match';
  return [
    ...wrapped(matchLine(found), ''),
    `${fixed.name}, ${counted(fixed.holes.length, 'hole')}; ${moving.name}, ${counted(moving.holes.length, 'hole')}`,
    ...paragraph('How it lies', listed(isMatch ? liesTexts(found) : [])),
    ...paragraph('Holes that come together', isMatch ? pairLines(match.pairs) : []),
    ...paragraph('Left over', listed(isMatch ? leftTexts(found) : [])),
    ...paragraph('Other ways', listed(isMatch ? symmetryTexts(match) : [])),
    ...paragraph(
      'Standards',
      listed([
        ...standards.fixed.map((pattern) => standardText(fixed.name, pattern)),
        ...standards.moving.map((pattern) => standardText(moving.name, pattern)),
      ]),
    ),
    ...paragraph('Take care', listed(carefully(found))),
    '',
  ].join('\n');
}

/** Whether the patterns match, in one line. */
export function matchLine({ match, fixed, moving }: PartMatch): string {
  const { conclusion, hand, pairs, largestMm, bolts } = match;
  if (conclusion === 'none') return 'NO MATCH: no holes come together.';
  const few = Math.min(fixed.holes.length, moving.holes.length);
  const together = `${pairs.length} of ${counted(few, 'hole')} come together, within ${fineMm(largestMm ?? 0)}`;
  if (conclusion === 'by-chance')
    return `NO MATCH: ${pairs.length} of ${counted(few, 'hole')} come together at best, which as many holes strewn anywhere would do as well.`;
  if (hand === 'mirrored') return `MIRRORED: ${together}, but only with one part seen from its other side.`;
  switch (bolts?.conclusion) {
    case 'cannot':
      return `DOES NOT LINE UP: ${together}, but however it is laid, not all the bolts go in.`;
    case 'undecided':
      return `UNDECIDED: ${together}, but whether all the bolts go in is too near to tell.`;
    case 'go-in':
    case undefined:
      return `MATCH: ${together}.`;
  }
}

function liesTexts({ match, options }: PartMatch): string[] {
  const { turnRad, shift, hand, rmsMm } = match;
  const moved = options.centred
    ? 'about the origin of both'
    : `and its origin at ${placeText(shift)} of the fixed drawing`;
  return [
    `The moving part turned by ${fineTurnText(turnRad)} ${moved}${hand === 'mirrored' ? ', mirrored left to right first' : ''}: laid by least squares, ${fineMm(rmsMm ?? 0)} off by root mean square.`,
    ...boltTexts(match),
    ...(hand === 'mirrored'
      ? ['Look again at viewedFrom of both parts: one of them was seen from its other side.']
      : []),
  ];
}

/** Where the fit by least squares leaves a bolt without room, and another position does not. */
function boltTexts({ bolts, pairs }: PatternMatch): string[] {
  if (bolts === null || bolts.conclusion !== 'go-in') return [];
  const known = counted(pairs.filter(({ allowance }) => allowance !== null).length, 'bolt');
  const full = `the fullest hole takes ${percentText(bolts.fullest ?? 1)} of its play`;
  if (pairs.every(({ linesUp }) => linesUp !== false))
    return [`As it lies all ${known} of known size go in; laid for them, ${full}.`];
  const { shift, turnRad } = bolts.motion;
  return [
    `So laid a bolt has no room. Turned by ${fineTurnText(turnRad)}, with its origin at ${placeText(shift)}, all ${known} of known size go in: ${full}.`,
  ];
}

const placeText = ({ x, y }: Vec): string => `(${figure(x, 2)}, ${figure(y, 2)}) mm`;

const pairLines = (pairs: readonly MatchedPair[]): string[] =>
  columns([
    ['fixed', 'moving', 'off', 'may be off', ''],
    ...pairs.map(({ fixed, moving, offMm, allowance, linesUp }) => [
      fixed.id,
      moving.id,
      fineMm(offMm),
      allowance === null ? 'not known' : `${fineMm(allowance.mm)}, ${fasteners[allowance.fastener]}`,
      linesUp === false ? 'no room as laid' : '',
    ]),
  ]);

const fasteners = { fixed: 'one part holds the bolt', floating: 'the bolt floats in both' } as const;

/** So many holes are named; of more their number does. */
const mostNamed = 12;

function leftTexts({ match, fixed, moving }: PartMatch): string[] {
  const left = (name: string, holes: readonly PatternHole[]): string[] => {
    if (holes.length === 0) return [];
    const named = holes.slice(0, mostNamed).map(({ id }) => id);
    const more = holes.length - named.length;
    return [`Of ${name}: ${inWords(more > 0 ? [...named, counted(more, 'other')] : named)}.`];
  };
  return [...left(fixed.name, match.fixedLeft), ...left(moving.name, match.movingLeft)];
}

function standardText(name: string, pattern: StandardPattern): string {
  const { standard, number, holes, found, thread, boltCircleMm, centre, rmsMm, source, turnRad } = pattern;
  const what =
    standard === 'SAE J617'
      ? `housing flange ${standard} No. ${number}`
      : `flywheel ${standard}, clutch size ${number} in`;
  return `${name} is drilled as ${what}: ${found.length} of its ${holes} holes within ${fineMm(rmsMm)} rms, bolt circle ${fineMm(boltCircleMm)}, thread ${thread}, middle at ${placeText(centre)}, turned by ${fineTurnText(turnRad)} (${source.basis}).`;
}

function carefully({ match, options }: PartMatch): string[] {
  return [
    `Holes farther than ${fineMm(options.reachMm)} off one another were taken for no pair, and any hole for the match of any other: look at what goes through them.`,
    'Bolts are reckoned with alone: dowels may hold the part elsewhere, and fettle check says what lines up then.',
    ...(match.allTried
      ? []
      : [`Only ${match.trials} positions were tried, not all there are: a better one may be left.`]),
  ];
}

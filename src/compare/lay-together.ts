import type { Finding, Reading } from '../files/finding.ts';
import { vec } from '../geometry/plane/vec.ts';
import type { Casting, Hole } from '../job/casting.ts';
import type { Fit, HolePair } from '../job/job.ts';
import type { Joint } from '../joint/joint.ts';
import { placeJob } from '../joint/place-job.ts';

/** Names of two holes that are one: of the first casting and of the second. */
export type NamePair = readonly [first: string, second: string];

/**
 * Two castings of one face, both read as they are seen looking at it, the second carried onto the first by its dowels, as
 * a moving part is carried home; the frame is that of the first one's drawing. Holes named alike check the
 * hand. Findings where fewer than two dowels pair them.
 */
export function layTogether(first: Casting, second: Casting, named: readonly NamePair[] | null): Reading<Joint> {
  const pairs = named ?? dowelsAlike(first, second);
  const findings = pairs.flatMap(([a, b]) => [...unknownHole(first, a), ...unknownHole(second, b)]);
  if (findings.length > 0) return { ok: false, findings };
  if (pairs.length < 2) return { ok: false, findings: [tooFew(second, pairs.length)] };
  const dowels = pairs.map(([a, b]) => pairOf(first, second, a, b));
  const others = first.holes
    .filter(({ id }) => !pairs.some(([a]) => a === id) && holeNamed(second, id) !== undefined)
    .filter(({ id }) => !pairs.some(([, b]) => b === id))
    .map(({ id }) => pairOf(first, second, id, id));
  return placeJob({ fit: fitOf(first, second, dowels, others), fixed: first, moving: second, rotating: [] });
}

const holeNamed = ({ holes }: Casting, name: string): Hole | undefined => holes.find(({ id }) => id === name);

const pairOf = (first: Casting, second: Casting, a: string, b: string): HolePair => ({
  fixed: holeNamed(first, a) as Hole,
  moving: holeNamed(second, b) as Hole,
});

/** Dowels that have one name in both. */
const dowelsAlike = (first: Casting, second: Casting): NamePair[] =>
  first.holes
    .filter(({ id, kind }) => kind === 'dowel' && holeNamed(second, id)?.kind === 'dowel')
    .map(({ id }) => [id, id]);

const mostNamed = 8;

function unknownHole(casting: Casting, name: string): Finding[] {
  if (holeNamed(casting, name) !== undefined) return [];
  const ids = casting.holes.map(({ id }) => id);
  const expected = ids.length === 0 ? 'a part with holes' : `one of ${ids.slice(0, mostNamed).join(', ')}`;
  return [{ file: casting.file, at: '--dowels', found: name === '' ? 'no name' : `"${name}"`, expected }];
}

const tooFew = ({ file }: Casting, count: number): Finding => ({
  file,
  at: 'holes',
  found: `${count === 0 ? 'no dowel' : 'one dowel'} of the same name in both parts`,
  expected: 'two dowels or more, named alike or by --dowels D1=P1,D2=P2: they tell how the two lie',
});

/** Both stand still on one face: nothing is asked but how they lie. */
const fitOf = (first: Casting, second: Casting, dowels: readonly HolePair[], bolts: readonly HolePair[]): Fit => ({
  file: second.file,
  title: `${second.name} on ${first.name}`,
  units: first.units,
  axis: vec(0, 0),
  axisHole: null,
  dowels,
  bolts,
  legs: [],
  engagesAtMm: null,
  wander: null,
  clearance: { homeMm: 0, wayInMm: 0, rotatingMm: 0 },
  depthMarginMm: 0,
  cut: 'fixed',
  share: 0,
  cutter: null,
  cuttersMm: null,
  straight: false,
  minWallMm: null,
  registrationMm: null,
  nothingShares: true,
});

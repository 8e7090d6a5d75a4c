import { circleLoop } from '../../../src/geometry/plane/loop.ts';
import type { DepthRange, Hole } from '../../../src/job/casting.ts';
import type { Fit } from '../../../src/job/job.ts';
import { parseThread } from '../../../src/trade/threads.ts';
import type { Complaint } from './complaint.ts';
import type { GeosPlane, Shape } from './geos-plane.ts';
import type { CutPart } from './judge-room.ts';
import { chordMm, type Layer } from './layered-solid.ts';

/** Overlaps thinner than twice this come of chords and of outlines that only touch. */
const touchMm = 5e-3;

/** Depths that overlap by less only meet: ends in a plan's JSON are rounded. */
const roundMm = 1e-5;

/** A wall is kept to a micrometre, measured between chords. */
const wallSlackMm = 1e-3 + 4 * chordMm;

/** Something a cut must keep out of, or away from. */
interface Keepout {
  readonly what: 'hole' | 'hollow';
  readonly id: string;
  readonly depth: DepthRange | null;
  readonly shape: Shape;
  readonly keepMm: number | null;
}

/** Metal that is planned to go and may not, or lies too near a hole or a hollow. */
export function forbiddenCuts(geos: GeosPlane, { part, casting, layers }: CutPart, fit: Fit): Complaint[] {
  const guarded = guardedIn(geos, casting, fit);
  const keeps = casting.doNotCut.map((keep) => ({ ...keep, shape: geos.region(keep.loops, chordMm) }));
  return layers.flatMap((layer) =>
    layer.sections.flatMap(({ section, cut }) => {
      if (geos.isEmpty(cut)) return [];
      const about = { part, depthMm: middleOf(layer) };
      const closed = layer.sections
        .filter((other) => !other.section.mayCut)
        .flatMap((other) =>
          overlap(geos, cut, other.metal, {
            ...about,
            what: 'not-offered',
            of: `${section.id} into ${other.section.id}`,
          }),
        );
      const kept = keeps
        .filter(({ depth }) => gapMm(layer, depth) < -roundMm)
        .flatMap(({ id, shape }) =>
          overlap(geos, cut, shape, { ...about, what: 'do-not-cut', of: `${section.id} into ${id}` }),
        );
      const near = guarded.flatMap((one) =>
        nearness(geos, cut, layer, one, { part, of: `${section.id} at ${one.id}` }),
      );
      return [...closed, ...kept, ...near];
    }),
  );
}

function nearness(
  geos: GeosPlane,
  cut: Shape,
  layer: Layer,
  { what, depth, shape, keepMm }: Keepout,
  about: Pick<Complaint, 'part' | 'of'>,
): Complaint[] {
  const along = gapMm(layer, depth);
  const depthMm = middleOf(layer);
  const inside = along < -roundMm ? overlap(geos, cut, shape, { ...about, depthMm, what: `in-${what}` }) : [];
  if (inside.length > 0 || keepMm === null) return inside;
  const mm = Math.hypot(geos.distanceMm(cut, shape), Math.max(0, along));
  if (mm >= keepMm - wallSlackMm) return [];
  const [{ x, y }] = geos.nearestPoints(cut, shape);
  return [{ ...about, what: `near-${what}`, where: [x, y], depthMm, mm, askedMm: keepMm }];
}

function overlap(
  geos: GeosPlane,
  a: Shape,
  b: Shape,
  about: Pick<Complaint, 'what' | 'part' | 'of' | 'depthMm'>,
): Complaint[] {
  const both = geos.intersection(a, b);
  const inside = geos.buffer(both, -touchMm, 4);
  const at = geos.bounds(inside);
  if (at === null) return [];
  const [first] = geos.rings(inside)[0] ?? [];
  return [{ ...about, where: [first?.x ?? at.x0, first?.y ?? at.y0], mm: thicknessMm(geos, both), askedMm: null }];
}

/** About how thick a shape is at its thickest: twice what it can be shrunk by. */
function thicknessMm(geos: GeosPlane, shape: Shape): number {
  let mm = touchMm;
  while (!geos.isEmpty(geos.buffer(shape, -1.5 * mm, 4))) mm *= 1.5;
  return 2 * mm;
}

function guardedIn(geos: GeosPlane, { holes, hollows }: CutPart['casting'], fit: Fit): Keepout[] {
  const bored = holes.flatMap((hole): Keepout[] => {
    const diameterMm = widthMm(hole);
    if (hole.mayBreak || diameterMm === null) return [];
    const { id, depth, at } = hole;
    const keepMm = keepOf(hole.keepWallMm, fit) ?? diameterMm / 2;
    return [{ what: 'hole', id, depth, shape: geos.region([circleLoop(at, diameterMm / 2)], chordMm), keepMm }];
  });
  const hollow = hollows.map(
    ({ id, depth, loops, keepWallMm }): Keepout => ({
      what: 'hollow',
      id,
      depth,
      shape: geos.region(loops, chordMm),
      keepMm: keepOf(keepWallMm, fit),
    }),
  );
  return [...bored, ...hollow];
}

function keepOf(keepWallMm: number | null, { minWallMm }: Fit): number | null {
  const asked = [keepWallMm, minWallMm].filter((mm) => mm !== null);
  return asked.length === 0 ? null : Math.max(...asked);
}

/** How wide a hole is: as bored, or over its thread where that is wider. */
function widthMm({ diameterMm, thread }: Hole): number | null {
  const widths = [diameterMm, thread === null ? null : (parseThread(thread)?.majorMm ?? null)].filter(
    (mm) => mm !== null,
  );
  return widths.length === 0 ? null : Math.max(...widths);
}

/** How far apart two ranges of depth lie along the crank; below nothing where they overlap, without depth everywhere. */
const gapMm = (a: DepthRange, b: DepthRange | null): number =>
  b === null ? Number.NEGATIVE_INFINITY : Math.max(a.fromMm - b.toMm, b.fromMm - a.toMm);

export function middleOf({ fromMm, toMm }: DepthRange): number {
  const middle = (fromMm + toMm) / 2;
  if (Number.isFinite(middle)) return middle;
  return Number.isFinite(fromMm) ? fromMm + 1 : Number.isFinite(toMm) ? toMm - 1 : 0;
}

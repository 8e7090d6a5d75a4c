import { edgeOfCircle } from '../../geometry/plane/edge.ts';
import { polar, type Vec, vec } from '../../geometry/plane/vec.ts';
import type { Hole } from '../../job/casting.ts';
import type { Joint } from '../../joint/joint.ts';
import { minorDiameterMm, parseThread } from '../../trade/threads.ts';
import { circle, cross, layer, outline, run } from '../scene/marks.ts';
import type { Layer, Mark } from '../scene/scene.ts';
import type { Sizes } from '../scene/sizes.ts';

/** The holes of both parts: the fixed part's as drawing practice has them, the moving part's as plain circles. */
export function holeLayers({ fixed, moving }: Joint, sizes: Sizes): Layer[] {
  const dowels = fixed.holes.filter(({ kind }) => kind === 'dowel');
  const reach = (hole: Hole): number => holeRadius(hole, sizes) + 0.4 * sizes.textMm;
  return [
    layer(
      'centre-line',
      fixed.holes.flatMap((hole) => cross(hole.at, reach(hole))),
    ),
    layer(
      'hole',
      fixed.holes.flatMap((hole) => holeMarks(hole, sizes)),
    ),
    layer(
      'dowel',
      dowels.flatMap((hole) => dowelMarks(hole.at, holeRadius(hole, sizes))),
    ),
    layer(
      'moving-hole',
      moving.holes.map((hole) => circle(hole.at, holeRadius(hole, sizes))),
    ),
  ];
}

/** The radius a hole is drawn with; a small one where its size is not known. */
export function holeRadius({ diameterMm, thread }: Hole, { textMm }: Pick<Sizes, 'textMm'>): number {
  const diameter = diameterMm ?? (thread === null ? null : (parseThread(thread)?.majorMm ?? null));
  return diameter === null ? 0.45 * textMm : diameter / 2;
}

function holeMarks(hole: Hole, sizes: Sizes): Mark[] {
  const radius = holeRadius(hole, sizes);
  if (hole.kind !== 'tapped' && hole.kind !== 'stud') return [circle(hole.at, radius)];
  // a thread is a circle inside three quarters of one (ISO 6410, from memory)
  const sweepRad = 1.5 * Math.PI;
  const arc = { ...edgeOfCircle(hole.at, radius), sweepRad, b: polar(hole.at, radius, sweepRad) };
  return [run([arc]), circle(hole.at, minorRadius(hole) ?? 0.84 * radius)];
}

function minorRadius({ thread }: Hole): number | null {
  const size = thread === null ? null : parseThread(thread);
  return size === null || size.pitchMm === null ? null : minorDiameterMm(size.majorMm, size.pitchMm) / 2;
}

/** Two opposite quarters of its circle filled: told from a bolt hole at a glance, in any print. */
export function dowelMarks(at: Vec, radius: number): Mark[] {
  const quarter = Math.tan(Math.PI / 8);
  const wedge = (turn: 1 | -1): Mark =>
    outline([
      {
        kind: 'path',
        vertices: [
          { ...at, bulge: 0 },
          { ...vec(at.x + turn * radius, at.y), bulge: quarter },
          { ...vec(at.x, at.y + turn * radius), bulge: 0 },
        ],
      },
    ]);
  return [wedge(1), wedge(-1)];
}

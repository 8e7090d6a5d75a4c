import type { OpenRunFile, PartDraft } from '../../../src/files/job-file.ts';
import type { Vec } from '../../../src/geometry/plane/vec.ts';
import { alongEdge, type XY, xyOf } from '../../job/arc.ts';
import { at } from '../../job/point-edits.ts';
import { runsOf } from '../../job/run-edits.ts';
import type { Size } from '../../stage/view.ts';
import { outlineWords as words } from '../../words/outlines.ts';
import { asksDowels } from './dowel-question.tsx';
import { bendable, inPane, middleOf, type Sheet } from './hit.ts';
import { Names } from './names.tsx';
import { circleOf, type Looking, pointsOf, type Selection } from './selection.ts';

/** What all turns about, by its own name. */
export interface Axis {
  readonly at: XY;
  readonly name: string;
}

interface Props {
  readonly sheet: Sheet;
  readonly looking: Looking;
  readonly snap: XY | null;
  readonly axis: Axis | null;
  readonly pane: Size;
}

/** What keeps its size on the drawing: points to take hold of, marks of metal, names of holes. In pixels of the pane. */
export function Handles({ sheet, looking, snap, axis, pane }: Props) {
  const { chosen, tool, opened } = looking;
  const pending =
    tool.kind === 'circle' ? tool.through : tool.kind === 'trace' && typeof tool.arc === 'object' ? [tool.arc] : [];
  const part = sheet.job.parts[sheet.file];
  const isAsked = part !== undefined && asksDowels(part);
  const fixed = fixedPoints(axis);
  const holes = part !== undefined && (opened === 'holes' || isAsked) ? holeNames(part, chosen) : [];
  const runs = runsOf(sheet.job).filter((run) => run.part === sheet.file);
  return (
    <g class="handles">
      {fixed.map(({ at, isAxis }) => (
        <FixedPoint key={at.join()} at={inPane(sheet, at)} isAxis={isAxis} />
      ))}
      {runs.map((run, i) => (
        <MetalMarks key={`run ${i}`} sheet={sheet} run={run} />
      ))}
      <Names names={[...fixed, ...holes].map(({ at, text }) => ({ text, at: inPane(sheet, at) }))} pane={pane} />
      {chosen !== null && <ChosenHandles sheet={sheet} chosen={chosen} />}
      {pending.map((point) => (
        <Dot key={point.join()} kind="pending" at={inPane(sheet, point)} />
      ))}
      {snap !== null && <Dot kind="snap" at={inPane(sheet, snap)} r={11} />}
    </g>
  );
}

interface FixedPoint {
  readonly at: XY;
  readonly text: string;
  readonly isAxis: boolean;
}

/** Where figures are counted from, and what all turns about. */
function fixedPoints(axis: Axis | null): FixedPoint[] {
  const atOrigin = axis?.at.every((value) => value === 0) ? axis : null;
  const text = atOrigin === null ? words.origin : words.axisAtOrigin(atOrigin.name);
  const origin: FixedPoint = { at: [0, 0], text, isAxis: false };
  return axis === null || atOrigin !== null ? [origin] : [{ at: axis.at, text: axis.name, isAxis: true }, origin];
}

const FixedPoint = ({ at: { x, y }, isAxis }: { readonly at: Vec; readonly isAxis: boolean }) => (
  <g class="fixed-point">
    <path d={`M${x - 12} ${y}H${x + 12}M${x} ${y - 12}V${y + 12}`} />
    {isAxis && <circle cx={x} cy={y} r={8} />}
  </g>
);

function Dot({ kind, at: { x, y }, r = 6 }: { readonly kind: string; readonly at: Vec; readonly r?: number }) {
  return <circle class={kind} cx={x} cy={y} r={r} />;
}

function ChosenHandles({ sheet, chosen }: { readonly sheet: Sheet; readonly chosen: Selection }) {
  const points = pointsOf(sheet.job, sheet.file, chosen);
  const circle = circleOf(sheet.job, sheet.file, chosen);
  const hole = chosen.kind === 'hole' ? sheet.job.parts[sheet.file]?.holes?.[chosen.hole] : undefined;
  if (hole !== undefined) return <Dot kind="vertex now" at={inPane(sheet, hole.at)} r={8} />;
  if (circle !== null) {
    const [x, y] = circle.circle;
    return (
      <>
        <Dot kind="vertex" at={inPane(sheet, [x, y])} />
        <Dot kind="bend" at={inPane(sheet, [x + circle.radius, y])} />
      </>
    );
  }
  if (points === null || chosen.kind === 'hole') return null;
  return (
    <>
      {bendable(sheet, points, chosen.kind === 'loop').map((edge) => (
        <Dot key={`bend ${edge}`} kind="bend" at={inPane(sheet, middleOf(points, edge))} r={4} />
      ))}
      {points.map((point, i) => (
        <Dot
          key={`vertex ${i}`}
          kind={i === chosen.vertex ? 'vertex now' : 'vertex'}
          at={inPane(sheet, xyOf(point))}
          r={i === chosen.vertex ? 8 : 5}
        />
      ))}
    </>
  );
}

/** The chosen hole before dowels, and these before the others. */
function holeNames({ holes = [] }: PartDraft, chosen: Selection | null): { readonly text: string; readonly at: XY }[] {
  const rank = (i: number): number =>
    chosen?.kind === 'hole' && chosen.hole === i ? 0 : holes[i]?.kind === 'dowel' ? 1 : 2;
  return holes.map(({ id, at }, i) => ({ text: id, at, rank: rank(i) })).sort((a, b) => a.rank - b.rank);
}

const markPx = 10;
const apartPx = 24;

/** Short strokes on the metal's side of a run, square to it. */
function MetalMarks({ sheet, run: { points, metal } }: { readonly sheet: Sheet; readonly run: OpenRunFile }) {
  const marks: string[] = [];
  for (let i = 0; i + 1 < points.length; i++) {
    const [a, b, bulge] = [xyOf(at(points, i)), xyOf(at(points, i + 1)), at(points, i)[2] ?? 0];
    const [from, to] = [inPane(sheet, a), inPane(sheet, b)];
    const count = Math.max(1, Math.min(200, Math.round(Math.hypot(to.x - from.x, to.y - from.y) / apartPx)));
    for (let k = 0; k < count; k++) {
      const place = (t: number): Vec => inPane(sheet, alongEdge(a, b, bulge, t));
      const t = (k + 0.5) / count;
      marks.push(markAt(place(t - 0.01 / count), place(t), place(t + 0.01 / count), metal));
    }
  }
  return <path class="metal" d={marks.join('')} />;
}

function markAt(before: Vec, { x, y }: Vec, after: Vec, metal: 'left' | 'right'): string {
  const long = Math.hypot(after.x - before.x, after.y - before.y) || 1;
  const reach = (metal === 'left' ? markPx : -markPx) / long;
  // y runs down here: left of a way (dx, dy) is (dy, −dx)
  return `M${x} ${y}l${(after.y - before.y) * reach} ${-(after.x - before.x) * reach}`;
}

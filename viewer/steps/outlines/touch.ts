import type { JobFile } from '../../../src/files/job-file.ts';
import type { Vec } from '../../../src/geometry/plane/vec.ts';
import { apart, circleThrough, type XY, xyOf } from '../../job/arc.ts';
import {
  dowelsOf,
  holderAt,
  type Place,
  withDowel,
  withHole,
  withHoleChanged,
  withLoop,
  withPart,
} from '../../job/part-edits.ts';
import { at, withEdgeOver, withVertexAt, withVertexOn } from '../../job/point-edits.ts';
import { closedRun, runsOf, withPointAdded, withRun, withRunClosed, withRunFrom } from '../../job/run-edits.ts';
import { reachPx, type Touching } from '../../stage/gestures.ts';
import { outlineWords as words } from '../../words/outlines.ts';
import type { OverPicture } from '../photo/over-picture.ts';
import { edgeAt, type Handle, handleAt, holeAt, inDrawing, type Sheet, snapAt, thingAt } from './hit.ts';
import {
  choosing,
  circleOf,
  type Looking,
  openedSection,
  pointsOf,
  type Selection,
  type Tool,
  withCircle,
  withPoints,
} from './selection.ts';

export type Edit = (change: (job: JobFile) => JobFile, gesture?: string) => void;

/** What a touch can see and do; asked anew at each touch, so that it is never of yesterday. */
export interface TraceContext {
  readonly sheet: Sheet;
  readonly looking: Looking;
  readonly look: (changes: Partial<Looking>) => void;
  readonly edit: Edit;
  /** The picture that is traced over. */
  readonly over: OverPicture | null;
  /** Shows the place under a finger larger; null: no longer. */
  readonly magnify: (place: Vec | null) => void;
  /** Shows what a tap would snap to. */
  readonly snap: (point: XY | null) => void;
}

interface Grip {
  readonly held: Handle;
  readonly gesture: string;
  readonly from: Vec;
  readonly before: JobFile;
  moved: boolean;
}

/** A hand trembles by so much before it drags. */
const tremblePx = 3;
let grips = 0;

/** What presses on the drawing do while outlines are traced. */
export function touchingOf(context: () => TraceContext): Touching {
  let grip: Grip | null = null;
  let lastGrip: Grip | null = null;
  const letGo = (): void => {
    grip = null;
    context().magnify(null);
    context().snap(null);
  };
  return {
    onPress: (place, event) => {
      const { sheet, looking, look } = context();
      lastGrip = null;
      if (['circle', 'hole', 'dowels'].includes(looking.tool.kind)) return false;
      const held = handleAt(sheet, looking.chosen, place, reachPx(event));
      if (held === null) return false;
      grip = { held, gesture: `drag ${++grips}`, from: place, before: sheet.job, moved: false };
      if (held.kind === 'vertex') look({ chosen: withVertex(looking.chosen, held.vertex) });
      return true;
    },
    onDrag: (place, event) => {
      if (grip === null) return;
      grip.moved ||= Math.hypot(place.x - grip.from.x, place.y - grip.from.y) > tremblePx;
      if (!grip.moved) return;
      drag(context(), grip, place);
      if (event.pointerType === 'touch') context().magnify(place);
    },
    onRelease: () => {
      lastGrip = grip;
      letGo();
    },
    onAbandon: () => {
      if (grip?.moved) context().edit(takenBack(grip), grip.gesture);
      letGo();
    },
    onTap: (place, event) => {
      if (lastGrip === null) tap(context(), place, reachPx(event));
      else if (!lastGrip.moved && lastGrip.held.kind === 'vertex') tapVertex(context(), lastGrip.held.vertex);
      lastGrip = null;
      return true;
    },
    onHover: (place) => {
      const { sheet, looking, snap } = context();
      snap(place === null || looking.tool.kind === 'choose' ? null : snapAt(sheet, place, () => false));
    },
  };
}

const takenBack =
  ({ before }: Grip) =>
  (): JobFile =>
    before;

const withVertex = (chosen: Selection | null, vertex: number | null): Selection | null =>
  chosen === null || chosen.kind === 'hole' ? chosen : { ...chosen, vertex };

function drag({ sheet, looking: { chosen }, edit, snap }: TraceContext, { held, gesture }: Grip, place: Vec): void {
  if (chosen === null) return;
  const { job, file } = sheet;
  const snapped = held.kind === 'bend' ? null : snapAt(sheet, place, isHeld(job, file, chosen, held));
  const to = snapped ?? inDrawing(sheet, place);
  snap(snapped);
  edit((now) => dragged(now, file, chosen, held, to), gesture);
}

/** A point does not snap to itself. */
function isHeld(job: JobFile, file: string, chosen: Selection, held: Handle): (point: XY) => boolean {
  const points = pointsOf(job, file, chosen);
  const own: XY | undefined =
    held.kind === 'vertex' && points !== null
      ? xyOf(at(points, held.vertex))
      : held.kind === 'hole'
        ? job.parts[file]?.holes?.[held.hole]?.at
        : circleOf(job, file, chosen)?.circle;
  return (point) => own !== undefined && apart(point, own) === 0;
}

function dragged(job: JobFile, file: string, chosen: Selection, held: Handle, to: XY): JobFile {
  const points = pointsOf(job, file, chosen);
  const circle = circleOf(job, file, chosen);
  if (held.kind === 'hole') return withPart(job, file, (part) => withHoleChanged(part, held.hole, { at: [...to] }));
  if (held.kind === 'vertex' && points !== null) {
    return withPoints(job, file, chosen, withVertexAt(points, held.vertex, to));
  }
  if (held.kind === 'bend' && points !== null)
    return withPoints(job, file, chosen, withEdgeOver(points, held.edge, to));
  if (held.kind === 'centre' && circle !== null) return withCircle(job, file, chosen, { ...circle, circle: [...to] });
  const radius = circle === null ? 0 : apart(circle.circle, to);
  return held.kind === 'rim' && circle !== null && radius > 0
    ? withCircle(job, file, chosen, { ...circle, radius })
    : job;
}

/** The hole that is tapped is a dowel, or none after all; with two of them the question is answered. */
function sayDowelAt({ sheet, look, edit }: TraceContext, place: Vec, reachPx: number): void {
  const hole = holeAt(sheet, place, reachPx);
  const part = sheet.job.parts[sheet.file];
  if (hole === null || part === undefined) return;
  edit((job) => withPart(job, sheet.file, (old) => withDowel(old, hole)));
  if (dowelsOf(withDowel(part, hole)).length >= 2) look({ tool: choosing });
}

function tap(context: TraceContext, place: Vec, reachPx: number): void {
  const { sheet, looking } = context;
  if (looking.tool.kind === 'choose') chooseAt(context, place, reachPx);
  else if (looking.tool.kind === 'dowels') sayDowelAt(context, place, reachPx);
  else pointTo(context, snapAt(sheet, place, () => false) ?? inDrawing(sheet, place));
}

/** Gives the tool its next point, tapped or typed. */
export function pointTo(context: TraceContext, to: XY) {
  const { tool } = context.looking;
  switch (tool.kind) {
    case 'choose':
    case 'dowels':
      return;
    case 'trace':
      return traceTo(context, tool, to);
    case 'circle':
      return circleOver(context, tool, to);
    case 'hole':
      return addHoleAt(context, to);
  }
}

/** On an edge of what is chosen a tap puts a point; elsewhere it chooses. */
function chooseAt({ sheet, looking: { chosen }, look, edit }: TraceContext, place: Vec, reachPx: number) {
  const { job, file } = sheet;
  const points = pointsOf(job, file, chosen);
  const edge = points && edgeAt(sheet, points, chosen?.kind === 'loop', place, reachPx);
  if (chosen !== null && points !== null && edge !== null) {
    edit((now) => withPoints(now, file, chosen, withVertexOn(points, edge, inDrawing(sheet, place))));
    return look({ chosen: withVertex(chosen, edge + 1), said: '' });
  }
  look({ ...lookingAt(sheet, thingAt(sheet, place, reachPx)), said: '' });
}

/** What is chosen is opened too. */
export function lookingAt({ job, file }: Sheet, chosen: Selection | null): Partial<Looking> {
  switch (chosen?.kind) {
    case undefined:
      return { chosen };
    case 'hole':
      return { chosen, opened: 'holes' };
    case 'loop':
      return { chosen, opened: chosen.place };
    case 'run': {
      const id = runsOf(job)[chosen.run]?.section;
      const index = job.parts[file]?.sections.findIndex((section) => section.id === id) ?? -1;
      return { chosen, opened: index < 0 ? null : { list: 'sections', index } };
    }
  }
}

/** On the first point of the line that is traced, a tap closes it. */
function tapVertex(context: TraceContext, vertex: number): void {
  const { sheet, looking } = context;
  const { chosen, tool } = looking;
  if (tool.kind === 'trace' && chosen?.kind === 'run' && vertex === 0) closeRun(context, chosen.run, arcPoint(tool));
  else if (tool.kind === 'trace') {
    const points = pointsOf(sheet.job, sheet.file, chosen);
    if (tool.arc === 'next' && points !== null) traceTo(context, tool, xyOf(at(points, vertex)));
  }
}

const arcPoint = (tool: Tool): XY | null => (tool.kind === 'trace' && typeof tool.arc === 'object' ? tool.arc : null);

/** Closes a run into an outline and chooses it. */
export function closeRun(
  { sheet: { job, file }, looking, look, edit }: TraceContext,
  index: number,
  over: XY | null = null,
) {
  const run = runsOf(job)[index];
  const loop = run === undefined ? null : closedRun(run, over);
  if (loop === null) return look({ said: words.closesNothing });
  edit((now) => withRunClosed(now, index, loop));
  look({ chosen: chosenLast(job, file, looking.opened), tool: choosing, said: '' });
}

/** The outline that is about to be added to a place. */
export function chosenLast(job: JobFile, file: string, opened: Looking['opened']): Selection | null {
  if (opened === null || typeof opened === 'string') return null;
  const part = job.parts[file];
  const loop = part && holderAt(part, opened)?.loops.length;
  return loop === undefined ? null : { kind: 'loop', place: opened, loop, vertex: null };
}

function traceTo({ sheet: { job, file }, looking, look, edit }: TraceContext, tool: Tool & { kind: 'trace' }, to: XY) {
  const { chosen } = looking;
  const run = chosen?.kind === 'run' ? runsOf(job)[chosen.run] : undefined;
  if (chosen?.kind !== 'run' || run === undefined) {
    const section = openedSection(job, file, looking.opened);
    if (section === null) return;
    edit((now) => withRunFrom(now, file, section, to));
    return look({ chosen: { kind: 'run', run: runsOf(job).length, vertex: 0 }, said: '' });
  }
  if (tool.arc === 'next') return look({ tool: { kind: 'trace', arc: to } });
  edit((now) => withRun(now, chosen.run, (old) => withPointAdded(old, to, arcPoint(tool))));
  look({ chosen: { ...chosen, vertex: run.points.length }, tool: { kind: 'trace', arc: 'no' }, said: '' });
}

function circleOver(
  { sheet: { job, file }, looking, look, edit }: TraceContext,
  tool: Tool & { kind: 'circle' },
  to: XY,
) {
  const [a, b] = tool.through;
  if (a === undefined || b === undefined) return look({ tool: { ...tool, through: [...tool.through, to] }, said: '' });
  const circle = circleThrough(a, b, to);
  const place = looking.opened as Place;
  if (circle === null) return look({ tool: { ...tool, through: [] }, said: words.inLine });
  edit((now) => withPart(now, file, (part) => withLoop(part, place, circle)));
  look({ tool: choosing, chosen: chosenLast(job, file, place), said: '' });
}

function addHoleAt({ sheet: { job, file }, look, edit }: TraceContext, to: XY): void {
  const hole = job.parts[file]?.holes?.length ?? 0;
  edit((now) => withPart(now, file, (part) => withHole(part, 'bolt', to)));
  // the next one is tapped straight away
  look({ chosen: { kind: 'hole', hole }, opened: 'holes', said: '' });
}

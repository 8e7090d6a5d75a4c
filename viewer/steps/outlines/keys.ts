import { withHoleChanged, withoutHole, withPart } from '../../job/part-edits.ts';
import { at, withoutVertex, withVertexAt } from '../../job/point-edits.ts';
import { nudge } from '../../words/outlines.ts';
import { choosing, pointsOf, type Selection, withPoints } from './selection.ts';
import { closeRun, type TraceContext } from './touch.ts';

const ways: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
};

/** What keys do to what is chosen; true where the key had a use. */
export function pressKey(context: TraceContext, event: KeyboardEvent): boolean {
  const { looking, look } = context;
  const { chosen, tool } = looking;
  if (event.ctrlKey || event.metaKey || event.altKey) return false;
  if (event.key === 'Escape' && (chosen !== null || tool.kind !== 'choose')) {
    look(tool.kind === 'choose' ? { chosen: null } : { tool: choosing });
    return true;
  }
  if (chosen === null) return false;
  const way = ways[event.key];
  if (way !== undefined) return nudged(context, chosen, way, event.shiftKey ? 10 : 1);
  if (event.key === 'Delete' || event.key === 'Backspace') return deleted(context, chosen);
  if (event.key === 'Enter' && chosen.kind === 'run' && tool.kind === 'trace') {
    closeRun(context, chosen.run);
    return true;
  }
  return false;
}

function nudged(
  { sheet: { job, file }, edit }: TraceContext,
  chosen: Selection,
  [dx, dy]: readonly [number, number],
  steps: number,
): boolean {
  const part = job.parts[file];
  const step = steps * nudge(part?.units ?? 'mm');
  // no digits that only arithmetic brings
  const beside = ([x, y]: readonly [number, number, ...unknown[]]): [number, number] => [
    Number((x + dx * step).toFixed(6)),
    Number((y + dy * step).toFixed(6)),
  ];
  const hole = chosen.kind === 'hole' ? part?.holes?.[chosen.hole] : undefined;
  if (chosen.kind === 'hole') {
    if (hole === undefined) return false;
    edit(
      (now) => withPart(now, file, (old) => withHoleChanged(old, chosen.hole, { at: beside(hole.at) })),
      `nudge ${hole.id}`,
    );
    return true;
  }
  const points = pointsOf(job, file, chosen);
  const { vertex } = chosen;
  if (points === null || vertex === null || vertex >= points.length) return false;
  const moved = withVertexAt(points, vertex, beside(at(points, vertex)));
  edit((now) => withPoints(now, file, chosen, moved), `nudge ${JSON.stringify(chosen)}`);
  return true;
}

function deleted({ sheet: { job, file }, look, edit }: TraceContext, chosen: Selection): boolean {
  if (chosen.kind === 'hole') {
    edit((now) => withoutHole(now, file, chosen.hole));
    look({ chosen: null });
    return true;
  }
  const points = pointsOf(job, file, chosen);
  const { vertex } = chosen;
  if (points === null || vertex === null) return false;
  const rest = chosen.kind === 'run' ? points.filter((_, i) => i !== vertex) : withoutVertex(points, vertex);
  edit((now) => withPoints(now, file, chosen, rest));
  look({ chosen: rest === null || rest.length === 0 ? null : { ...chosen, vertex: Math.max(0, vertex - 1) } });
  return true;
}

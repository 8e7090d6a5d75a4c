import type { Note } from './drawing.ts';
import { isCircle } from './holes.ts';
import type { Outlines } from './outlines/outlines.ts';

/** What was left out of a section's outlines without harm to them. */
export function sectionNotes(id: string, { doubles, dots, empty }: Outlines): Note[] {
  return [
    ...(doubles > 0 ? [{ code: 'double', text: `${id}: ${doubles} drawn over another and dropped` }] : []),
    ...(dots > 0 ? [{ code: 'no-length', text: `${id}: ${dots} of no length dropped` }] : []),
    ...(empty > 0 ? [{ code: 'no-width', text: `${id}: ${empty} there and back on one line, dropped` }] : []),
  ];
}

/** What stands on a layer of holes and is no circle. */
export function holeNotes(layer: string, { loops, gaps, branches }: Outlines): Note[] {
  const others = loops.filter((loop) => !isCircle(loop)).length;
  const open = gaps.length + branches.length;
  if (others + open === 0) return [];
  const kinds = [
    ...(others > 0 ? [`${others} closed outline${others === 1 ? '' : 's'}`] : []),
    ...(open > 0 ? ['open lines'] : []),
  ];
  return [{ code: 'no-circle', text: `${layer}: ${kinds.join(' and ')} left out, since only circles are holes` }];
}

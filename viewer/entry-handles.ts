import { effect, untracked } from '@preact/signals';
import type { PositionFile } from '../src/files/fit-file.ts';
import type { JobFile } from '../src/files/job-file.ts';
import type { Vec } from '../src/geometry/plane/vec.ts';
import { mmIn } from '../src/job/length-text.ts';
import type { App } from './app.ts';
import type { Pane } from './stage/pane.ts';
import { svgElement } from './stage/svg-element.ts';
import { toPane, toPlane } from './stage/view.ts';
import { words } from './words.ts';

/** A handle this near is taken, pixels. */
const takePx = 30;
const handlePx = 13;
let grips = 0;

/** How finely a hand sets a position: degrees, and lengths in the units of the fit. */
export const handSteps = { mm: { turn: 0.5, standOff: 0.5 }, in: { turn: 0.5, standOff: 0.02 } } as const;

/**
 * Two handles on the drawing that change the way in: one turns about the crank by how much the part goes on turned, one
 * on the side view sets the stand-off at which it swings home. Gives back how to take them away.
 */
export function entryHandles(app: App, face: Pane, side: Pane): () => void {
  const turnMarks = svgElement('g');
  const offMarks = svgElement('g');
  let held: { readonly before: JobFile | null; readonly gesture: string } | null = null;

  const turnAt = (): Vec | null => {
    const turn = entryTurn(app.job.now.value?.fit.offerUp);
    const box = app.answers.checked.value?.pictures.extents.face;
    if (turn === null || box === undefined) return null;
    const reach = Math.max(box.maxX, box.maxY) * 0.9;
    const rad = ((90 + turn) * Math.PI) / 180;
    return toPane(face.view(), { x: reach * Math.cos(rad), y: reach * Math.sin(rad) });
  };
  const offAt = (): Vec | null => {
    const off = swingStandOffMm(app);
    const checked = app.answers.checked.value;
    if (off === null || checked === null) return null;
    const { sideSign, extents } = checked.pictures;
    return toPane(side.view(), { x: sideSign * off, y: extents.side.minY });
  };
  const draw = (): void => {
    const crank = toPane(face.view(), { x: 0, y: 0 });
    show(face, turnMarks, turnAt(), crank, words.turnHandle);
    const off = offAt();
    show(side, offMarks, off, off && { x: off.x, y: 0 }, words.standOffHandle);
  };
  const near = (place: Vec | null, at: Vec): boolean =>
    place !== null && Math.hypot(place.x - at.x, place.y - at.y) < takePx;
  const edit = (change: (position: PositionFile) => PositionFile): void =>
    app.job.edit(
      ({ fit, ...job }) => ({ ...job, fit: { ...fit, offerUp: (fit.offerUp ?? []).map(change) } }),
      held?.gesture,
    );
  const take = (place: Vec | null, at: Vec): boolean => {
    held = near(place, at) ? { before: app.job.now.value, gesture: `entry ${++grips}` } : null;
    return held !== null;
  };
  const onAbandon = (): void => {
    const { before, gesture } = held ?? {};
    if (before) app.job.edit(() => before, gesture);
  };

  const letGoOfFace = face.setTouching({
    onPress: (at) => take(turnAt(), at),
    onAbandon,
    onDrag: (at) => {
      const { x, y } = toPlane(face.view(), at);
      const before = entryTurn(app.job.now.value?.fit.offerUp);
      const angle = (((Math.atan2(y, x) * 180) / Math.PI - 90 + 540) % 360) - 180;
      const turn = Math.round(angle / handSteps.mm.turn) * handSteps.mm.turn;
      // at no turn there would be no handle to take hold of again
      if (before !== null && turn !== 0)
        edit((position) => (position.turn === before ? { ...position, turn } : position));
      draw();
    },
  });
  const letGoOfSide = side.setTouching({
    onPress: (at) => take(offAt(), at),
    onAbandon,
    onDrag: (at) => {
      const before = swingStandOffMm(app);
      const [checked, job] = [app.answers.checked.value, app.job.now.value];
      if (before === null || checked === null || job === null) return;
      const { units } = job.fit;
      const step = handSteps[units].standOff;
      const along = (toPlane(side.view(), at).x * checked.pictures.sideSign) / mmIn(units);
      const standOff = Math.max(step, Math.round(along / step) * step);
      const was = before / mmIn(units);
      edit((position) =>
        position.standOff === was ? { ...position, standOff: Number(standOff.toFixed(3)) } : position,
      );
      draw();
    },
  });
  const redraw = (): void => untracked(draw);
  const stops = [face.onView(redraw), side.onView(redraw), effect(draw)];
  return () => {
    for (const stop of stops) stop();
    letGoOfFace();
    letGoOfSide();
    turnMarks.remove();
    offMarks.remove();
  };
}

/** The turn the part goes on with: the greatest on the way, either hand. */
function entryTurn(offerUp: readonly PositionFile[] = []): number | null {
  const turns = offerUp.flatMap(({ turn = 0 }) => (turn === 0 ? [] : [turn]));
  return turns.reduce<number | null>(
    (most, turn) => (most === null || Math.abs(turn) > Math.abs(most) ? turn : most),
    null,
  );
}

/** The stand-off at which it swings: that of the last position before home. */
function swingStandOffMm(app: App): number | null {
  const job = app.job.now.value;
  const before = job?.fit.offerUp?.at(-2)?.standOff;
  return job === null || before === undefined || before === 0 ? null : before * mmIn(job.fit.units);
}

function show(pane: Pane, marks: SVGElement, at: Vec | null, from: Vec | null, label: string): void {
  if (at === null || from === null) {
    marks.remove();
    return;
  }
  const handle = svgElement('circle', { class: 'handle', cx: at.x, cy: at.y, r: handlePx });
  const title = svgElement('title');
  title.textContent = label;
  handle.append(title);
  marks.replaceChildren(
    svgElement('path', { class: 'handle-line', d: `M${from.x},${from.y}L${at.x},${at.y}` }),
    handle,
  );
  pane.labels.append(marks);
}

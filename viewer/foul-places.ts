import type { Vec } from '../src/geometry/plane/vec.ts';
import type { FoulPlace } from './heavy/pictures-of.ts';
import { reachPx } from './stage/gestures.ts';
import type { Pane } from './stage/pane.ts';
import { type Extent, toPane, withRound } from './stage/view.ts';

interface Panes {
  readonly face: Pane;
  readonly side: Pane;
}

/** A touch on what is in the way, in either pane, goes there in both. */
export function touchFouls(panes: Panes, fouls: () => readonly FoulPlace[]): void {
  for (const view of ['face', 'side'] as const) {
    const pane = panes[view];
    pane.onTap((at, event) => {
      const [nearest] = fouls()
        .map((foul) => ({ foul, awayPx: awayFrom(foul[view], at, pane), mm: Math.hypot(...sizeOf(foul[view])) }))
        .filter(({ awayPx }) => awayPx < reachPx(event))
        .sort((a, b) => a.awayPx - b.awayPx || b.mm - a.mm);
      if (nearest === undefined) return;
      panes.face.goToTouched(withRound(nearest.foul.face));
      middleOn(panes.side, nearest.foul.side);
    });
  }
}

/** Goes to all that is in the way in one section. */
export function goToFoul({ face, side }: Panes, fouls: readonly FoulPlace[]): void {
  face.goTo(withRound(roundAll(fouls.map((foul) => foul.face))));
  middleOn(side, roundAll(fouls.map((foul) => foul.side)));
}

const sizeOf = ({ minX, maxX, minY, maxY }: Extent): [number, number] => [maxX - minX, maxY - minY];

const roundAll = (places: readonly Extent[]): Extent => ({
  minX: Math.min(...places.map(({ minX }) => minX)),
  maxX: Math.max(...places.map(({ maxX }) => maxX)),
  minY: Math.min(...places.map(({ minY }) => minY)),
  maxY: Math.max(...places.map(({ maxY }) => maxY)),
});

/** How far a place of a pane is from an extent, pixels; 0 on it. */
function awayFrom({ minX, maxX, minY, maxY }: Extent, at: Vec, pane: Pane): number {
  const [low, high] = [toPane(pane.view(), { x: minX, y: maxY }), toPane(pane.view(), { x: maxX, y: minY })];
  return Math.hypot(Math.max(0, low.x - at.x, at.x - high.x), Math.max(0, low.y - at.y, at.y - high.y));
}

/** The side view is level with the face already; only across it has a way of its own. */
function middleOn(side: Pane, { minX, maxX }: Extent): void {
  const { pxPerMm, origin } = side.view();
  side.setView({ pxPerMm, origin: { x: side.size().width / 2 - ((minX + maxX) / 2) * pxPerMm, y: origin.y } });
}

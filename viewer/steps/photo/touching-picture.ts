import type { JobFile, PartDraft, PictureFile } from '../../../src/files/job-file.ts';
import type { Vec } from '../../../src/geometry/plane/vec.ts';
import type { PictureSize } from '../../../src/intake/photo/orientation.ts';
import type { XY } from '../../job/arc.ts';
import { withoutTouch, withTouch, withTouchChanged } from '../../job/picture-edits.ts';
import { reachPx, type Touching } from '../../stage/gestures.ts';
import type { View } from '../../stage/view.ts';
import { photoWords as words } from '../../words/photo.ts';
import { isByDistance, type NextPlace, touchOf } from './known-places.ts';
import { isIn, pxInPane, pxUnder } from './sheet-of-picture.ts';

/** What a touch in a picture can see and do; asked anew at each touch. */
export interface PictureContext {
  readonly job: JobFile;
  readonly part: PartDraft;
  readonly picture: PictureFile;
  readonly size: PictureSize | null;
  readonly view: View;
  readonly next: NextPlace;
  readonly chosen: number | null;
  readonly edit: (change: (job: JobFile) => JobFile, gesture?: string) => void;
  readonly choose: (touch: number | null) => void;
  /** Once a place is touched, the next is to be found anew. */
  readonly goOn: () => void;
  readonly say: (text: string) => void;
  readonly magnify: (place: Vec | null) => void;
}

let grips = 0;

/** Presses while a picture is set straight: a tap touches the next place, a touched point is dragged. */
export function touchingPicture(context: () => PictureContext): Touching {
  let grip: { readonly touch: number; readonly gesture: string; readonly off: XY; readonly before: JobFile } | null =
    null;
  let held = false;
  const letGo = (): void => {
    grip = null;
    context().magnify(null);
  };
  return {
    onPress: (place, event) => {
      const { job, picture, view, choose, magnify } = context();
      const touch = touchAt(picture, view, place, reachPx(event));
      held = touch !== null;
      if (touch === null) return false;
      const under = pxUnder(view, place);
      const px: XY = picture.touches[touch]?.px ?? under;
      // it stays as far from the finger as it was taken hold of
      grip = { touch, gesture: `touch ${++grips}`, off: [px[0] - under[0], px[1] - under[1]], before: job };
      choose(touch);
      magnify(pxInPane(view, px));
      return true;
    },
    onDrag: (place) => {
      if (grip === null) return;
      const { view, picture, size, edit, magnify } = context();
      const [x, y] = pxUnder(view, place);
      const px: XY = [x + grip.off[0], y + grip.off[1]];
      if (size === null || !isIn(size, px)) return;
      const { touch } = grip;
      edit((job) => withTouchChanged(job, picture.id, touch, { px: [...px] }), grip.gesture);
      magnify(pxInPane(view, px));
    },
    onRelease: letGo,
    onAbandon: () => {
      if (grip !== null) {
        const { before, gesture } = grip;
        context().edit(() => before, gesture);
      }
      letGo();
    },
    onTap: (place) => {
      if (!held) touchNext(context(), place);
      held = false;
      return true;
    },
  };
}

function touchAt({ touches }: PictureFile, view: View, place: Vec, reachPx: number): number | null {
  let best: number | null = null;
  let least = reachPx;
  touches.forEach(({ px }, i) => {
    const { x, y } = pxInPane(view, px);
    const apart = Math.hypot(x - place.x, y - place.y);
    if (apart <= least) [least, best] = [apart, i];
  });
  return best;
}

/** Touches the next place where the pane is tapped, or in its middle. */
export function touchNext({ part, picture, size, view, next, edit, choose, goOn, say }: PictureContext, place: Vec) {
  const px = pxUnder(view, place);
  if (size === null || !isIn(size, px)) return;
  const touch = touchOf(part, next, px);
  if (touch === null) return say(isByDistance(picture) ? words.distanceWanted : words.placeWanted);
  const others = picture.touches.filter(({ hole }) => hole === undefined || hole !== touch.hole);
  if (picture.squareOn && others.length >= 2) return say(words.enoughForSquareOn);
  edit((job) => withTouch(job, picture.id, touch));
  choose(others.length);
  goOn();
  say('');
}

const ways: Readonly<Record<string, XY>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};

/** Keys move the chosen point by pixels of the picture, or remove it; true where the key had a use. */
export function pressPictureKey(context: PictureContext, event: KeyboardEvent): boolean {
  const { picture, size, view, chosen, edit, choose, magnify } = context;
  const touch = chosen === null ? undefined : picture.touches[chosen];
  if (event.ctrlKey || event.metaKey || event.altKey || chosen === null || touch === undefined) return false;
  const way = ways[event.key];
  if (way !== undefined) {
    const step = event.shiftKey ? 10 : 1;
    const px: XY = [touch.px[0] + way[0] * step, touch.px[1] + way[1] * step];
    if (size === null || !isIn(size, px)) return true;
    edit((job) => withTouchChanged(job, picture.id, chosen, { px: [...px] }), `nudge ${picture.id} ${chosen}`);
    magnify(pxInPane(view, px));
    return true;
  }
  if (event.key === 'Escape') {
    choose(null);
    magnify(null);
    return true;
  }
  if (event.key !== 'Delete' && event.key !== 'Backspace') return false;
  edit((job) => withoutTouch(job, picture.id, chosen));
  choose(null);
  magnify(null);
  return true;
}

import type { Vec } from '../../src/geometry/plane/vec.ts';
import { moved, scaled, type View } from './view.ts';

/** What a pane does with pointers that are not meant to move its view. */
export interface Touching {
  /** Takes a press that a tool has a use for; then the view stays put until it is let go or a second finger comes. */
  readonly onPress?: (at: Vec, event: PointerEvent) => boolean;
  readonly onDrag?: (at: Vec, event: PointerEvent) => void;
  readonly onRelease?: (at: Vec, event: PointerEvent) => void;
  /** A press that a second finger made a pinch of: whatever it changed is to be as before. */
  readonly onAbandon?: () => void;
  /** A press let go where it began; says whether it had a use for it. */
  readonly onTap?: (at: Vec, event: PointerEvent) => boolean;
  readonly onHover?: (at: Vec | null) => void;
}

/** How far about itself a pointer takes hold, pixels: a finger covers more than a mouse. */
export const reachPx = ({ pointerType }: PointerEvent): number => (pointerType === 'mouse' ? 12 : 22);

const tapPx = 6;
const wheelStep = 0.0015;
const keyStepPx = 40;
const keyFactor = 1.25;

/** Pan and zoom by drag, wheel, pinch and keys; presses a tool takes go to the tool. Points are pixels of the pane. */
export function gesturesOf(
  pane: HTMLElement,
  view: () => View,
  setView: (view: View) => void,
  fit: () => void,
  touching: () => Touching,
  onOtherTap: (at: Vec, event: PointerEvent) => void,
): void {
  const down = new Map<number, Vec>();
  let toolHas: number | null = null;
  let pressed: Vec | null = null;
  const at = (event: PointerEvent | WheelEvent): Vec => {
    const { left, top } = pane.getBoundingClientRect();
    return { x: event.clientX - left, y: event.clientY - top };
  };

  pane.addEventListener('pointerdown', (event) => {
    if (event.button > 1) return;
    // a pointer that is gone already cannot be held
    if (event.isTrusted) pane.setPointerCapture(event.pointerId);
    const place = at(event);
    if (down.size === 0) {
      pressed = place;
      if (event.button === 0 && touching().onPress?.(place, event)) toolHas = event.pointerId;
    } else {
      pressed = null;
      if (toolHas !== null) {
        toolHas = null;
        touching().onAbandon?.();
      }
    }
    down.set(event.pointerId, place);
  });

  pane.addEventListener('pointermove', (event) => {
    const place = at(event);
    const before = down.get(event.pointerId);
    if (before === undefined) {
      touching().onHover?.(place);
      return;
    }
    if (pressed !== null && apart(place, pressed) > tapPx) pressed = null;
    if (toolHas === event.pointerId) touching().onDrag?.(place, event);
    else if (toolHas === null) setView(followed(view(), down, event.pointerId, place));
    down.set(event.pointerId, place);
  });

  const up = (event: PointerEvent): void => {
    if (!down.delete(event.pointerId)) return;
    const place = at(event);
    if (toolHas === event.pointerId) {
      toolHas = null;
      touching().onRelease?.(place, event);
    }
    const isTap = pressed !== null && event.type === 'pointerup';
    pressed = null;
    if (isTap && !touching().onTap?.(place, event)) onOtherTap(place, event);
  };
  pane.addEventListener('pointerup', up);
  pane.addEventListener('pointercancel', up);
  pane.addEventListener('pointerleave', () => touching().onHover?.(null));

  pane.addEventListener(
    'wheel',
    (event) => {
      event.preventDefault();
      const pixels = event.deltaMode === 0 ? event.deltaY : 16 * event.deltaY;
      setView(scaled(view(), Math.exp(-pixels * wheelStep), at(event)));
    },
    { passive: false },
  );

  pane.addEventListener('keydown', (event) => {
    if (event.target !== pane || event.ctrlKey || event.metaKey || event.altKey) return;
    const next = keyed(event.key, view(), { x: pane.clientWidth / 2, y: pane.clientHeight / 2 });
    if (next === 'fit') fit();
    else if (next !== null) setView(next);
    else return;
    event.preventDefault();
  });
}

const apart = (a: Vec, b: Vec): number => Math.hypot(a.x - b.x, a.y - b.y);

/** One pointer moves the view; two stretch it about their middle. */
function followed(view: View, down: ReadonlyMap<number, Vec>, id: number, place: Vec): View {
  const before = down.get(id) as Vec;
  const other = [...down].find(([key]) => key !== id)?.[1];
  if (other === undefined) return moved(view, { x: place.x - before.x, y: place.y - before.y });
  const middle = (p: Vec): Vec => ({ x: (p.x + other.x) / 2, y: (p.y + other.y) / 2 });
  const [from, to] = [middle(before), middle(place)];
  const stretched = scaled(view, apart(place, other) / Math.max(1, apart(before, other)), from);
  return moved(stretched, { x: to.x - from.x, y: to.y - from.y });
}

function keyed(key: string, view: View, middle: Vec): View | 'fit' | null {
  switch (key) {
    case 'ArrowLeft':
      return moved(view, { x: keyStepPx, y: 0 });
    case 'ArrowRight':
      return moved(view, { x: -keyStepPx, y: 0 });
    case 'ArrowUp':
      return moved(view, { x: 0, y: keyStepPx });
    case 'ArrowDown':
      return moved(view, { x: 0, y: -keyStepPx });
    case '+':
    case '=':
      return scaled(view, keyFactor, middle);
    case '-':
      return scaled(view, 1 / keyFactor, middle);
    case '0':
      return 'fit';
    default:
      return null;
  }
}

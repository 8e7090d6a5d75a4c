import { SVG, type Svg } from '@svgdotjs/svg.js';
import type { Vec } from '../../src/geometry/plane/vec.ts';
import { gesturesOf, type Touching } from './gestures.ts';
import { type Extent, fitted, matrixOf, moved, type Size, scaled, type View } from './view.ts';

/**
 * One view of the job: a plane in mm under a window of pixels. `plane` holds what is drawn in mm (its y runs down, as
 * SVG's does); `labels` holds what keeps its size, in pixels of the pane; `under` holds pictures, below both.
 */
export interface Pane {
  readonly element: HTMLElement;
  readonly under: HTMLElement;
  readonly plane: SVGGElement;
  readonly labels: SVGGElement;
  view(): View;
  /** Of the window, pixels, as it was last seen; to ask the element has all be laid out anew. */
  size(): Size;
  setView(view: View): void;
  /** Shows all of an extent, as it is by then, and goes on doing so when the window changes, until the hand moves the view. */
  fit(extent: Extent | (() => Extent)): void;
  /** Shows all of that extent again. */
  fitAgain(): void;
  /** Hears when it has been asked to show all again. */
  onFitAgain(hear: () => void): void;
  zoom(factor: number): void;
  /** Goes to a place, as near as shows all of it; a hand that is nearer already stays as near. */
  goTo(place: Extent): void;
  /** Goes to a place that was touched, where it is too small on the screen for what is there to be told apart. */
  goToTouched(place: Extent): void;
  /** Hears of every change of the view, and what made it; gives back how to stop hearing. */
  onView(hear: (view: View, cause: Cause) => void): () => void;
  /** Hears of taps that no tool had a use for. */
  onTap(hear: (at: Vec, event: PointerEvent) => void): void;
  /** The tool that takes presses now; gives back how it lets go of them, which leaves a tool that came since alone. */
  setTouching(touching: Touching): () => void;
}

/** Whether the hand moved the view, or the window did. */
export type Cause = 'hand' | 'window';

/** What is smaller on the screen is gone to when it is touched, pixels. */
const toldApartPx = 120;

export function paneOf(label: string): Pane {
  const element = document.createElement('div');
  element.className = 'pane';
  element.tabIndex = 0;
  element.setAttribute('role', 'group');
  element.setAttribute('aria-label', label);
  const under = document.createElement('div');
  under.className = 'under';
  const picture: Svg = SVG().addTo(element).size('100%', '100%');
  picture.attr({ role: 'img', 'aria-label': label });
  const plane = picture.group().addClass('plane').node as SVGGElement;
  const labels = picture.group().addClass('labels').node as SVGGElement;
  element.prepend(under);

  let view: View = { pxPerMm: 1, origin: { x: 0, y: 0 } };
  let extent: Extent | (() => Extent) | null = null;
  let followsExtent = true;
  let touching: Touching = {};
  const seen = (): Size => ({ width: element.clientWidth, height: element.clientHeight });
  let size: Size = { width: 0, height: 0 };
  const hearers = new Set<(view: View, cause: Cause) => void>();
  const apply = (next: View, cause: Cause): void => {
    view = next;
    plane.setAttribute('transform', matrixOf(next));
    for (const hear of hearers) hear(next, cause);
  };
  const refit = (): void => {
    if (extent === null || element.clientWidth === 0) return;
    const all = typeof extent === 'function' ? extent() : extent;
    size = seen();
    apply(fitted(all, size), 'window');
  };
  const setView = (next: View, cause: Cause = 'hand'): void => {
    followsExtent = false;
    // the view is for the window as it is now, also where the observer has not yet told of that
    size = seen();
    apply(next, cause);
  };
  const fit = (next: Extent | (() => Extent)): void => {
    extent = next;
    followsExtent = true;
    refit();
  };
  let heardFit = (): void => {};
  const fitAgain = (): void => {
    if (extent !== null) fit(extent);
    heardFit();
  };
  let heardTap: (at: Vec, event: PointerEvent) => void = () => {};
  gesturesOf(
    element,
    () => view,
    setView,
    fitAgain,
    () => touching,
    (at, event) => heardTap(at, event),
  );
  new ResizeObserver(() => {
    const before = size;
    size = seen();
    if (followsExtent) refit();
    else apply(moved(view, { x: (size.width - before.width) / 2, y: 0 }), 'window');
  }).observe(element);

  const goTo = (place: Extent): void => {
    const { width, height } = seen();
    const there = fitted(place, { width, height });
    const middle = { x: width / 2, y: height / 2 };
    setView(there.pxPerMm >= view.pxPerMm ? there : scaled(there, view.pxPerMm / there.pxPerMm, middle));
  };

  return {
    element,
    under,
    plane,
    labels,
    view: () => view,
    size: () => size,
    setView: (next) => setView(next, 'window'),
    fit,
    fitAgain,
    onFitAgain: (hear) => {
      heardFit = hear;
    },
    zoom: (factor) => setView(scaled(view, factor, { x: element.clientWidth / 2, y: element.clientHeight / 2 })),
    goTo,
    goToTouched: (place) => {
      const seenPx = Math.hypot(place.maxX - place.minX, place.maxY - place.minY) * view.pxPerMm;
      if (seenPx < toldApartPx) goTo(place);
    },
    onTap: (hear) => {
      heardTap = hear;
    },
    onView: (hear) => {
      hearers.add(hear);
      hear(view, 'window');
      return () => hearers.delete(hear);
    },
    setTouching: (next) => {
      touching = next;
      return () => {
        if (touching === next) touching = {};
      };
    },
  };
}

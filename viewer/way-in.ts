import { effect, signal, untracked } from '@preact/signals';
import type { TravelCurve } from '../src/clearance/travel-curve.ts';
import { givenLength, lengthText } from '../src/job/length-text.ts';
import type { Units } from '../src/job/lengths.ts';
import type { Leg } from '../src/job/path.ts';
import { turnText } from '../src/words/units.ts';
import type { App } from './app.ts';
import type { Way } from './heavy/questions.ts';
import { svgElement, svgText } from './stage/svg-element.ts';
import { lastStop, placeOnWay } from './way.ts';
import { standingWords } from './words/standing.ts';
import { words } from './words.ts';

const margin = { left: 44, right: 14, top: 10, bottom: 22 };

interface Axes {
  readonly x: (place: number) => number;
  readonly y: (mm: number) => number;
  readonly place: (x: number) => number;
  readonly topMm: number;
  readonly bottom: number;
}

/**
 * The way in at the foot of the page: the least clearance along it as the proved curve, which is itself what one drags to
 * move the housing.
 */
export function wayInOf(app: App): HTMLElement {
  const element = document.createElement('section');
  element.id = 'way-in';
  const heading = document.createElement('h2');
  heading.textContent = words.wayIn;
  const now = document.createElement('output');
  const slider = document.createElement('div');
  slider.className = 'curve';
  slider.tabIndex = 0;
  slider.title = words.wayInHelp;
  for (const [name, value] of Object.entries({ role: 'slider', 'aria-label': words.wayIn, 'aria-valuemin': '0' }))
    slider.setAttribute(name, value);
  const picture = svgElement('svg');
  picture.setAttribute('aria-hidden', 'true');
  const curve = svgElement('g');
  const hand = svgElement('g', { class: 'hand' });
  const [line, knob] = [svgElement('path'), svgElement('circle', { r: 9 })];
  hand.append(line, knob);
  picture.append(curve, hand);
  slider.append(picture);
  const key = keyOf();
  element.append(heading, now, key.element, slider);
  const axes = signal<Axes | null>(null);
  let drawn: readonly [Way | null, TravelCurve | null] = [null, null];
  let size = '';

  const draw = (): void => {
    const [way, checked] = [app.answers.way.value, app.reader.checked.value];
    const after = app.answers.wayAfter.value;
    element.hidden = checked === null;
    key.element.hidden = way === null;
    key.after.classList.toggle('unknown', after === null);
    if (way === null || checked === null) {
      drawn = [null, null];
      axes.value = null;
      slider.hidden = true;
      now.textContent = checked !== null && checked.joint.fit.legs.length === 0 ? words.homeOnly : '';
      return;
    }
    slider.hidden = false;
    const { units, legs } = checked.joint.fit;
    const fits = `${slider.clientWidth}×${slider.clientHeight} ${units}`;
    if (way === drawn[0] && after === drawn[1] && fits === size) return;
    [drawn, size] = [[way, after], fits];
    const on = axesOf(way, slider.clientWidth, slider.clientHeight);
    curve.replaceChildren(...marks(way, after, checked.check.wayIn?.firstTouch ?? null, on, legs, units));
    slider.setAttribute('aria-valuemax', String(lastStop(way)));
    axes.value = on;
  };

  const stand = (): void => {
    const { reader } = app;
    const [on, stop, checked] = [axes.value, reader.stop.value, reader.checked.value];
    if (on === null || stop === null || checked === null) return;
    const { units } = checked.joint.fit;
    const proved = reader.proved.value;
    const at = on.x(reader.place.value);
    const mm = app.answers.stands.value?.standing.clearanceMm ?? on.topMm;
    line.setAttribute('d', `M${at},${margin.top}V${on.bottom}`);
    knob.setAttribute('cx', String(at));
    knob.setAttribute('cy', String(on.y(Math.min(mm, on.topMm))));
    const { turnRad, standOffMm } = stop.position;
    const text = words.place(
      stop.leg,
      turnText(turnRad),
      givenLength(standOffMm, units),
      proved === null ? '…' : standingWords(proved.standing, units),
    );
    now.textContent = text;
    now.dataset.state = proved?.standing.state ?? '';
    slider.setAttribute('aria-valuenow', reader.place.value.toFixed(2));
    slider.setAttribute('aria-valuetext', text);
  };

  let left = 0;
  const goTo = (event: PointerEvent): void => {
    const on = axes.peek();
    if (on !== null) app.reader.moveTo(on.place(event.clientX - left));
  };
  slider.addEventListener('pointerdown', (event) => {
    if (event.isTrusted) slider.setPointerCapture(event.pointerId);
    slider.dataset.held = '';
    // once a drag: to ask at every move has all be laid out anew
    left = slider.getBoundingClientRect().left;
    goTo(event);
  });
  slider.addEventListener('pointermove', (event) => {
    if ('held' in slider.dataset) goTo(event);
  });
  for (const end of ['pointerup', 'pointercancel'] as const)
    slider.addEventListener(end, () => delete slider.dataset.held);
  slider.addEventListener('keydown', (event) => {
    const step = keySteps[event.key];
    if (step === undefined) return;
    event.preventDefault();
    app.reader.moveTo(app.reader.place.peek() + step);
  });
  effect(draw);
  effect(stand);
  new ResizeObserver(() => untracked(draw)).observe(slider);
  return element;
}

const keySteps: Readonly<Record<string, number>> = {
  ArrowRight: 0.25,
  ArrowUp: 0.25,
  ArrowLeft: -0.25,
  ArrowDown: -0.25,
  PageUp: 5,
  PageDown: -5,
  Home: -1e9,
  End: 1e9,
};

/** What is near is what matters: the curve is cut off somewhat above what was asked and what is nearest. */
function axesOf(way: Way, width: number, height: number): Axes {
  const told = way.curve.pieces.flatMap(({ clearanceMm }) => (clearanceMm === null ? [] : [clearanceMm]));
  const worst = way.curve.pieces.flatMap(({ worstClearanceMm }) => worstClearanceMm ?? []);
  const least = told.length === 0 ? 0 : Math.min(...told);
  const topMm = Math.max(2, 3 * way.curve.askedMm, 1.6 * least);
  const lowMm = Math.min(0, ...worst);
  const across = Math.max(1, width - margin.left - margin.right);
  const bottom = height - margin.bottom;
  const perMm = (bottom - margin.top) / (topMm - lowMm);
  const last = lastStop(way);
  return {
    x: (place) => margin.left + (place / last) * across,
    y: (mm) => bottom - (Math.min(mm, topMm) - lowMm) * perMm,
    place: (x) => ((x - margin.left) / across) * last,
    topMm,
    bottom,
  };
}

interface Touch {
  readonly leg: number;
  readonly at: number;
}

/** The two curves by their lines; the second has its room before it is known, so that nothing moves when it comes. */
function keyOf() {
  const element = document.createElement('ul');
  element.className = 'key';
  const entryOf = (line: string, text: string): HTMLElement => {
    const sample = svgElement('svg', { width: 36, height: 12, 'aria-hidden': 'true' });
    sample.append(svgElement('path', { class: line, d: 'M3,6H34' }));
    const entry = document.createElement('li');
    entry.append(sample, text);
    return entry;
  };
  const after = entryOf('clearance-after', words.afterCut);
  element.append(entryOf('clearance-curve', words.asItIs), after);
  return { element, after };
}

/** The steps of a curve over the places of the way as it is. */
function stepsOf(way: Way, { pieces }: TravelCurve, { x, y }: Axes): string {
  let before = false;
  return pieces
    .map(({ leg, fromAt, toAt, clearanceMm }) => {
      const begins = !before;
      before = clearanceMm !== null;
      if (clearanceMm === null) return '';
      const [from, to] = [x(placeOnWay(way, leg, fromAt)), x(placeOnWay(way, leg, toAt))];
      return `${begins ? 'M' : 'L'}${from},${y(clearanceMm)}H${to}`;
    })
    .join('');
}

function marks(
  way: Way,
  after: TravelCurve | null,
  touch: Touch | null,
  axes: Axes,
  legs: readonly Leg[],
  units: Units,
): SVGElement[] {
  const { pieces, askedMm } = way.curve;
  const { x, y } = axes;
  const [left, right] = [x(0), x(lastStop(way))];
  const steps = (mm: (i: number) => number | null, close: (i: number) => number): string =>
    pieces
      .map((_, i) => {
        const top = mm(i);
        return top === null ? '' : `M${x(i)},${y(close(i))}V${y(top)}H${x(i + 1)}V${y(close(i))}Z`;
      })
      .join('');
  const fouls = pieces
    .map(({ state }, i) => {
      if (state !== 'fouls') return '';
      const begins = pieces[i - 1]?.state !== 'fouls';
      const ends = pieces[i + 1]?.state !== 'fouls';
      return `${begins ? `M${x(i)},${axes.bottom}V${margin.top}` : ''}H${x(i + 1)}${ends ? `V${axes.bottom}Z` : ''}`;
    })
    .join('');
  const ends = legs.map((_, i) => placeOnWay(way, i + 1, 1));
  const starts = [0, ...ends];
  return [
    svgElement('path', { class: 'foul-stretch', d: fouls }),
    svgElement('path', {
      class: 'error-band',
      d: steps(
        (i) => pieces[i]?.clearanceMm ?? null,
        (i) => pieces[i]?.worstClearanceMm ?? 0,
      ),
    }),
    ...ends
      .slice(0, -1)
      .map((place) => svgElement('path', { class: 'leader', d: `M${x(place)},${margin.top}V${axes.bottom}` })),
    svgElement('path', { class: 'axis', d: `M${left},${y(0)}H${right}` }),
    svgElement('path', { class: 'asked', d: `M${left},${y(askedMm)}H${right}` }),
    svgElement('path', { class: 'clearance-curve', d: stepsOf(way, way.curve, axes) }),
    ...(after === null ? [] : [svgElement('path', { class: 'clearance-after', d: stepsOf(way, after, axes) })]),
    ...(touch === null
      ? []
      : [svgElement('circle', { class: 'first-touch', cx: x(placeOnWay(way, touch.leg, touch.at)), cy: y(0), r: 5 })]),
    svgText('0', { x: left - 6, y: y(0) + 4 }, { 'text-anchor': 'end' }),
    svgText(
      lengthText(askedMm, units).replace(` ${units}`, ''),
      { x: left - 6, y: y(askedMm) + 4 },
      { 'text-anchor': 'end' },
    ),
    svgText(units, { x: left - 6, y: margin.top + 10 }, { 'text-anchor': 'end' }),
    ...legs.flatMap((_, i) => {
      const [from, to] = [x(starts[i] ?? 0), x(ends[i] ?? 0)];
      const name = to - from > 46 ? words.leg(i + 1) : String(i + 1);
      return [svgText(name, { x: (from + to) / 2, y: axes.bottom + 15 }, { 'text-anchor': 'middle' })];
    }),
  ];
}

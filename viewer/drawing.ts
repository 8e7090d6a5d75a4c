import { computed, effect, untracked } from '@preact/signals';
import { textWidthMm } from '../src/drawing/scene/text-size.ts';
import type { Vec } from '../src/geometry/plane/vec.ts';
import { home, type Position } from '../src/job/path.ts';
import type { App } from './app.ts';
import { touchFouls } from './foul-places.ts';
import type { FaceSections, Label } from './heavy/pictures-of.ts';
import type { Heights } from './heavy/places-of.ts';
import { litPlaces } from './lit-places.ts';
import { type Hatched, hatchedSample, hatching } from './stage/hatching.ts';
import { placedNames, roomOfLine, widthOfName } from './stage/names.ts';
import { painted } from './stage/paint.ts';
import { type Pane, paneOf } from './stage/pane.ts';
import { svgElement, svgText } from './stage/svg-element.ts';
import { type Extent, type Size, toPane, type View } from './stage/view.ts';
import { trialMarks } from './trial-marks.ts';
import { standingWords } from './words/standing.ts';
import { words } from './words.ts';

/** The two panes that stand together: the joint from its face, and from the side, level with one another. */
export interface Drawing {
  readonly face: Pane;
  readonly side: Pane;
  readonly element: HTMLElement;
}

export function drawingOf(app: App): Drawing {
  const element = document.createElement('section');
  element.id = 'drawing';
  element.setAttribute('aria-label', words.drawing);
  const [face, side] = [paneOf(words.faceView), paneOf(words.sideView)];
  const places = litPlaces([face, side]);
  const sideCaption = document.createElement('span');
  sideCaption.append(words.sideView);
  const frames = [framed(face, words.faceView), framed(side, words.sideView, sideCaption)];
  element.append(places.name, ...frames);
  const caption = frames[0]?.querySelector('figcaption');
  levelWithOneAnother(face, side);
  const joint = { face: svgElement('g', { class: 'joint' }), side: svgElement('g', { class: 'joint' }) };
  const [names, marks] = [svgElement('g', { class: 'joint' }), svgElement('g', { class: 'joint' })];
  const over = { face: svgElement('g', { class: 'joint' }), side: svgElement('g', { class: 'joint' }) };
  over.face.append(places.still.face, places.moving.face);
  over.side.append(places.still.side, places.moving.side);
  face.plane.append(joint.face, over.face);
  side.plane.append(joint.side, over.side);
  face.labels.append(names, marks);
  const moving = { face: svgElement('g', { class: 'moving-part' }), side: svgElement('g', { class: 'moving-part' }) };
  const cut = { face: svgElement('g', { class: 'cut' }), side: svgElement('g', { class: 'cut' }) };
  const fouls = { face: svgElement('g'), side: svgElement('g') };
  const [still, room, lines] = [onFace(), svgElement('g'), svgElement('g', { class: 'cut' })];
  const carried = onFace();
  moving.face.append(carried.sections, carried.over);
  joint.face.append(still.sections, room, still.over, cut.face, fouls.face, lines, moving.face);
  const fills = hatching();
  face.labels.before(fills.element);
  face.onView(({ pxPerMm }) => fills.scaleTo(pxPerMm));
  const key = keyOf();
  frames[0]?.querySelector('.nearer')?.prepend(key.element);
  const { answers, reader } = app;
  const pictures = computed(() => answers.checked.value?.pictures ?? null);
  const sideAtHome = computed(() => (pictures.value?.side.moving ?? []).map(painted));
  touchFouls({ face, side }, () => (reader.step.peek() === 'outlines' ? [] : (pictures.peek()?.foulPlaces ?? [])));
  const lettering = computed(() => (pictures.value?.labels ?? []).map(lettered));
  const position = computed(() => reader.stop.value?.position ?? home);
  /** How low and high the moving sections reach where the part is turned or shifted; null where they do as at home. */
  const heights = computed(() => {
    const { turnRad, shift } = position.value;
    const isTurned = turnRad !== 0 || shift.x !== 0 || shift.y !== 0;
    return (isTurned ? answers.way.value?.heights[Math.round(reader.place.value)] : null) ?? null;
  });
  let isFirst = true;
  let drawnFace: FaceSections | null = null;

  effect(() => {
    element.classList.toggle('stale', answers.isWorking.value && answers.checked.value !== null);
  });
  effect(() => {
    if (pictures.value === null) return;
    const { side, over, fouls: inTheWay, places: named, sideSign, seenFrom } = pictures.value;
    joint.side.replaceChildren(...side.still.map(painted), cut.side, fouls.side, moving.side);
    fouls.face.replaceChildren(...inTheWay.face.map(painted));
    fouls.side.replaceChildren(...inTheWay.side.map(painted));
    still.over.replaceChildren(...over.still.map(painted));
    carried.over.replaceChildren(...over.moving.map(painted));
    places.show(named, sideSign);
    sideCaption.textContent = words.seenFrom[seenFrom];
    // while outlines are traced the face pane is theirs, and the other is not there
    if (isFirst && reader.step.peek() !== 'outlines') fitAll();
    isFirst = false;
  });
  effect(paintSections);
  effect(() => room.replaceChildren(...answers.room.value.map(painted)));
  effect(() => {
    const painting = answers.planned.value?.cut;
    cut.face.replaceChildren(...(painting?.face ?? []).map(painted));
    cut.side.replaceChildren(...(painting?.side ?? []).map(painted));
    lines.replaceChildren(...(painting?.lines ?? []).map(painted));
  });
  effect(() =>
    key.show({
      foul: (pictures.value?.fouls.face.length ?? 0) > 0,
      relief: (answers.planned.value?.cut.face.length ?? 0) > 0,
    }),
  );
  effect(() => {
    const before = element.dataset.step;
    element.dataset.step = reader.step.value;
    document.body.dataset.step = reader.step.value;
    if (before === 'outlines' && reader.step.value !== 'outlines') fitAll();
  });
  effect(() => {
    const part = reader.step.value === 'outlines' ? app.job.now.value?.parts[reader.part.value] : undefined;
    if (caption) caption.textContent = part === undefined ? words.faceView : words.tracing(part.name, part.viewedFrom);
  });
  for (const draw of [place, reach, letter, mark]) effect(draw);
  face.onView(() =>
    untracked(() => {
      paintSections();
      letter();
      mark();
    }),
  );
  let isFitted = true;
  const resized = new ResizeObserver(() => {
    if (isFitted && reader.step.peek() !== 'outlines') fitAll();
  });
  for (const pane of [face, side]) {
    pane.onView((_, cause) => {
      if (cause === 'hand') isFitted = false;
    });
    pane.onFitAgain(() => {
      if (reader.step.peek() !== 'outlines') fitAll();
    });
    resized.observe(pane.element);
  }

  function fitAll(): void {
    untracked(() => {
      if (pictures.value === null) return;
      fitBoth(face, side, pictures.value.extents.face, pictures.value.extents.side);
      isFitted = true;
    });
  }

  /** Where the moving part stands now: the face picture turned and shifted, the side one pushed off. */
  function place(): void {
    const sign = pictures.value?.sideSign;
    if (sign === undefined) return;
    const { turnRad, shift, standOffMm } = position.value;
    const [cos, sin] = [Math.cos(turnRad), Math.sin(turnRad)];
    const turned = `matrix(${cos} ${-sin} ${sin} ${cos} ${shift.x} ${-shift.y})`;
    const away = `translate(${sign * standOffMm} 0)`;
    for (const { face } of [moving, places.moving]) face.setAttribute('transform', turned);
    for (const { side } of [moving, places.moving]) side.setAttribute('transform', away);
  }

  /** The moving sections from the side, by their heights where the part is turned or shifted. */
  function reach(): void {
    const [checked, now] = [answers.checked.value, heights.value];
    if (checked === null) return;
    const { sections } = checked.joint.moving;
    const blocks = now?.flatMap((height, i) => {
      const depth = sections[i]?.depth ?? null;
      return depth === null ? [] : [block(depth.fromMm, depth.toMm, height, checked.pictures.sideSign)];
    });
    moving.side.replaceChildren(...(blocks ?? sideAtHome.value));
    places.stand(now);
  }

  /** The sections on the face as fine as this scale can show, painted anew only where another fineness is wanted. */
  function paintSections(): void {
    const sections = fineEnough(answers.sections.value, face.view());
    if (sections === undefined || sections === drawnFace) return;
    drawnFace = sections;
    carried.sections.replaceChildren(...sections.moving.map(painted));
    still.sections.replaceChildren(...sections.still.map(painted));
  }

  /** Names, which keep their size whatever the scale; those that matter more find room first. */
  function letter(): void {
    const [view, size] = [face.view(), face.size()];
    const beside = lettering.value.map(({ label, widthPx }) => ({
      widthPx,
      at: toPane(view, movedBy(position.value, label)),
    }));
    const said = reader.step.value === 'offer-up' ? closestOf(app, view, size.width) : null;
    const taken = said === null ? [] : [roomOfLine(said.longPx, said.at, witnessPx)];
    const shown = placedNames(beside, size, taken).flatMap((at, i) => {
      const text = lettering.value[i]?.text;
      if (at === null || text === undefined) return [];
      text.setAttribute('transform', `translate(${at.x} ${at.y})`);
      return [text];
    });
    const isSame = shown.length === names.children.length && shown.every((text, i) => text === names.children[i]);
    if (!isSame) names.replaceChildren(...shown);
  }

  /** What the step marks, the witness line among it. */
  function mark(): void {
    if (pictures.value !== null) marks.replaceChildren(...marksOfStep(app, face.view(), face.size()));
  }

  return { face, side, element };
}

/** What the hatched areas on the face mean, of those that are there. */
function keyOf() {
  const element = document.createElement('ul');
  element.className = 'key joint';
  const entries = (['foul', 'relief'] as const).map((kind) => {
    const entry = document.createElement('li');
    entry.append(hatchedSample(kind), words.key[kind]);
    return [kind, entry] as const;
  });
  const show = (there: Readonly<Record<Hatched, boolean>>): void =>
    element.replaceChildren(...entries.filter(([kind]) => there[kind]).map(([, entry]) => entry));
  return { element, show };
}

/** Sections, and what lies over them. */
const onFace = () => ({ sections: svgElement('g'), over: svgElement('g') });

/** The coarsest that are nowhere half a pixel from the outlines, else the finest there are. */
const fineEnough = (sections: readonly FaceSections[], { pxPerMm }: View): FaceSections | undefined =>
  sections.find(({ withinMm }) => withinMm * pxPerMm < 0.5) ?? sections.at(-1);

function block(fromMm: number, toMm: number, [low, high]: Heights, sign: 1 | -1): SVGElement {
  const [a, b] = [sign * fromMm, sign * toMm];
  return svgElement('rect', {
    class: 'moving',
    x: Math.min(a, b),
    y: -high,
    width: Math.abs(b - a),
    height: high - low,
  });
}

function framed(pane: Pane, name: string, said: Node | string = name): HTMLElement {
  const frame = document.createElement('figure');
  const caption = document.createElement('figcaption');
  caption.append(said);
  const buttons = document.createElement('div');
  buttons.className = 'nearer';
  buttons.append(
    button('+', words.nearer(name), () => pane.zoom(1.5)),
    button('−', words.further(name), () => pane.zoom(1 / 1.5)),
    button(words.fit, words.wholeView(name), () => pane.fitAgain()),
  );
  frame.append(caption, pane.element, buttons);
  return frame;
}

function button(face: string, label: string, onClick: () => void): HTMLButtonElement {
  const made = document.createElement('button');
  made.type = 'button';
  made.textContent = face;
  made.setAttribute('aria-label', label);
  made.addEventListener('click', onClick);
  return made;
}

/** All of both pictures, at the scale at which both find room. */
function fitBoth(face: Pane, side: Pane, faceExtent: Extent, sideExtent: Extent): void {
  const across = faceExtent.maxX - faceExtent.minX;
  const alone = side.element.clientWidth / Math.max(1, sideExtent.maxX - sideExtent.minX + 30);
  const both = face.element.clientWidth / Math.max(across, face.element.clientWidth / alone);
  const grow = (across * Math.max(0, face.element.clientWidth / (across * both) - 1)) / 2;
  side.setView({
    pxPerMm: 1,
    origin: { x: side.element.clientWidth / 2 - (sideExtent.minX + sideExtent.maxX) / 2, y: 0 },
  });
  face.fit({ ...faceExtent, minX: faceExtent.minX - grow, maxX: faceExtent.maxX + grow });
}

/** Scale and height of one pane follow the other's; across, each has its own way. */
function levelWithOneAnother(face: Pane, side: Pane): void {
  let following = false;
  const follow = (from: Pane, to: Pane) => (view: View) => {
    if (following || to.element.clientWidth === 0) return;
    following = true;
    const now = to.view();
    const middle = to.element.clientWidth / 2;
    const held = (middle - now.origin.x) / now.pxPerMm;
    const lift = (to.element.clientHeight - from.element.clientHeight) / 2;
    to.setView({
      pxPerMm: view.pxPerMm,
      origin: { x: middle - held * view.pxPerMm, y: view.origin.y + lift },
    });
    following = false;
  };
  face.onView(follow(face, side));
  side.onView((view, cause) => {
    // what the window does to the side view is no wish of the hand's
    if (cause === 'hand') follow(side, face)(view);
  });
}

const lettered = (label: Label): Lettering => ({
  label,
  text: svgText(label.text, { x: 0, y: 0 }, { class: label.role }),
  widthPx: widthOfName(label.text),
});

interface Lettering {
  readonly label: Label;
  readonly text: SVGElement;
  readonly widthPx: number;
}

function movedBy({ turnRad, shift }: Position, { at: [x, y], role }: Label): Vec {
  if (role === 'text') return { x, y };
  const [cos, sin] = [Math.cos(turnRad), Math.sin(turnRad)];
  return { x: cos * x - sin * y + shift.x, y: sin * x + cos * y + shift.y };
}

/** What a step marks on the face view, beside what is always there. */
function marksOfStep(app: App, view: View, size: Size): SVGElement[] {
  switch (app.reader.step.value) {
    case 'offer-up':
      return closestPlace(app, view, size.width);
    case 'dowel-up':
      return offsetArrows(app, view);
    case 'grind':
      return readingMarks(app, view);
    case 'trial-fit':
      return trialMarks(app, view, size);
    default:
      return [];
  }
}

/** How many times as long as it is each offset is drawn. */
export const offsetTimes = 50;

function offsetArrows({ answers: { checked } }: App, view: View): SVGElement[] {
  const pairs = [...(checked.value?.joint.fit.dowels ?? []), ...(checked.value?.joint.fit.bolts ?? [])];
  return pairs.map(({ fixed, moving }) => {
    const from = toPane(view, fixed.at);
    const by = (key: 'x' | 'y'): number => (moving.at[key] - fixed.at[key]) * offsetTimes;
    const to = toPane(view, { x: fixed.at.x + by('x'), y: fixed.at.y + by('y') });
    const back = Math.atan2(from.y - to.y, from.x - to.x);
    const barb = (turn: number): string => `M${to.x},${to.y}l${9 * Math.cos(back + turn)},${9 * Math.sin(back + turn)}`;
    return svgElement('path', { class: 'offset', d: `M${from.x},${from.y}L${to.x},${to.y}${barb(0.4)}${barb(-0.4)}` });
  });
}

function readingMarks({ reader, answers: { planned } }: App, view: View): SVGElement[] {
  const reading = reader.reading.value;
  return (planned.value?.tables.flat() ?? []).map((row) => {
    const { x, y } = toPane(view, row.at);
    return svgElement('circle', {
      class: row === reading ? 'place read' : 'place',
      cx: x,
      cy: y,
      r: row === reading ? 9 : 4,
    });
  });
}

function closestPlace(app: App, view: View, width: number): SVGElement[] {
  const closest = closestOf(app, view, width);
  if (closest === null) return [];
  const { a, b, text, at } = closest;
  const line = svgElement('path', { class: 'witness', d: `M${a.x},${a.y}L${b.x},${b.y}` });
  const ring = svgElement('circle', {
    class: 'witness',
    cx: (a.x + b.x) / 2,
    cy: (a.y + b.y) / 2,
    r: 14 + Math.hypot(a.x - b.x, a.y - b.y) / 2,
  });
  return [ring, line, svgText(text, at, { class: 'witness-words' })];
}

/** As the page writes what is said of the closest place, pixels. */
const witnessPx = 14;

/** The two ends of the closest place on the pane, and what is said of it, right of it where there is room. */
function closestOf({ reader }: App, view: View, width: number) {
  const [proved, checked] = [reader.proved.value, reader.checked.value];
  if (checked === null || proved?.standing.nearest == null) return null;
  const { fixedAt, movingAt } = proved.standing.nearest;
  const [a, b] = [toPane(view, fixedAt), toPane(view, movingAt)];
  const text = standingWords(proved.standing, checked.joint.fit.units);
  const longPx = textWidthMm(text, witnessPx, true);
  const right = Math.max(a.x, b.x) + 18;
  const x = right + longPx > width ? Math.min(a.x, b.x) - 18 - longPx : right;
  return { a, b, text, longPx, at: { x, y: (a.y + b.y) / 2 + 5 } };
}

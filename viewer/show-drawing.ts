import type { Scene } from '../src/drawing/scene.ts';
import { nightInks, paperInks } from '../src/drawing/styles.ts';
import { paintViews } from './paint-scene.ts';
import { figures, layerSwitches, words } from './words.ts';

const steps = [1, 1.5, 2, 3, 4, 6];

/** Fills the drawing with one figure for each view, each of which can be drawn larger and scrolled. */
export function showDrawing(place: HTMLElement, scene: Scene): void {
  const inks = matchMedia('(prefers-color-scheme: dark)').matches ? nightInks : paperInks;
  const shown = figures.flatMap(({ name, views }) => {
    const picture = paintViews(scene, views, inks);
    return picture === null ? [] : [figureOf(name, picture.node)];
  });
  place.replaceChildren(...shown);
}

function figureOf(name: string, picture: SVGSVGElement): HTMLElement {
  picture.setAttribute('aria-label', name);
  const pane = document.createElement('div');
  pane.className = 'pane';
  pane.tabIndex = 0;
  pane.setAttribute('role', 'group');
  pane.setAttribute('aria-label', name);
  pane.append(picture);
  let step = 0;
  const zoom = (by: number) => () => {
    step = Math.min(steps.length - 1, Math.max(0, step + by));
    picture.style.width = `${100 * (steps[step] ?? 1)}%`;
  };
  const caption = document.createElement('figcaption');
  caption.append(button('+', words.nearer(name), zoom(1)), button('−', words.further(name), zoom(-1)));
  const figure = document.createElement('figure');
  figure.append(caption, pane);
  return figure;
}

function button(face: string, label: string, onClick: () => void): HTMLButtonElement {
  const made = document.createElement('button');
  made.type = 'button';
  made.textContent = face;
  made.setAttribute('aria-label', label);
  made.addEventListener('click', onClick);
  return made;
}

/** A switch for each kind of mark that the drawing has. */
export function showSwitches(place: HTMLFieldSetElement, drawing: HTMLElement): void {
  const legend = document.createElement('legend');
  legend.textContent = words.layers;
  const switches = layerSwitches
    .map(({ name, roles }) => ({
      name,
      marks: drawing.querySelectorAll<SVGGElement>(roles.map((role) => `g.${role}`).join()),
    }))
    .filter(({ marks }) => marks.length > 0)
    .map(({ name, marks }) => switchOf(name, marks));
  place.replaceChildren(legend, ...switches);
  place.hidden = false;
}

function switchOf(name: string, marks: NodeListOf<SVGGElement>): HTMLLabelElement {
  const box = document.createElement('input');
  box.type = 'checkbox';
  box.checked = true;
  box.addEventListener('change', () => {
    for (const mark of marks) mark.style.display = box.checked ? '' : 'none';
  });
  const label = document.createElement('label');
  label.append(box, name);
  return label;
}

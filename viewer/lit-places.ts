import type { Heights, NamedPlace } from './heavy/places-of.ts';
import { painted } from './stage/paint.ts';
import type { Pane } from './stage/pane.ts';
import { svgElement } from './stage/svg-element.ts';
import { words } from './words.ts';

/** The places of both parts over the two panes: one pointed at, touched or gone to by key is lit, and named, in both. */
export interface LitPlaces {
  /** Says which place is lit. */
  readonly name: HTMLElement;
  readonly still: Layers;
  readonly moving: Layers;
  show(places: readonly NamedPlace[], sideSign: 1 | -1): void;
  /** How low and high the moving sections reach now, in their order; null: as at home. */
  stand(heights: readonly Heights[] | null): void;
}

interface Layers {
  readonly face: SVGElement;
  readonly side: SVGElement;
}

const layers = (): Layers => ({ face: svgElement('g'), side: svgElement('g') });

interface LitPlace {
  readonly place: NamedPlace;
  readonly marks: readonly SVGElement[];
  readonly beside: SVGElement | null;
}

export function litPlaces(panes: readonly Pane[]): LitPlaces {
  const name = document.createElement('p');
  name.className = 'lit-name';
  name.setAttribute('role', 'status');
  const [still, moving] = [layers(), layers()];
  let shown: readonly LitPlace[] = [];
  let lit = -1;

  const light = (next: number): void => {
    if (next === lit) return;
    for (const mark of shown[lit]?.marks ?? []) mark.classList.remove('lit');
    lit = next;
    for (const mark of shown[lit]?.marks ?? []) mark.classList.add('lit');
    const place = shown[lit]?.place;
    name.textContent = place === undefined ? '' : words.placeNamed(place);
  };
  for (const { element } of panes) {
    const point = ({ clientX, clientY }: PointerEvent): void => {
      const under = document.elementsFromPoint(clientX, clientY).map((one) => one.getAttribute('data-place'));
      light(smallest(shown, under.filter((key) => key !== null).map(Number)));
    };
    element.addEventListener('pointerdown', point);
    element.addEventListener('pointermove', (event) => {
      // a drag has no time for it
      if (event.buttons === 0) point(event);
    });
    element.addEventListener('pointerleave', () => light(-1));
    element.addEventListener('keydown', (event) => {
      const step = { n: 1, N: -1 }[event.key];
      if (step === undefined || event.ctrlKey || event.metaKey || shown.length === 0) return;
      event.preventDefault();
      light(lit < 0 && step < 0 ? shown.length - 1 : (lit + step + shown.length) % shown.length);
    });
  }
  return {
    name,
    still,
    moving,
    show: (places, sideSign) => {
      light(-1);
      for (const { face, side } of [still, moving]) {
        face.replaceChildren();
        side.replaceChildren();
      }
      shown = places.map((place, i) => {
        const into = place.part === 'fixed' ? still : moving;
        const onFace = painted(place.face);
        // depths of the two parts run away from one face, each its own way
        const beside = place.depth && band(place.depth, place.heights, place.part === 'fixed' ? -sideSign : sideSign);
        const marks = [onFace, ...(beside === null ? [] : [beside])];
        for (const mark of marks) {
          mark.setAttribute('class', 'lit-place');
          mark.setAttribute('data-place', String(i));
        }
        into.face.append(onFace);
        if (beside !== null) into.side.append(beside);
        return { place, marks, beside };
      });
    },
    stand: (heights) => {
      const sections = shown.filter(({ place }) => place.part === 'moving' && place.kind === 'section');
      sections.forEach(({ place, beside }, i) => {
        if (beside !== null) reach(beside, heights?.[i] ?? place.heights);
      });
    },
  };
}

/** Of places that lie over one another the one that reaches least far up and down: a larger one can be pointed at beside it. */
function smallest(shown: readonly LitPlace[], under: readonly number[]): number {
  const reachOf = (i: number): number => {
    const [low, high] = shown[i]?.place.heights ?? [0, 0];
    return high - low;
  };
  return under.reduce((best, i) => (best < 0 || reachOf(i) < reachOf(best) ? i : best), -1);
}

function band([from, to]: readonly [number, number], heights: Heights, sign: number): SVGElement {
  const made = svgElement('rect', { x: Math.min(sign * from, sign * to), width: Math.abs(to - from) });
  reach(made, heights);
  return made;
}

function reach(rect: SVGElement, [low, high]: Heights): void {
  rect.setAttribute('y', String(-high));
  rect.setAttribute('height', String(high - low));
}

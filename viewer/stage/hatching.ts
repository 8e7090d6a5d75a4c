import { svgElement } from './svg-element.ts';

/** Areas told apart by tone and hatching, so that neither needs the other or any colour. */
const kinds = {
  relief: { pitch: 7, turn: -45, lines: 'M0,3.5H7' },
  foul: { pitch: 5, turn: -45, lines: 'M0,2.5H5M2.5,0V5' },
} as const;

export type Hatched = keyof typeof kinds;

/** The fills of those areas, as fine on the screen at any scale, for a plane in mm and, named `-sample`, for a key in pixels. */
export function hatching() {
  const element = svgElement('defs');
  const onPlane = Object.entries(kinds).map(([kind, { pitch, turn, lines }]) => {
    const made = [`${kind}-hatching`, `${kind}-sample`].map((id) => {
      const size = { width: pitch, height: pitch, patternUnits: 'userSpaceOnUse' };
      const pattern = svgElement('pattern', { id, ...size, patternTransform: `rotate(${turn})` });
      pattern.append(
        svgElement('rect', { class: `${kind}-tone`, width: pitch, height: pitch }),
        svgElement('path', { class: `${kind}-lines`, d: lines }),
      );
      return pattern;
    });
    element.append(...made);
    return { pattern: made[0] as SVGElement, turn };
  });
  const scaleTo = (pxPerMm: number): void => {
    for (const { pattern, turn } of onPlane)
      pattern.setAttribute('patternTransform', `scale(${1 / pxPerMm}) rotate(${turn})`);
  };
  return { element, scaleTo };
}

/** A piece of such an area, for a key. */
export function hatchedSample(kind: Hatched): SVGElement {
  const sample = svgElement('svg', { class: 'sample', width: 28, height: 16, 'aria-hidden': 'true' });
  sample.append(svgElement('rect', { class: kind, x: 1, y: 1, width: 26, height: 14 }));
  return sample;
}

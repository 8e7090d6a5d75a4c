import type { SvgNode } from '../../src/drawing/svg-marks.ts';

const svg = 'http://www.w3.org/2000/svg';

/** An element made of what a worker sent. */
export function painted({ tag, attributes, children }: SvgNode): SVGElement {
  const element = document.createElementNS(svg, tag) as SVGElement;
  for (const [name, value] of Object.entries(attributes)) element.setAttribute(name, value);
  for (const child of children) element.append(typeof child === 'string' ? child : painted(child));
  return element;
}

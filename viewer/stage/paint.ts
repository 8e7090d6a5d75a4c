import type { SvgNode } from '../../src/drawing/svg/svg-marks.ts';
import { svgElement } from './svg-element.ts';

/** An element made of what a worker sent. */
export function painted({ tag, attributes, children }: SvgNode): SVGElement {
  const element = svgElement(tag, attributes);
  for (const child of children) element.append(typeof child === 'string' ? child : painted(child));
  return element;
}

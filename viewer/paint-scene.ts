import { type Container, SVG, type Svg } from '@svgdotjs/svg.js';
import { onSheet, type Scene, type View } from '../src/drawing/scene.ts';
import type { Ink } from '../src/drawing/styles.ts';
import { svgTree } from '../src/drawing/svg.ts';
import type { SvgNode } from '../src/drawing/svg-marks.ts';
import { vec } from '../src/geometry/vec.ts';

/** Paints some views of a scene as one picture that shows just them; null where the scene has none of them. */
export function paintViews(scene: Scene, ids: readonly string[], inks: Readonly<Record<Ink, string>>): Svg | null {
  const views = scene.views.filter(({ id }) => ids.includes(id));
  if (views.length === 0) return null;
  const { x, y, width, height } = windowOn(views, scene);
  const picture = SVG()
    .viewbox(x, y, width, height)
    .attr({ role: 'img', 'font-family': 'Arial, Helvetica, sans-serif' });
  for (const child of svgTree(scene, inks).children) {
    if (typeof child !== 'string' && ids.includes(child.attributes.id ?? '')) paint(child, picture);
  }
  return picture;
}

function paint({ tag, attributes, children }: SvgNode, into: Container): void {
  const element = into.element(tag).attr(attributes);
  for (const child of children) {
    if (typeof child === 'string') element.words(child);
    else paint(child, element as Container);
  }
}

/** The part of the sheet that some views take up, in SVG's own y. */
function windowOn(views: readonly View[], { heightMm, penMm }: Scene) {
  const corners = views.flatMap((view) => [
    onSheet(view, vec(view.frame.minX, view.frame.minY)),
    onSheet(view, vec(view.frame.maxX, view.frame.maxY)),
  ]);
  const [xs, ys] = [corners.map(({ x }) => x), corners.map(({ y }) => heightMm - y)];
  const [left, top] = [Math.min(...xs) - 2 * penMm, Math.min(...ys) - 2 * penMm];
  return { x: left, y: top, width: Math.max(...xs) + 2 * penMm - left, height: Math.max(...ys) + 2 * penMm - top };
}

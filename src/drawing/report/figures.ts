import { type Box, boxAround } from '../../geometry/plane/edge-box.ts';
import { sub, vec } from '../../geometry/plane/vec.ts';
import { viewedFromText } from '../../words/part-text.ts';
import { acrossOf } from '../fit/across.ts';
import { drawFit } from '../fit/draw-fit.ts';
import { onSheet, type Scene, type View } from '../scene/scene.ts';
import { paperInks } from '../scene/styles.ts';
import { svgTree } from '../svg/svg.ts';
import { el, type Html } from './html.ts';
import type { ReportInput } from './report-input.ts';

/** A drawing on the page with its caption; wide ones scroll on a narrow screen, so that their lettering stays legible. */
export const figure = (id: string, scene: Scene, caption: string, className = 'wide'): Html =>
  el(
    'figure',
    { class: className },
    el(
      'div',
      { class: 'scroll', role: 'region', tabindex: '0', 'aria-label': scene.title },
      prefixed(svgOn(scene), id),
    ),
    el('figcaption', {}, caption),
  );

/** The page gives the size and the paper. */
function svgOn(scene: Scene): Html {
  const { tag, attributes, children } = svgTree(scene, paperInks);
  const { width, height, ...rest } = attributes;
  return { tag, attributes: { ...rest, class: 'drawing' }, children };
}

/** Names inside a drawing made its own, so that several stand on one page. */
function prefixed({ tag, attributes, children }: Html, prefix: string): Html {
  const own = Object.entries(attributes).map(([name, value]): [string, string] => {
    if (name === 'id') return [name, `${prefix}-${value}`];
    if (name === 'aria-labelledby') return [name, value.replace(/\S+/g, (id) => `${prefix}-${id}`)];
    return [name, value.replace(/^url\(#/, `url(#${prefix}-`)];
  });
  return {
    tag,
    attributes: Object.fromEntries(own),
    children: children.map((child) => (typeof child === 'string' ? child : prefixed(child, prefix))),
  };
}

/** The views of the drawing as figures of the page: from the face, the details, the key, from the side, the depths. */
export function drawings(input: ReportInput): Html[] {
  const sheet = drawFit(input);
  const named = (ids: RegExp, title: string): Scene | null => cropped(sheet, ids, title);
  const details = sheet.views.filter(({ id }) => id.startsWith('detail-'));
  const scenes = {
    face: named(/^face-view$/, 'Face view'),
    side: named(/^side-view$/, 'Side view'),
    depths: named(/^depths$/, 'Depths'),
    key: named(/^legend$/, 'What the lines mean'),
  };
  const asFigure = (id: string, scene: Scene | null, caption: string, className?: string): Html[] =>
    scene === null ? [] : [figure(id, scene, caption, className)];
  return [
    ...asFigure('face', scenes.face, `Face view. ${viewedFromText(input.joint)}`),
    el(
      'div',
      { class: 'beside' },
      ...details.flatMap(({ id }) =>
        asFigure(id, named(new RegExp(`^${id}$`), `Detail ${id.slice(-1).toUpperCase()}`), detailCaption(id), 'small'),
      ),
    ),
    el(
      'div',
      { class: 'key-and-side' },
      asFigure('key', scenes.key, 'What the lines mean.', 'key'),
      asFigure(
        'side',
        scenes.side,
        `Side view, level with the face view, seen from its ${acrossOf(input).from}.`,
        'tall',
      ),
      asFigure('depths', scenes.depths, 'The depths of every section from its own mating face.', 'depths'),
    ),
  ];
}

const detailCaption = (id: string): string => `Detail ${id.slice(-1).toUpperCase()} of the face view, enlarged.`;

/** Some views of a sheet on paper of their own; null where it has none of them. */
function cropped(sheet: Scene, ids: RegExp, title: string): Scene | null {
  const views = sheet.views.filter(({ id }) => ids.test(id));
  return views.length === 0 ? null : sceneOf(views, title, sheet);
}

/** Views on paper that is just large enough for them. */
export function sceneOf(
  views: readonly View[],
  title: string,
  { description, penMm }: Pick<Scene, 'description' | 'penMm'>,
): Scene {
  const around = boxAround(views.map(boxOnSheet));
  const marginMm = 6 * penMm;
  const corner = vec(around.minX - marginMm, around.minY - marginMm);
  return {
    title,
    description,
    widthMm: around.maxX - around.minX + 2 * marginMm,
    heightMm: around.maxY - around.minY + 2 * marginMm,
    penMm,
    views: views.map((view) => ({ ...view, at: sub(view.at, corner) })),
  };
}

function boxOnSheet(view: View): Box {
  const { minX, minY, maxX, maxY } = view.frame;
  const [low, high] = [onSheet(view, vec(minX, minY)), onSheet(view, vec(maxX, maxY))];
  return { minX: low.x, minY: low.y, maxX: high.x, maxY: high.y };
}

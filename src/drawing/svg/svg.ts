import { type Vec, vec } from '../../geometry/plane/vec.ts';
import { groundsOfWords } from '../scene/marks.ts';
import { type Layer, onSheet, type Scene, type View } from '../scene/scene.ts';
import { type Ink, paperInks, styleOf } from '../scene/styles.ts';
import { circleNode, markNodes, node, type SvgNode } from './svg-marks.ts';
import { number, paintOf } from './svg-paint.ts';

/** The scene as a self-contained SVG file at true scale: one user unit is one millimetre, arcs are real arcs. */
export const svgOf = (scene: Scene): string => `<?xml version="1.0" encoding="UTF-8"?>\n${written(svgTree(scene))}\n`;

/** The scene as a tree of SVG elements, in the inks of paper or of a dark screen. */
export function svgTree(scene: Scene, inks: Readonly<Record<Ink, string>> = paperInks): SvgNode {
  const [width, height] = [number(scene.widthMm), number(scene.heightMm)];
  const attributes = {
    xmlns: 'http://www.w3.org/2000/svg',
    width: `${width}mm`,
    height: `${height}mm`,
    viewBox: `0 0 ${width} ${height}`,
    role: 'img',
    'aria-labelledby': 'drawing-title drawing-description',
    'font-family': 'Arial, Helvetica, sans-serif',
  };
  return node(
    'svg',
    attributes,
    node('title', { id: 'drawing-title' }, scene.title),
    node('desc', { id: 'drawing-description' }, scene.description),
    node('rect', { id: 'sheet', width, height, fill: inks.paper }),
    ...scene.views.map((view) => viewNode(view, scene, inks)),
  );
}

function viewNode(view: View, { heightMm, penMm }: Scene, inks: Readonly<Record<Ink, string>>): SvgNode {
  const place = (p: Vec): Vec => {
    const { x, y } = onSheet(view, p);
    return vec(x, heightMm - y);
  };
  const words = groundsOfWords(view);
  const clipId = `${view.id}-clip`;
  const clips =
    view.clip === null
      ? []
      : [node('clipPath', { id: clipId }, circleNode(place(view.clip.centre), view.clip.radiusMm * view.scale))];
  const layers = view.layers.map(({ role, marks }: Layer) => {
    const style = styleOf(role);
    const placing = { place, scale: view.scale, penMm, style, words, paper: inks.paper };
    const attributes = {
      id: `${view.id}-${role}`,
      class: role,
      ...(view.clip !== null && style.clipped ? { 'clip-path': `url(#${clipId})` } : {}),
      ...paintOf(style, penMm, inks),
    };
    return node('g', attributes, ...marks.flatMap((mark) => markNodes(mark, placing)));
  });
  return node('g', { id: view.id, class: 'view' }, ...clips, ...layers);
}

function written({ tag, attributes, children }: SvgNode): string {
  const words = Object.entries(attributes).map(([name, value]) => ` ${name}="${escaped(value)}"`);
  const start = `<${tag}${words.join('')}`;
  if (children.length === 0) return `${start}/>`;
  const inner = children.map((child) => (typeof child === 'string' ? escaped(child) : `\n${written(child)}`));
  const close = children.some((child) => typeof child !== 'string') ? `\n</${tag}>` : `</${tag}>`;
  return `${start}>${inner.join('')}${close}`;
}

/** What XML 1.0 has no place for at all: control characters and halves of letters. */
const noXml = /[^\t\n\r\u0020-\ud7ff\ue000-\ufffd\u{10000}-\u{10ffff}]/gu;

/** Text as it stands in XML and HTML, between tags or between double quotes. */
export const escaped = (text: string): string =>
  text.replace(noXml, '·').replace(/&/g, '&amp;').replace(/</g, '&lt;').replace(/>/g, '&gt;').replace(/"/g, '&quot;');

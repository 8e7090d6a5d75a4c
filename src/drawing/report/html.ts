import { escaped } from '../svg/svg.ts';
import { node, type SvgNode } from '../svg/svg-marks.ts';

/** An element of a page; the same tree as a drawing's, so that drawings stand in it as they are. */
export type Html = SvgNode;

type Child = Html | string | null;

/** An element; what is null is left out. */
export const el = (
  tag: string,
  attributes: Readonly<Record<string, string>>,
  ...children: readonly (Child | readonly Child[])[]
): Html => node(tag, attributes, ...children.flat().filter((child) => child !== null));

/** A paragraph for each text. */
export const paragraphs = (texts: readonly string[]): Html[] => texts.map((text) => el('p', {}, text));

/** A list; nothing where it has no entries. */
export const list = (texts: readonly string[]): Html | null =>
  texts.length === 0
    ? null
    : el(
        'ul',
        {},
        texts.map((text) => el('li', {}, text)),
      );

/** Terms and what is to be said of each; nothing where there are none. */
export const facts = (pairs: readonly (readonly [string, string])[]): Html | null =>
  pairs.length === 0
    ? null
    : el(
        'dl',
        {},
        pairs.flatMap(([term, words]) => [el('dt', {}, term), el('dd', {}, words)]),
      );

/** A table with a caption; the first row heads the columns, the first cell of each further row its row. */
export function table(caption: string, rows: readonly (readonly string[])[]): Html | null {
  const [head, ...body] = rows;
  if (head === undefined || body.length === 0) return null;
  const heads = head.map((words, i) =>
    words === '' ? el('td', {}) : el('th', { scope: 'col', ...columnClass(body, i) }, words),
  );
  const cells = ([first = '', ...rest]: readonly string[]): Html[] => [
    el('th', { scope: 'row', class: lengthClass(first) }, first),
    ...rest.map(cell),
  ];
  return el(
    'div',
    { class: 'scroll', role: 'region', tabindex: '0', 'aria-label': caption },
    el(
      'table',
      body.length > mostKeptTogether ? {} : { class: 'short' },
      el('caption', {}, caption),
      el('thead', {}, el('tr', {}, heads)),
      el(
        'tbody',
        {},
        body.map((row) => el('tr', {}, cells(row))),
      ),
    ),
  );
}

const columnClass = (body: readonly (readonly string[])[], i: number): Record<string, string> =>
  i > 0 && body.some((row) => isFigure(row[i] ?? '')) ? { class: 'figure' } : {};

/** Rows of a table that is not parted between two pages. */
const mostKeptTogether = 8;

/** Figures stand under one another by their right ends; what is short stays on its line. */
const cell = (words: string): Html => el('td', { class: isFigure(words) ? 'figure' : lengthClass(words) }, words);

const isFigure = (words: string): boolean => /^[−-]?[\d.]+( ?(mm|in|mm²|in²|°))?$/.test(words);

const lengthClass = (words: string): string => (words.length <= 12 ? 'word' : words.length <= 28 ? 'line' : 'lines');

/** A part of the page under its heading; left out where all its children are null. */
export function section(id: string, heading: string, ...children: readonly (Child | readonly Child[])[]): Html | null {
  const told = children.flat().filter((child) => child !== null);
  if (told.length === 0) return null;
  return el('section', { id, 'aria-labelledby': `${id}-heading` }, el('h2', { id: `${id}-heading` }, heading), told);
}

export const subheading = (words: string, below: Html | null | readonly Html[]): (Html | null)[] => {
  const told = [below].flat().filter((child) => child !== null);
  return told.length === 0 ? [] : [el('h3', {}, words), ...told];
};

/** What is read as text up to its end; nothing a job says may go in here. */
const asItIs = new Set(['style', 'script']);

const empty = new Set(['meta', 'br', 'hr', 'col']);

/** The element as text that is good HTML and good XML at once; only a style sheet and a script go in as they are. */
export function written({ tag, attributes, children }: Html): string {
  const words = Object.entries(attributes).map(([name, value]) => ` ${name}="${escaped(value)}"`);
  if (empty.has(tag)) return `<${tag}${words.join('')} />`;
  const inner = children.map((child) =>
    typeof child !== 'string' ? written(child) : asItIs.has(tag) ? child : escaped(child),
  );
  const end = blocks.has(tag) ? '\n' : '';
  return `<${tag}${words.join('')}>${inner.join('')}</${tag}>${end}`;
}

/** Elements that end a line of the file, so that it can be read and compared. */
const blocks = new Set(['p', 'li', 'tr', 'h1', 'h2', 'h3', 'dd', 'figure', 'section', 'table', 'svg', 'g', 'path']);

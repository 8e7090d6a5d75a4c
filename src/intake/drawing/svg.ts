import { DOMParser, type Element } from '@xmldom/xmldom';
import type { Reading } from '../../files/finding.ts';
import { decodedText } from '../decode-text.ts';
import type { Drawing, Note } from '../drawing.ts';
import { gathered } from '../gathered.ts';
import { chained, scaled } from './affine.ts';
import { sizingOf } from './svg-size.ts';
import { drawnInSvg } from './svg-walk.ts';

/**
 * Reads an SVG file: path, rect, circle, ellipse, line, polyline and polygon, in groups and by `use`, with their
 * transforms. SVG counts y downwards; the drawing is turned the right way up about its own (0, 0). What is hidden
 * is left out, what is no outline (text, pictures) is said.
 */
export function readSvg(file: string, bytes: Uint8Array): Reading<Drawing> {
  const svg = rootOf(file, decodedText(bytes));
  if (!svg.ok) return svg;
  const { map, unit } = sizingOf(svg.value);
  const drawing = gathered(file, unit, drawnInSvg(svg.value, chained(scaled(1, -1), map)));
  if (!drawing.ok) return drawing;
  return { ok: true, value: { ...drawing.value, inPixels: unit === null, notes: [turnedUp, ...drawing.value.notes] } };
}

const turnedUp: Note = { code: 'y-up', text: 'y is counted upwards in the part: (x, y) of the SVG is (x, −y) there' };

function rootOf(file: string, text: string): Reading<Element> {
  const troubles: string[] = [];
  let line = 0;
  const onError = (
    level: string,
    message: string,
    context: { readonly locator?: { readonly lineNumber?: number } },
  ) => {
    if (level === 'warning') return;
    line ||= context.locator?.lineNumber ?? 0;
    troubles.push(message);
  };
  let root: Element | null = null;
  try {
    root = new DOMParser({ onError }).parseFromString(text, 'image/svg+xml').documentElement;
  } catch (error) {
    // the parser has told onError why it stopped; should it ever not have, its own words do
    if (troubles.length === 0) troubles.push(error instanceof Error ? error.message : 'no XML');
  }
  if (root !== null && troubles.length === 0 && root.localName === 'svg') return { ok: true, value: root };
  const found = troubles[0] ?? `a <${root?.localName}> document`;
  const at = line > 0 ? `line ${line}` : '';
  return { ok: false, findings: [{ file, at, found, expected: 'a well-formed SVG file' }] };
}

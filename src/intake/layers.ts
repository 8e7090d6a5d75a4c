import type { HoleKind } from '../job/casting.ts';

/** Words in a layer's name that make its circles holes, and the letters their ids start with. */
const holeWords: readonly { readonly word: RegExp; readonly kind: HoleKind }[] = [
  { word: /\bdowels?\b|\bdowel[ _-]?(holes?|pins?)\b/i, kind: 'dowel' },
  { word: /\btapped\b|\btappings?\b/i, kind: 'tapped' },
  { word: /\bstuds?\b/i, kind: 'stud' },
  { word: /\bbolts?\b/i, kind: 'bolt' },
  { word: /\bbores?\b/i, kind: 'bore' },
];

/** Metal, whatever else the name says: `bolt bosses` are bosses. */
const metalWords = /\b(boss|bosses|pads?|lugs?|ribs?|walls?|flanges?|ears?)\b/i;

/** The kind of the holes on a layer by its name (`Dowels`, `M12_tapped`, `bolt holes`); null for any other layer. */
export function holeKindOf(layer: string): HoleKind | null {
  const words = layer.replace(/[_.]/g, ' ');
  if (metalWords.test(words)) return null;
  return holeWords.find(({ word }) => word.test(words))?.kind ?? null;
}

/** Whether a layer is one of holes, whatever they are: `holes`, `drill 11`. */
export const isOfHoles = (layer: string): boolean => {
  const words = layer.replace(/[_.]/g, ' ');
  return !metalWords.test(words) && /\bholes?\b|\bdrill(ed|ings?|s)?\b/i.test(words);
};

/** How ids of holes start of which only size and place tell what they are. */
export const untoldPrefix = 'H';

/** How ids of each kind of hole start: D1, B1 … */
export const idPrefixes: Readonly<Record<HoleKind, string>> = {
  dowel: 'D',
  bolt: 'B',
  tapped: 'T',
  stud: 'S',
  bore: 'BORE',
  planned: 'P',
};

type Depth = readonly [from: number, to: number];

export interface SectionName {
  readonly id: string;
  readonly depth: Depth | null;
}

const figure = String.raw`([-−]?\d+(?:\.\d+)?|[-−]?\.\d+)`;
const depthWritten = new RegExp(String.raw`^\s*${figure}\s*(?:\.\.|…|–|-|to|,)\s*${figure}\s*$`);

/** A depth as written: `12,90`, `12-90`, `-44..-30`, `-44 to 0`; null where it is none. */
export function depthIn(text: string): Depth | null {
  const [, from, to] = depthWritten.exec(text) ?? [];
  return from === undefined || to === undefined ? null : [signed(from), signed(to)];
}

const signed = (figures: string): number => Number(figures.replace('−', '-'));

/** A section's name, which may carry its depth behind an @: `ribs@12-90`, `skirt @ -44 to 0`. */
export function sectionNameOf(layer: string): SectionName {
  const at = layer.lastIndexOf('@');
  const depth = at > 0 ? depthIn(layer.slice(at + 1)) : null;
  return depth === null ? { id: layer.trim(), depth } : { id: layer.slice(0, at).trim(), depth };
}

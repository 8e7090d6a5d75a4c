import type { Finding, Reading } from '../files/finding.ts';
import { suggesting } from '../files/nearest.ts';
import { shown } from '../files/shown.ts';
import type { HoleKind } from '../job/casting.ts';
import type { Drawing, DrawnShape, SectionFacts } from './drawing.ts';
import type { ImportOptions } from './import-options.ts';
import { holeKindOf, isOfHoles, sectionNameOf } from './layers.ts';

export interface SectionShapes {
  readonly id: string;
  /** By the layer's name or by what is asked, in the part's units; the file's own word on it is in `facts`. */
  readonly depth: readonly [from: number, to: number] | null;
  readonly facts: SectionFacts | null;
  readonly shapes: DrawnShape[];
}

export interface HoleShapes {
  readonly layer: string;
  /** Null where the layer does not say. */
  readonly kind: HoleKind | null;
  readonly shapes: DrawnShape[];
}

/** What a drawing holds, by what it is to become. */
export interface SortedShapes {
  readonly sections: readonly SectionShapes[];
  readonly holeLayers: readonly HoleShapes[];
}

type SortOptions = Pick<ImportOptions, 'layers' | 'section' | 'holeLayers' | 'depth' | 'proposeHoles'>;

/**
 * Sorts shapes by layer (letter case set aside): layers asked for as holes or named so are holes, every other is a
 * section, or all are one where a section is asked for. Names that no layer has are findings.
 */
export function sortShapes(file: string, drawing: Drawing, asked: SortOptions): Reading<SortedShapes> {
  const byLayer = shapesByLayer(drawing);
  const findings = unknownLayers(
    file,
    asked,
    [...byLayer.values()].map(({ layer }) => layer),
  );
  if (findings.length > 0) return { ok: false, findings };
  const wanted = new Set(asked.layers.map(keyOf));
  const sections = new Map<string, SectionShapes>();
  const holeLayers: HoleShapes[] = [];
  for (const [key, { layer, shapes }] of byLayer) {
    if (wanted.size > 0 && !wanted.has(key)) continue;
    const facts = drawing.facts.get(layer) ?? null;
    const kind = asked.holeLayers.find((each) => keyOf(each.layer) === key)?.kind ?? (facts ? null : holeKindOf(layer));
    const isUntold = kind === null && facts === null && asked.proposeHoles !== null && isOfHoles(layer);
    if (kind !== null || isUntold) holeLayers.push({ layer, kind, shapes });
    else addToSection(sections, asked.section ?? layer, facts, shapes, asked.depth);
  }
  return { ok: true, value: { sections: [...sections.values()], holeLayers } };
}

const keyOf = (layer: string): string => layer.trim().toLowerCase();

function shapesByLayer({ shapes }: Drawing): Map<string, { readonly layer: string; readonly shapes: DrawnShape[] }> {
  const byLayer = new Map<string, { readonly layer: string; readonly shapes: DrawnShape[] }>();
  for (const drawn of shapes) {
    const key = keyOf(drawn.layer);
    const there = byLayer.get(key);
    if (there === undefined) byLayer.set(key, { layer: drawn.layer, shapes: [drawn] });
    else there.shapes.push(drawn);
  }
  return byLayer;
}

function addToSection(
  sections: Map<string, SectionShapes>,
  name: string,
  facts: SectionFacts | null,
  shapes: readonly DrawnShape[],
  otherwise: readonly [number, number] | null,
): void {
  const { id, depth } = facts === null ? sectionNameOf(name) : { id: name.trim(), depth: null };
  const there = sections.get(keyOf(name));
  // one by one: a spread of a hundred thousand arguments overflows the stack
  if (there !== undefined) for (const shape of shapes) there.shapes.push(shape);
  else sections.set(keyOf(name), { id, depth: depth ?? otherwise, facts, shapes: [...shapes] });
}

function unknownLayers(file: string, { layers, holeLayers }: SortOptions, known: readonly string[]): Finding[] {
  const names = [...layers, ...holeLayers.map(({ layer }) => layer)];
  const unknown = names.filter((name) => !known.some((layer) => keyOf(layer) === keyOf(name)));
  const expected = known.length === 0 ? 'a layer with something drawn on it' : `one of ${known.map(shown).join(', ')}`;
  return unknown.map((name) => suggesting({ file, at: 'layers', found: shown(name), expected }, name, known));
}

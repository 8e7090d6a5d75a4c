import type { Finding, Reading } from '../../files/finding.ts';
import type { Drawing } from '../drawing.ts';
import { gathered } from '../gathered.ts';
import type { LengthUnit } from '../length-unit.ts';
import { type Block, spreadOut } from './dxf-spread.ts';
import { type Entity, entitiesOf, numberOf, readTags, type Tags, textOf, unsoundNumbers } from './dxf-tags.ts';
import { dxfText } from './dxf-text.ts';

/**
 * Reads an ASCII DXF file, R12 to 2018: LINE, ARC, CIRCLE, LWPOLYLINE, POLYLINE, ELLIPSE, SPLINE and INSERT in model
 * space. Everything else is passed over and said; layers that are off or frozen too. Group codes and the meaning
 * of values are from memory of the published DXF reference.
 */
export function readDxf(file: string, bytes: Uint8Array): Reading<Drawing> {
  const text = dxfText(file, bytes);
  if (!text.ok) return text;
  const tags = readTags(file, text.value);
  if (!tags.ok) return tags;
  const sections = sectionsOf(file, tags.value);
  if (!sections.ok) return sections;
  const { blocks, entities } = sections.value;
  const findings = unsoundNumbers(file, [...blocks, ...entities]);
  if (findings.length > 0) return { ok: false, findings };
  const sheet = { blocks: blocksOf(blocks), hiddenLayers: hiddenLayersOf(sections.value.tables) };
  return gathered(file, unitOf(sections.value.header), spreadOut(sheet, entities));
}

interface Sections {
  /** The header's variables stand in one run of tags. */
  readonly header: Entity | null;
  readonly tables: readonly Entity[];
  readonly blocks: readonly Entity[];
  readonly entities: readonly Entity[];
}

function sectionsOf(file: string, tags: Tags): Reading<Sections> {
  const byName = new Map<string, Entity[]>();
  let header: Entity | null = null;
  let open: { readonly name: string; readonly entities: Entity[] } | null = null;
  for (const entity of entitiesOf(tags)) {
    if (entity.kind === 'SECTION') {
      const name = textOf(entity, 2).toUpperCase();
      if (name === 'HEADER') header = entity;
      open = { name, entities: [] };
    } else if (entity.kind === 'ENDSEC' && open !== null) {
      byName.set(open.name, open.entities);
      open = null;
    } else open?.entities.push(entity);
  }
  if (open !== null) return refused(file, `a file that breaks off in its ${open.name} section`, 'a whole DXF file');
  const entities = byName.get('ENTITIES');
  if (entities === undefined) return refused(file, 'no ENTITIES section', 'a DXF file with a drawing in it');
  return {
    ok: true,
    value: { header, tables: byName.get('TABLES') ?? [], blocks: byName.get('BLOCKS') ?? [], entities },
  };
}

const refused = (file: string, found: string, expected: string): Reading<never> => ({
  ok: false,
  findings: [{ file, at: '', found, expected } satisfies Finding],
});

function blocksOf(entities: readonly Entity[]): Map<string, Block> {
  const blocks = new Map<string, Block>();
  let inside: Entity[] = [];
  for (const entity of entities) {
    if (entity.kind === 'BLOCK') {
      inside = [];
      const base = { x: numberOf(entity, 10), y: numberOf(entity, 20) };
      blocks.set(textOf(entity, 2).toLowerCase(), { base, entities: inside });
    } else if (entity.kind !== 'ENDBLK') inside.push(entity);
  }
  return blocks;
}

/** Layers that are frozen (flag 1) or off (their colour is negative). */
function hiddenLayersOf(tables: readonly Entity[]): Set<string> {
  const layers = tables.filter(({ kind }) => kind === 'LAYER');
  const hidden = layers.filter((layer) => (numberOf(layer, 70) & 1) === 1 || numberOf(layer, 62, 7) < 0);
  return new Set(hidden.map((layer) => textOf(layer, 2).toLowerCase()));
}

/** $INSUNITS: 0 none, 1 inch, 4 mm, 5 cm, 6 m looked up; the rest from memory. */
const units: Readonly<Record<number, LengthUnit>> = {
  1: { name: 'in', mm: 25.4 },
  2: { name: 'ft', mm: 304.8 },
  4: { name: 'mm', mm: 1 },
  5: { name: 'cm', mm: 10 },
  6: { name: 'm', mm: 1000 },
  9: { name: 'thousandths of an inch', mm: 0.0254 },
  10: { name: 'yd', mm: 914.4 },
  13: { name: 'µm', mm: 0.001 },
  14: { name: 'dm', mm: 100 },
};

function unitOf(header: Entity | null): LengthUnit | null {
  if (header === null) return null;
  const { tags, from, to } = header;
  for (let i = from; i + 1 < to; i++) {
    if (tags.codes[i] === 9 && tags.values[i]?.trim() === '$INSUNITS') return units[Number(tags.values[i + 1])] ?? null;
  }
  return null;
}

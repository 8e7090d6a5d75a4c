import { shown } from '../../files/shown.ts';
import { type DrawingItem, fault, step, unread } from '../gathered.ts';
import { mappedShape } from '../outlines/shape.ts';
import { type Affine, chained, moved, scaled, turned, unmoved } from './affine.ts';
import { extrusionOf, shapeOf } from './dxf-shapes.ts';
import { type Entity, lineInFile, numberOf, textOf } from './dxf-tags.ts';

/** A drawing made once and inserted as often as wanted. */
export interface Block {
  readonly base: { readonly x: number; readonly y: number };
  readonly entities: readonly Entity[];
}

/** Blocks and layers by name; the format sets letter case aside, so names are in lower case. */
export interface DxfTables {
  readonly blocks: ReadonlyMap<string, Block>;
  readonly hiddenLayers: ReadonlySet<string>;
}

const deepestNesting = 32;

/** Where the spreading stands: the way from here to the drawing, and the blocks it lies in. */
interface Level {
  readonly map: Affine;
  /** The layer of the insert, which things on layer 0 of a block take over. */
  readonly layer: string | null;
  readonly within: readonly string[];
}

const outermost: Level = { map: unmoved, layer: null, within: [] };

/** Everything that entities draw, blocks spread out at every place they are inserted. */
export function* spreadOut(
  sheet: DxfTables,
  entities: readonly Entity[],
  level: Level = outermost,
): Generator<DrawingItem> {
  for (let i = 0; i < entities.length; i++) {
    const entity = entities[i] as Entity;
    const children = childrenOf(entities, i);
    i += children.length;
    const reason = whyUnseen(sheet, entity);
    if (reason !== null) yield unread(reason);
    else if (entity.kind === 'INSERT') yield* inserted(sheet, entity, level);
    else yield drawnBy(entity, children, level);
  }
}

function drawnBy(entity: Entity, children: readonly Entity[], level: Level): DrawingItem {
  const vertices = children.filter(({ kind }) => kind === 'VERTEX');
  const shape = shapeOf(entity, vertices);
  if (typeof shape === 'string') return unread(shape);
  const [layer, place] = [layerOf(entity, level), lineInFile(entity)];
  return { kind: 'shape', shape: mappedShape(level.map, shape), layer, place };
}

function* inserted(sheet: DxfTables, entity: Entity, level: Level): Generator<DrawingItem> {
  const name = textOf(entity, 2).toLowerCase();
  const block = sheet.blocks.get(name);
  const map = extrusionOf(entity);
  if (block === undefined) {
    yield fault(lineInFile(entity), `the block ${shown(name)}`, 'a block that the file holds');
  } else if (level.within.includes(name) || level.within.length >= deepestNesting) {
    yield fault(lineInFile(entity), `the block ${shown(name)} within itself`, 'blocks that end somewhere');
  } else if (map === null) {
    yield unread("INSERT out of the drawing's plane");
  } else {
    const [layer, within] = [layerOf(entity, level), [...level.within, name]];
    for (const at of placings(entity, block)) {
      yield step;
      yield* spreadOut(sheet, block.entities, { map: chained(level.map, map, at), layer, within });
    }
  }
}

function layerOf(entity: Entity, { layer }: Level): string {
  const own = textOf(entity, 8, '0');
  return own === '0' && layer !== null ? layer : own;
}

/** VERTEX and ATTRIB entities belong to the one before them, up to SEQEND. */
function childrenOf(entities: readonly Entity[], parent: number): Entity[] {
  const children: Entity[] = [];
  for (let i = parent + 1; i < entities.length; i++) {
    const child = entities[i] as Entity;
    if (child.kind !== 'VERTEX' && child.kind !== 'ATTRIB' && child.kind !== 'SEQEND') break;
    children.push(child);
  }
  return children;
}

function whyUnseen({ hiddenLayers }: DxfTables, entity: Entity): string | null {
  if (numberOf(entity, 67) === 1) return 'in paper space';
  if (numberOf(entity, 60) === 1) return 'made invisible';
  return hiddenLayers.has(textOf(entity, 8, '0').toLowerCase()) ? 'on a layer that is off or frozen' : null;
}

/** Each placing of an insert's rows and columns: base point to the origin, scaled, turned, moved to its place. */
function* placings(entity: Entity, { base }: Block): Generator<Affine> {
  const at = { x: numberOf(entity, 10), y: numberOf(entity, 20) };
  const turn = turned((numberOf(entity, 50) * Math.PI) / 180);
  const scale = scaled(numberOf(entity, 41, 1), numberOf(entity, 42, 1));
  const [columns, rows] = [Math.max(1, numberOf(entity, 70, 1)), Math.max(1, numberOf(entity, 71, 1))];
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      const cell = moved({ x: column * numberOf(entity, 44), y: row * numberOf(entity, 45) });
      yield chained(moved(at), turn, cell, scale, moved({ x: -base.x, y: -base.y }));
    }
  }
}

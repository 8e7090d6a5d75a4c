import type { Box, GeosPlane, Shape } from './geos-plane.ts';
import { type Layer, layerAt } from './layered-solid.ts';

/** What goes round: a ball, or a flat that is as wide at every depth. */
export interface Tool {
  readonly radiusMm: number;
  readonly nose: 'ball' | 'flat';
}

/** Fillets are told too small by as much, mm, so that a tool in a corner of its own radius is not turned away. */
const slackMm = 5e-3;

/** Chords to a quarter turn of what GEOS grows. */
const quarter = 16;

/** Grown so much more, chords touch the true arc from outside. */
const overChords = 1 / Math.cos(Math.PI / (4 * quarter));

/** Rings of levels about an end of a layer, between it and where a ball just clears it. */
const rings = 12;

/** Less metal than this, mm², is none. */
const spotMm2 = 1e-6;

/** A height of a ball's centre, or a range of heights. */
interface Level {
  readonly fromMm: number;
  readonly toMm: number;
}

/**
 * What a cutter cannot take of the metal that is planned to go. The cutter may be wherever its body touches nothing
 * that must stay; how it gets there is not asked. `leftAt` errs on the side of less metal left: by 2 · `slackMm` and
 * the chords' height where floors and walls bound the cut, since the heights at which a ball's centre just clears a
 * layer are looked at by themselves; and by radius · π / (2 · `rings`) at most where a ball hangs over the edge of a
 * floor. `leftAtMost` is quicker and errs on the side of more.
 */
export class CutterBody {
  readonly #geos: GeosPlane;
  readonly #layers: readonly Layer[];
  readonly #tool: Tool;
  readonly #frame: Shape | null;
  readonly #stay: Map<Layer, Shape>;
  readonly #allowed = new Map<string, Shape>();
  readonly #left = new Map<number, Shape>();
  readonly #singles: readonly Level[];
  readonly #ranges: readonly Level[];

  constructor(geos: GeosPlane, layers: readonly Layer[], tool: Tool) {
    this.#geos = geos;
    this.#layers = layers;
    this.#tool = tool;
    const bounds = geos.bounds(geos.union(...layers.map(({ planned }) => planned)));
    this.#frame = bounds && geos.box(grown(bounds, 2 * tool.radiusMm));
    const window = geos.box(grown(bounds ?? { x0: 0, y0: 0, x1: 0, y1: 0 }, 4 * tool.radiusMm));
    this.#stay = new Map(layers.map((layer) => [layer, geos.intersection(layer.stay, window)]));
    const { singles, ranges } = levelsOf(layers, tool.radiusMm);
    this.#singles = singles;
    this.#ranges = ranges;
  }

  get radiusMm(): number {
    return this.#tool.radiusMm;
  }

  /** The fillets at a depth, a little less at most than they are. */
  leftAt(mm: number): Shape {
    const known = this.#left.get(mm);
    if (known !== undefined) return known;
    const most = this.leftAtMost(mm);
    const left = this.#tool.nose === 'flat' ? most : this.#without(most, mm, this.#ranges);
    this.#left.set(mm, left);
    return left;
  }

  /** The fillets at a depth, no less than they are but for `slackMm`. */
  leftAtMost(mm: number): Shape {
    const layer = layerAt(this.#layers, mm);
    if (layer === null) return this.#geos.shape([]);
    const here = { fromMm: mm, toMm: mm };
    if (this.#tool.nose === 'ball') return this.#without(layer.planned, mm, [here, ...this.#singles]);
    return this.#isSpot(layer.planned)
      ? this.#geos.shape([])
      : this.#take(layer.planned, this.#flatRoom(layer), this.#tool.radiusMm);
  }

  #without(metal: Shape, mm: number, levels: readonly Level[]): Shape {
    const { radiusMm } = this.#tool;
    let left = metal;
    for (const level of levels) {
      if (this.#isSpot(left)) return this.#geos.shape([]);
      const off = Math.max(0, level.fromMm - mm, mm - level.toMm);
      if (off < radiusMm) left = this.#take(left, this.#ballRoom(level), Math.sqrt(radiusMm ** 2 - off ** 2));
    }
    return this.#isSpot(left) ? this.#geos.shape([]) : left;
  }

  #isSpot(shape: Shape): boolean {
    return this.#geos.areaMm2(shape) < spotMm2;
  }

  /** Metal without what lies within a radius of any place the centre may be. */
  #take(metal: Shape, room: Shape, radiusMm: number): Shape {
    const geos = this.#geos;
    const near = geos.intersection(room, geos.box(grown(geos.bounds(metal) as Box, 1.1 * radiusMm)));
    return geos.isEmpty(near) ? metal : geos.difference(metal, geos.buffer(near, radiusMm * overChords, quarter));
  }

  #flatRoom(layer: Layer): Shape {
    return this.#roomWithout(`flat ${this.#layers.indexOf(layer)}`, () => [
      this.#inflated(this.#stay.get(layer) as Shape, this.#tool.radiusMm),
    ]);
  }

  /** Where a ball's centre may be at some height of a level. */
  #ballRoom(level: Level): Shape {
    const { radiusMm } = this.#tool;
    return this.#roomWithout(`${level.fromMm} ${level.toMm}`, () =>
      this.#layers.flatMap((layer) => {
        const off = Math.max(0, layer.fromMm - level.fromMm, level.toMm - layer.toMm);
        // within a range a layer is in the way at all heights or at none
        const middle = (level.fromMm + level.toMm) / 2;
        if (Math.max(layer.fromMm - middle, middle - layer.toMm) > radiusMm - 1e-9) return [];
        return [this.#inflated(this.#stay.get(layer) as Shape, Math.sqrt(Math.max(0, radiusMm ** 2 - off ** 2)))];
      }),
    );
  }

  #roomWithout(key: string, obstacles: () => readonly Shape[]): Shape {
    const known = this.#allowed.get(key);
    if (known !== undefined) return known;
    const room =
      this.#frame === null
        ? this.#geos.shape([])
        : this.#geos.difference(this.#frame, this.#geos.union(...obstacles()));
    this.#allowed.set(key, room);
    return room;
  }

  #inflated(shape: Shape, mm: number): Shape {
    return mm <= slackMm || this.#geos.isEmpty(shape) ? shape : this.#geos.buffer(shape, mm - slackMm, quarter);
  }
}

const grown = ({ x0, y0, x1, y1 }: Box, mm: number): Box => ({ x0: x0 - mm, y0: y0 - mm, x1: x1 + mm, y1: y1 + mm });

/** Heights at which what is in the way changes by a leap, each by itself, and the ranges between them, cut small. */
function levelsOf(layers: readonly Layer[], radiusMm: number): { singles: Level[]; ranges: Level[] } {
  const ends = [...new Set(layers.flatMap(({ fromMm, toMm }) => [fromMm, toMm]).filter(Number.isFinite))];
  const leaps = ends.flatMap((mm) => [mm - radiusMm, mm, mm + radiusMm]);
  const between = Array.from({ length: rings - 1 }, (_, i) => radiusMm * Math.cos(((i + 1) * Math.PI) / (2 * rings)));
  const stops = [...leaps, ...ends.flatMap((mm) => between.flatMap((by) => [mm - by, mm + by]))].sort((a, b) => a - b);
  return {
    singles: distinct(leaps.sort((a, b) => a - b)).map((mm) => ({ fromMm: mm, toMm: mm })),
    ranges: distinct(stops).flatMap((toMm, i, all) => (i === 0 ? [] : [{ fromMm: all[i - 1] as number, toMm }])),
  };
}

const distinct = (sorted: readonly number[]): number[] =>
  sorted.filter((mm, i) => i === 0 || mm - (sorted[i - 1] as number) > 1e-7);

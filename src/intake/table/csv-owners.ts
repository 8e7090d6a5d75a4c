import type { Cells } from './csv-cells.ts';

/** The columns that name what a row outlines. */
const naming = ['section', 'hollow', 'do not cut'] as const;
type Naming = (typeof naming)[number];

/** Rows by the section, the hollow or the region not to be cut that they outline, in the order these are first named. */
type RowsByOwner = Readonly<Record<Naming, ReadonlyMap<string, readonly Cells[]>>>;

/** Sorts rows by what they name, letter case set aside; a row that names nothing goes with the row above. */
export function rowsByOwner(rows: readonly Cells[]): RowsByOwner {
  const owners = { section: new Owners(), hollow: new Owners(), 'do not cut': new Owners() };
  let [list, name]: [Naming, string | null] = ['section', null];
  for (const cells of rows) {
    const [named, second] = naming.filter((column) => cells.text(column) !== null);
    if (named !== undefined && second !== undefined)
      cells.refuse(second, `a ${named} and a ${second} in one`, 'one or the other');
    if (named !== undefined) [list, name] = [named, cells.text(named)];
    if (name === null) cells.refuse('section', 'nothing, nor anything above', 'the section that this row belongs to');
    owners[list].add(name ?? '', cells);
  }
  return { section: owners.section.rows(), hollow: owners.hollow.rows(), 'do not cut': owners['do not cut'].rows() };
}

class Owners {
  readonly #owned = new Map<string, { readonly name: string; readonly own: Cells[] }>();

  add(name: string, cells: Cells): void {
    const there = this.#owned.get(name.toLowerCase());
    if (there === undefined) this.#owned.set(name.toLowerCase(), { name, own: [cells] });
    else there.own.push(cells);
  }

  /** By the name as it was first written. */
  rows(): Map<string, Cells[]> {
    return new Map([...this.#owned.values()].map(({ name, own }) => [name, own]));
  }
}

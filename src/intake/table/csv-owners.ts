import type { Cells } from './csv-cells.ts';

/** Rows by the section or the hollow they outline, in the order these are first named. */
interface RowsByOwner {
  readonly sections: ReadonlyMap<string, readonly Cells[]>;
  readonly hollows: ReadonlyMap<string, readonly Cells[]>;
}

/** Sorts rows by what they name, letter case set aside; a row that names nothing goes with the row above. */
export function rowsByOwner(rows: readonly Cells[]): RowsByOwner {
  const owners = { sections: new Owners(), hollows: new Owners() };
  let list: keyof RowsByOwner = 'sections';
  let name: string | null = null;
  for (const cells of rows) {
    const [section, hollow] = [cells.text('section'), cells.text('hollow')];
    if (section !== null && hollow !== null)
      cells.refuse('hollow', 'a section and a hollow in one', 'one or the other');
    if (section !== null || hollow !== null) list = hollow === null ? 'sections' : 'hollows';
    name = hollow ?? section ?? name;
    if (name === null) cells.refuse('section', 'nothing, nor anything above', 'the section that this row belongs to');
    owners[list].add(name ?? '', cells);
  }
  return { sections: owners.sections.rows(), hollows: owners.hollows.rows() };
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

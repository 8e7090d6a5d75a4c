import type { Finding } from '../../files/finding.ts';
import { suggesting } from '../../files/nearest.ts';
import { shown } from '../../files/shown.ts';
import type { Row } from './csv-rows.ts';

/** The cells of one row by what they mean; a cell that means nothing becomes a finding and reads as blank. */
export class Cells {
  readonly #file: string;
  readonly #row: Row;
  readonly #decimalComma: boolean;
  readonly #findings: Finding[];

  constructor(file: string, row: Row, decimalComma: boolean, findings: Finding[]) {
    this.#file = file;
    this.#row = row;
    this.#decimalComma = decimalComma;
    this.#findings = findings;
  }

  get line(): number {
    return this.#row.line;
  }

  text(column: string): string | null {
    return this.#row.cells.get(column) ?? null;
  }

  /** A number with a decimal point, or with a decimal comma where no comma parts the cells; null where blank. */
  number(column: string): number | null {
    const text = this.text(column);
    if (text === null) return null;
    const plain = text.replace('−', '-');
    if (/^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i.test(plain)) return Number(plain);
    if (this.#decimalComma && /^[+-]?(\d+,\d*|,\d+)$/.test(plain)) return Number(plain.replace(',', '.'));
    const point = this.#decimalComma ? '' : ', with a decimal point';
    this.refuse(column, shown(text), `a plain number${point}`);
    return null;
  }

  /** A number that must be there; NaN and a finding where it is not. */
  needed(column: string): number {
    if (this.text(column) === null) this.refuse(column, 'nothing', 'a number');
    return this.number(column) ?? Number.NaN;
  }

  /** A number over 0; null where blank. */
  size(column: string): number | null {
    const value = this.number(column);
    if (value === null || value > 0) return value;
    this.refuse(column, String(value), 'more than 0');
    return null;
  }

  /** One of the words known; null where blank. */
  word<T extends string>(column: string, known: readonly T[]): T | null {
    const text = this.text(column);
    const word = known.find((each) => each === text?.toLowerCase());
    if (text === null || word !== undefined) return word ?? null;
    const finding = { file: this.#file, at: this.#at(column), found: shown(text), expected: known.join(', ') };
    this.#findings.push(suggesting(finding, text, known));
    return null;
  }

  refuse(column: string, found: string, expected: string): void {
    this.#findings.push({ file: this.#file, at: this.#at(column), found, expected });
  }

  #at(column: string): string {
    return `line ${this.line}, ${column}`;
  }
}

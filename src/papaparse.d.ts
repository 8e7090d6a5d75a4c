// The part of papaparse that these rooms use; its own declarations would let in every global of Node.

interface ParseResult<Row> {
  readonly data: readonly Row[];
  readonly errors: readonly { readonly message: string; readonly row?: number }[];
}

interface How {
  readonly delimiter: string;
  readonly header: false;
  readonly skipEmptyLines: false;
}

declare const papaparse: { parse<Row>(text: string, how: How): ParseResult<Row> };
export = papaparse;

/** The part of the `dxf` package that the tests use; it brings no declarations of its own. */
declare module 'dxf' {
  export interface Polylines {
    readonly polylines: readonly { readonly vertices: readonly (readonly [x: number, y: number])[] }[];
  }
  export function parseString(text: string): unknown;
  export function toPolylines(parsed: unknown): Polylines;
}

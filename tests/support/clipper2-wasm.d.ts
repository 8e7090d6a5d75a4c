/** The part of clipper2-wasm that the tests use; its own declarations are not where its package.json says. */
declare module 'clipper2-wasm' {
  export interface Deletable {
    delete(): void;
  }
  export interface PathD extends Deletable {
    assign(points: Float64Array): void;
  }
  export interface PathsD extends Deletable {
    push_back(path: PathD): void;
    size(): number;
  }
  export interface Clipper2 {
    readonly PathD: new () => PathD;
    readonly PathsD: new () => PathsD;
    readonly FillRule: { readonly NonZero: number; readonly EvenOdd: number; readonly Positive: number };
    readonly JoinType: { readonly Round: number };
    readonly EndType: { readonly Polygon: number };
    UnionSelfD(paths: PathsD, rule: number, decimals: number): PathsD;
    UnionD(subjects: PathsD, clips: PathsD, rule: number, decimals: number): PathsD;
    DifferenceD(subjects: PathsD, clips: PathsD, rule: number, decimals: number): PathsD;
    IntersectD(subjects: PathsD, clips: PathsD, rule: number, decimals: number): PathsD;
    InflatePathsD(
      paths: PathsD,
      delta: number,
      join: number,
      end: number,
      miterLimit: number,
      decimals: number,
      arcTolerance: number,
    ): PathsD;
    AreaPathsD(paths: PathsD): number;
  }
  const start: () => Promise<Clipper2>;
  export default start;
}

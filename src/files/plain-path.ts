/** A vertex as a file has it: [x, y], or [x, y, bulge]. */
type Vertex = readonly [x: number, y: number, bulge?: number];

/**
 * Whether a raw value is a list of two or more vertices, as the schema of a loop has it, in a fraction of the time: a
 * scan has a hundred thousand of them. What is not is for the schema to judge, and to put into words.
 */
export function isPlainPath(value: unknown): value is readonly Vertex[] {
  if (!Array.isArray(value) || value.length < 2) return false;
  // by index: an iterator a vertex is what takes the time
  for (let i = 0; i < value.length; i++) if (!isVertex(value[i])) return false;
  return true;
}

function isVertex(value: unknown): boolean {
  if (!Array.isArray(value) || value.length < 2 || value.length > 3) return false;
  return Number.isFinite(value[0]) && Number.isFinite(value[1]) && (value.length === 2 || Number.isFinite(value[2]));
}

const shortPath = [
  [0, 0],
  [1, 0],
];

/**
 * The same value with a short outline in place of every one in a list of `loops` that is plainly a list of vertices: a
 * schema finds the very same in it.
 */
export function withShortOutlines(value: unknown): unknown {
  if (typeof value !== 'object' || value === null) return value;
  if (Array.isArray(value)) return value.map(withShortOutlines);
  return Object.fromEntries(
    Object.entries(value).map(([key, inner]) => [
      key,
      key === 'loops' && Array.isArray(inner)
        ? inner.map((loop) => (isPlainPath(loop) ? shortPath : loop))
        : withShortOutlines(inner),
    ]),
  );
}

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

/** Squared distance (mm²) from a point to the segment a–b. */
export function squaredToSegment(x: number, y: number, ax: number, ay: number, bx: number, by: number): number {
  const dx = bx - ax;
  const dy = by - ay;
  const squared = dx * dx + dy * dy;
  const t = squared > 0 ? Math.max(0, Math.min(1, ((x - ax) * dx + (y - ay) * dy) / squared)) : 0;
  return (ax + t * dx - x) ** 2 + (ay + t * dy - y) ** 2;
}

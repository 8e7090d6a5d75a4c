/** 1, 2 or 5 times a power of ten, not below `least`. */
export function niceStep(least: number): number {
  const power = 10 ** Math.floor(Math.log10(least));
  return ([1, 2, 5].find((times) => times * power >= least * (1 - 1e-9)) ?? 10) * power;
}

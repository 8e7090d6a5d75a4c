/**
 * The upper 95 % bound of a share of which `hits` of `of` were seen, by Clopper and Pearson: the share at which so few
 * would be seen once in twenty. For none seen it is 1 − 0.05^(1/n).
 */
export function upperBound(hits: number, of: number): number {
  if (of === 0 || hits === of) return 1;
  let [low, high] = [hits / of, 1];
  for (let i = 0; i < 60; i++) {
    const share = (low + high) / 2;
    if (chanceOfAtMost(hits, of, share) > 0.05) low = share;
    else high = share;
  }
  return high;
}

function chanceOfAtMost(hits: number, of: number, share: number): number {
  let term = of * Math.log1p(-share);
  let sum = Math.exp(term);
  for (let k = 1; k <= hits; k++) {
    term += Math.log((of - k + 1) / k) + Math.log(share / (1 - share));
    sum += Math.exp(term);
  }
  return sum;
}

/**
 * The distance that a point in the plane keeps within with a probability, for independent normal coordinates of the two
 * variances: with the radius √(v₁ cos²φ + v₂ sin²φ) · ρ, ρ of the Rayleigh distribution and φ uniform,
 * P(r > R) is the mean over φ of exp(−R² / 2(v₁ cos²φ + v₂ sin²φ)).
 */
export function radiusHolding(probability: number, v1: number, v2: number): number {
  const beyond = (radius: number): number => {
    let sum = 0;
    for (let k = 0; k < turns; k++) {
      const angle = ((k + 0.5) * Math.PI) / (2 * turns);
      sum += Math.exp(-(radius ** 2) / (2 * (v1 * Math.cos(angle) ** 2 + v2 * Math.sin(angle) ** 2)));
    }
    return sum / turns;
  };
  let [low, high] = [0, 10 * Math.sqrt(Math.max(v1, v2))];
  for (let k = 0; k < 60; k++) {
    const middle = (low + high) / 2;
    if (beyond(middle) > 1 - probability) low = middle;
    else high = middle;
  }
  return high;
}

const turns = 64;

/** The standard normal deviate that χ² with so many degrees of freedom stands for (Wilson and Hilferty 1931; from memory). */
export function deviateOfChiSquared(chiSquared: number, degrees: number): number {
  const v = 2 / (9 * degrees);
  return (Math.cbrt(chiSquared / degrees) - (1 - v)) / Math.sqrt(v);
}

import { lnGamma } from './gamma.ts';

/**
 * Regularised incomplete beta function I_x(a, b): the chance that a Beta(a, b) value is below `x`. Continued fraction
 * DLMF 8.17.22, evaluated by the modified Lentz method on the side where it converges fast.
 * @param x from 0 to 1
 * @param a above 0
 * @param b above 0
 */
export function incompleteBeta(x: number, a: number, b: number): number {
  if (x <= 0) return 0;
  if (x >= 1) return 1;
  const front = Math.exp(lnGamma(a + b) - lnGamma(a) - lnGamma(b) + a * Math.log(x) + b * Math.log1p(-x));
  return x < (a + 1) / (a + b + 2) ? (front * fraction(x, a, b)) / a : 1 - (front * fraction(1 - x, b, a)) / b;
}

const TINY = 1e-300;

function fraction(x: number, a: number, b: number): number {
  let c = 1;
  let d = 1 / awayFromZero(1 - ((a + b) * x) / (a + 1));
  let value = d;
  for (let m = 1; m <= 10_000; m++) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    d = 1 / awayFromZero(1 + even * d);
    c = awayFromZero(1 + even / c);
    value *= d * c;
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    d = 1 / awayFromZero(1 + odd * d);
    c = awayFromZero(1 + odd / c);
    const change = d * c;
    value *= change;
    if (Math.abs(change - 1) < 1e-16) break;
  }
  return value;
}

const awayFromZero = (value: number): number => (Math.abs(value) < TINY ? TINY : value);

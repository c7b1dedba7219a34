import { lnGamma } from './gamma.ts';

/**
 * Regularised lower incomplete gamma function P(a, x): the chance that a gamma value of shape `a` and rate 1 is below
 * `x`. Series DLMF 8.11.4 below a + 1, continued fraction DLMF 8.9.2 above it.
 * @param a above 0
 * @param x any; 0 or less gives 0
 */
export function incompleteGamma(a: number, x: number): number {
  if (x <= 0) return 0;
  const front = Math.exp(a * Math.log(x) - x - lnGamma(a));
  return x < a + 1 ? Math.min(1, front * series(a, x)) : Math.max(0, 1 - front * fraction(a, x));
}

/**
 * The value below which a gamma value of shape `a` and rate 1 falls with chance `p`, to about 1e-12; half of the quantile
 * of chi-square with 2a degrees of freedom.
 * @param p above 0 and below 1
 * @param a above 0
 * @throws RangeError for any other `p`
 */
export function gammaQuantile(p: number, a: number): number {
  if (!(p > 0 && p < 1)) throw new RangeError(`not a chance between 0 and 1: ${p}`);
  let low = 0;
  let high = a + 1;
  while (incompleteGamma(a, high) < p) {
    low = high;
    high *= 2;
  }
  for (;;) {
    const middle = (low + high) / 2;
    if (middle <= low || middle >= high) return middle;
    if (incompleteGamma(a, middle) < p) low = middle;
    else high = middle;
  }
}

function series(a: number, x: number): number {
  let term = 1 / a;
  let sum = term;
  for (let n = 1; n < 10_000 && term > sum * 1e-17; n++) {
    term *= x / (a + n);
    sum += term;
  }
  return sum;
}

/** By the modified Lentz method. */
function fraction(a: number, x: number): number {
  let b = x + 1 - a;
  let c = 1e300;
  let d = 1 / b;
  let value = d;
  for (let n = 1; n < 10_000; n++) {
    const step = n * (a - n);
    b += 2;
    d = 1 / (step * d + b);
    c = b + step / c;
    const change = c * d;
    value *= change;
    if (Math.abs(change - 1) < 1e-16) break;
  }
  return value;
}

/** Lanczos' coefficients for g = 7, nine terms (Godfrey's set): relative error near 1e-15. */
const LANCZOS = [
  0.99999999999980993, 676.5203681218851, -1259.1392167224028, 771.32342877765313, -176.61502916214059,
  12.507343278686905, -0.13857109526572012, 9.9843695780195716e-6, 1.5056327351493116e-7,
];

/**
 * Natural logarithm of the gamma function, by Lanczos' approximation.
 * @param x above 0
 */
export function lnGamma(x: number): number {
  // The approximation is for arguments from 1/2 up; Γ(x) = Γ(x+1)/x brings smaller ones there.
  if (x < 0.5) return lnGamma(x + 1) - Math.log(x);
  const z = x - 1;
  let sum = LANCZOS[0] ?? 0;
  for (let i = 1; i < LANCZOS.length; i++) sum += (LANCZOS[i] ?? 0) / (z + i);
  const t = z + 7.5;
  return 0.5 * Math.log(2 * Math.PI) + (z + 0.5) * Math.log(t) - t + Math.log(sum);
}

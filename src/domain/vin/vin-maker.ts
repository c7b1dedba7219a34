import type { Vin } from './vin.ts';

export interface VinMaker {
  /** The world manufacturer identifier, positions 1 to 3. */
  readonly wmi: string;
  /** Positions 1 to 3 and 12 to 14, which together name a maker of few vehicles; only when position 3 is 9. */
  readonly smallMaker?: string;
  /** Where the identifier was given out, in words; the first character alone does not always settle it. */
  readonly origin: string;
}

/**
 * Who made it, as far as the VIN says. A 9 in position 3 always means a six-character identifier (49 CFR 565.15(a));
 * regions are those of ISO 3780. Some codes beginning with 7 were given to makers in the United States, so that one
 * stays open.
 */
export function makerOf(vin: Vin): VinMaker {
  const wmi = vin.slice(0, 3);
  return {
    wmi,
    ...(wmi.endsWith('9') ? { smallMaker: wmi + vin.slice(11, 14) } : {}),
    origin: originOf(vin.charAt(0)),
  };
}

function originOf(first: string): string {
  if ('145'.includes(first)) return 'United States';
  if (first === '2') return 'Canada';
  if (first === '3') return 'Mexico, or another country of the region';
  if (first === '6') return 'Oceania';
  if (first === '7') return 'Oceania, or the United States';
  if ('890'.includes(first)) return 'South America';
  if (first === 'J') return 'Japan';
  if (/[A-H]/.test(first)) return 'Africa';
  return /[K-R]/.test(first) ? 'Asia' : 'Europe';
}

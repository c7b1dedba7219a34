import { type Vin, vinSchema } from './vin.ts';

/** Seventeen characters of a VIN, with a blank or a dash between them at most, and nothing of the kind around them. */
const WRITTEN = /(?<![\p{L}\p{N}])[A-HJ-NPR-Z0-9](?:[ -]?[A-HJ-NPR-Z0-9]){16}(?![\p{L}\p{N}])/giu;
/** The same without anything in between: what stands in a sentence. */
const PLAIN = /(?<![\p{L}\p{N}])[A-HJ-NPR-Z0-9]{17}(?![\p{L}\p{N}])/giu;

/** The VINs that stand in a text, in their order, each once; a number without a letter is none of them. */
export function findVins(text: string): readonly Vin[] {
  const whole = [...text.matchAll(PLAIN)];
  const found = whole.length > 0 ? whole : [...text.matchAll(WRITTEN)];
  const vins = found.flatMap(([written]) => {
    const vin = vinSchema.safeParse(written.replace(/[ -]/g, '').toUpperCase());
    return vin.success && /[A-Z]/.test(vin.data) ? [vin.data] : [];
  });
  return [...new Set(vins)];
}

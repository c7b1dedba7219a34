import type { Claim } from '../lot/claim.ts';
import type { Sighting } from './contradictions.ts';

/** What the listing's own statements say of the mileage, so that a second figure in it does not go unnoticed. */
export function claimedMiles(claims: readonly Claim[]): readonly Sighting[] {
  return claims.flatMap((claim): readonly Sighting[] => {
    if (claim.about !== 'mileage' || claim.evidence === 'refuted') return [];
    const miles = milesIn(claim.statement);
    return miles === undefined ? [] : [{ source: `its statement “${claim.statement}”`, facts: { miles } }];
  });
}

/** "41,200 miles", "41200 mi", "41.2k miles"; undefined where no number stands before the word, or more than one does. */
function milesIn(text: string): number | undefined {
  const found = [...text.matchAll(/(\d{1,3}(?:,\d{3})+|\d+(?:\.\d+)?)\s*(k)?[\s-]*(?:miles?|mi)\b/gi)];
  const [match, second] = found;
  if (match?.[1] === undefined || second !== undefined) return undefined;
  const miles = Math.round(Number(match[1].replaceAll(',', '')) * (match[2] === undefined ? 1 : 1000));
  return miles <= 2_000_000 ? miles : undefined;
}

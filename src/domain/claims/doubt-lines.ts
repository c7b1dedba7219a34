import type { CostLine } from '../deal/deal.ts';
import type { Claim, ClaimEvidence } from '../lot/claim.ts';
import { ZERO } from '../money/cents.ts';
import { PPM, type Ppm, ppm } from '../money/rate.ts';
import { rateOf } from '../money/rounding.ts';
import type { Doubt } from '../retail/estimation.ts';

/**
 * What doubt about the listing is expected to cost: for each claim the chance that it is false times what the car is
 * then worth less. A refuted claim costs all of it. Claims that cost nothing have no line.
 */
export function doubtLines(claims: readonly Claim[], doubt: Doubt): readonly CostLine[] {
  return claims.flatMap((claim): readonly CostLine[] => {
    const chance = chanceFalse(claim, doubt);
    const cents = rateOf(claim.worthIfFalse, chance);
    if (cents === 0) return [];
    const why =
      chance === PPM
        ? EVIDENCE_WORDS[claim.evidence]
        : `${EVIDENCE_WORDS[claim.evidence]}, false ${percent(chance)} of the time`;
    const label = `Doubt: ${claim.statement} (${why})`;
    // Like every range it goes from one in ten to one in ten: rarer than that, false lies beyond it.
    if (chance === PPM || chance < ONE_IN_TEN) return [{ kind: 'doubt', label, cents }];
    return [{ kind: 'doubt', label, cents, range: { low: ZERO, high: claim.worthIfFalse } }];
  });
}

const ONE_IN_TEN = PPM / 10;

/** The buyer's own figure where he gave one, else what goes with the evidence. Refuted is refuted, whatever he gave. */
export function chanceFalse(claim: Claim, doubt: Doubt): Ppm {
  if (claim.evidence === 'refuted') return ppm(PPM);
  return claim.chanceFalse ?? doubt[CHANCE_KEY[claim.evidence]];
}

const CHANCE_KEY = {
  stated: 'statedPpm',
  'vin-agrees': 'vinAgreesPpm',
  seen: 'seenPpm',
  confirmed: 'confirmedPpm',
} as const satisfies Record<Exclude<ClaimEvidence, 'refuted'>, keyof Doubt>;

export const EVIDENCE_WORDS: Readonly<Record<ClaimEvidence, string>> = {
  stated: 'stated only',
  'vin-agrees': 'the VIN agrees',
  seen: 'seen in a photo',
  confirmed: 'confirmed',
  refuted: 'refuted',
};

const percent = (chance: Ppm): string => `${Number(((chance / PPM) * 100).toFixed(1))}%`;

import type { Claim, ClaimAbout, ClaimEvidence } from '../../../src/domain/lot/claim.ts';
import type { LotFacts } from '../../../src/domain/lot/lot.ts';

export const ABOUT_WORDS: Readonly<Record<ClaimAbout, string>> = {
  transmission: 'Transmission',
  drive: 'Drive',
  trim: 'Trim',
  packages: 'Packages',
  title: 'Title',
  mileage: 'Mileage',
  'one-owner': 'Owners',
  other: 'Something else',
};

export const EVIDENCE_CHOICES: readonly { readonly value: ClaimEvidence; readonly label: string }[] = [
  { value: 'stated', label: 'Stated only' },
  { value: 'vin-agrees', label: 'VIN agrees' },
  { value: 'seen', label: 'Seen in a photo' },
  { value: 'confirmed', label: 'Confirmed' },
  { value: 'refuted', label: 'Refuted' },
];

/** A claim while it is typed: it counts once it says what is stated and what it would cost. */
export type ClaimDraft = Pick<Claim, 'about' | 'evidence'> & Partial<Omit<Claim, 'about' | 'evidence'>>;

/** How a listing is likely to put it, from what is known of the lot: a start that can be written over. */
export function likelyStatement(about: ClaimAbout, { trim, miles }: LotFacts): string | undefined {
  switch (about) {
    case 'transmission':
      return 'Automatic transmission';
    case 'drive':
      return 'Four-wheel drive';
    case 'trim':
      return trim;
    case 'title':
      return 'Clean title';
    case 'mileage':
      return miles === undefined ? undefined : `${miles.toLocaleString('en-US')} miles, actual`;
    case 'one-owner':
      return 'One owner';
    default:
      return undefined;
  }
}

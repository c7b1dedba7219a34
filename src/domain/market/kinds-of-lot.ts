import { plainWords } from '../text/plain-words.ts';

/** Who sells a car, as far as his name says it: rivals know what kinds of cars each sells. In the order in which they are looked for. */
const SELLERS: readonly (readonly [kind: string, words: RegExp])[] = [
  ['rental', /\b(?:rental|rentals|rent a (?:car|van|truck)|car share)\b/],
  ['lease', /\b(?:lease|leases|leasing|lessor|off lease)\b/],
  ['insurer', /\b(?:insurance|insurer|assurance|salvage)\b/],
  [
    'government',
    /\b(?:city of|county|state of|municipal|municipality|government|police|school district|federal|dot)\b/,
  ],
  ['fleet', /\b(?:fleet|fleets|utility|utilities|delivery|logistics|corporate)\b/],
  ['lender', /\b(?:bank|banks|credit union|finance|financial|lender|repo|repossession|repossessions|acceptance)\b/],
  ['dealer', /\b(?:dealer|dealers|dealership|motors|auto sales|franchised|trade in|trade ins|wholesaler)\b/],
];

/**
 * What kind of seller a name is, or '' where it does not say: "A rental fleet" is rental, "First Plains Credit Union" a lender.
 * The kinds are common practice, no source.
 */
export function sellerKind(seller: string | undefined): string {
  const words = plainWords(seller ?? '');
  return SELLERS.find(([, rule]) => rule.test(words))?.[0] ?? '';
}

/** The line of cars that a lot is of: its make and the words of its model without sizes, so that a 250 and a 350 are alike. */
export function carClassOf({
  make,
  model,
}: {
  readonly make?: string | undefined;
  readonly model?: string | undefined;
}): string {
  if (make === undefined || model === undefined) return '';
  const words = plainWords(model)
    .split(' ')
    .filter((word) => !/\d/.test(word));
  return [plainWords(make), ...words].filter(Boolean).join(' ');
}

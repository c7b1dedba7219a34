/** `packCents` → "pack", `daysToSell` → "days to sell": the unit is in the value, not in the name. */
export function fieldWords(key: string): string {
  const known = FIELD_WORDS[key];
  if (known !== undefined) return known;
  return key
    .replace(/(Cents|Ppm)$/, '')
    .replace(/([a-z])([A-Z])/g, '$1 $2')
    .toLowerCase();
}

/** Keys whose plain reading would mislead or be clumsy; every other key is spelled out by {@link fieldWords}. */
const FIELD_WORDS: Readonly<Record<string, string>> = {
  fromCents: 'from',
  flatCents: 'flat fee',
  ratePpm: 'percentage',
  stepCents: 'step',
  cents: 'amount',
  zone: 'time zone',
  validFrom: 'valid from',
  validTo: 'valid to',
  dollarsCents: 'least profit',
  shareOfRetailPpm: 'least share of retail',
  perCashDayPpm: 'least profit a day on own cash',
  lossChancePpm: 'highest chance of a loss',
  keepsPpm: 'share of retail kept',
  annualRatePpm: 'interest a year',
  cashAnnualRatePpm: 'price of own cash a year',
  advancePpm: 'share advanced',
  advanceOnFees: 'advance on fees',
  lotCentsPerDay: 'place on the lot a day',
  sharePpm: 'share paid back',
  leadMinutes: 'calls before a close',
  placedLeadMinutes: 'calls when the proxy is placed',
  digestAt: 'evening digest',
  beforeRushMinutes: 'before the busy hours',
  afterCloseMinutes: 'after the close',
  nearMinutes: 'near the busy hours',
  reactionMinutes: 'closings that are one call',
  milesSlopePpm: 'what 10,000 miles take off',
  milesSlopeDoubtPpm: 'what 10,000 miles take off, doubt',
  yearSlopePpm: 'what a model year takes off',
  yearSlopeDoubtPpm: 'what a model year takes off, doubt',
  carSpreadPpm: 'spread from car to car',
  carSpreadWeight: 'comparables that the spread counts for',
  guessSpreadPpm: 'spread of a guess',
  askingRatioPpm: 'selling price as a share of asking',
  askingRatioDoubtPpm: 'selling price as a share of asking, doubt',
  twinStretchPpm: 'slower for each like it in stock',
  doubt: 'statements',
  statedPpm: 'false when only stated',
  vinAgreesPpm: 'false although the VIN agrees',
  seenPpm: 'false although seen in a photo',
  confirmedPpm: 'false although confirmed',
  horizonDays: 'day of wholesale',
  floorable: 'can be floor-planned',
  kind: 'kind',
};

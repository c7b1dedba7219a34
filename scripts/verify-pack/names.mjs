/*! What may happen to a lot, and what it may say, as far as this script knows. What it does not know it says, and goes on. */

const words = (text) => new Set(text.trim().split(/\s+/));

export const KINDS = words(`
  step-noted dispute-opened dispute-changed dispute-stepped dispute-closed attachment-kept calls-put-off calls-done handed-over
  close-extended lot-alerts-changed undone bid-noted result-noted risk-accepted plan-choice lots-added lot-changed lot-dropped
`);

export const NAMES = words(`
  about action amount askedCents at attachment bid bidCents bidWasIn bidder by ceilings cents chance chanceFalse chancePpm cheaperBy
  choice claims clear close comps confirmed corrects date daysListed differences dispute done doubts dueAt early ended entry evidence facts field
  files finest from funding hammerCents hash high highCents how id inStock increment instant kind label leadMinutes leftOut likely list
  location lotNumber lots low make markup maxBidCents mediaType miles minutes model name need needs newLot next note noted notes
  opened otherwise outcome page pageUrl picture plannedCents price priceNow proxy reason rebate recon result retail rival sale says sealed
  seenAt seller set side sizeBytes source statement step sure taken text title titleId to transport trim unread until url venueId
  venueName vin what who why words worthIfFalse year zone
`);

/** Longer than any text that a person or a page gives. */
const LONG = 20_000;

/** What is odd about what happened: a sentence's end, or null. */
export function oddity(happening) {
  if (!KINDS.has(happening.kind))
    return `is a “${happening.kind}”, which this script does not know: it was hashed, not understood`;
  const stack = [[null, happening]];
  while (stack.length > 0) {
    const [name, value] = stack.pop();
    if (name !== null && !NAMES.has(name)) return `says a “${name}”, which this script does not know`;
    if (typeof value === 'string' && value.length > LONG)
      return `has a text of ${value.length} letters, longer than any that is typed`;
    const bids = happening.kind === 'bid-noted' || happening.kind === 'result-noted';
    if (bids && typeof value === 'number' && value < 0) return 'gives an amount below zero';
    if (Array.isArray(value)) for (const one of value) stack.push([null, one]);
    else if (typeof value === 'object' && value !== null) stack.push(...Object.entries(value));
  }
  return null;
}

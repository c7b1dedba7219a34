import type { LotFacts } from '../../domain/lot/lot.ts';
import { type Cents, cents } from '../../domain/money/cents.ts';
import type { Estimate } from '../../domain/money/estimate.ts';
import { rateOf } from '../../domain/money/rounding.ts';
import type { CloseTime } from '../../domain/time/close-time.ts';
import { wallClock } from '../../domain/time/wall-clock.ts';
import type { ColumnFieldId } from '../columns/column-fields.ts';
import type { KnownNames } from '../columns/look-of-cells.ts';

/** What a lot shows in a table of its own: text, or a number that a spreadsheet can add up. */
export interface LotCell {
  readonly text: string;
  readonly kind: 'text' | 'number';
}

export type LotCells = Partial<Record<ColumnFieldId, LotCell>>;

/**
 * The cells of a lot. They say what a person wants to see in a spreadsheet; what has no room in them (several recon
 * lines, comparables, the words of a close) goes into a column of its own, see `lotsToCsv`.
 */
export function lotCells(facts: LotFacts, names: KnownNames): LotCells {
  const cells: LotCells = {};
  const text = (id: ColumnFieldId, value: string | undefined) => {
    if (value !== undefined && value !== '') cells[id] = { text: value, kind: 'text' };
  };
  const number = (id: ColumnFieldId, value: string | undefined) => {
    if (value !== undefined) cells[id] = { text: value, kind: 'number' };
  };
  text('vin', facts.vin);
  number('year', facts.year?.toString());
  text('make', facts.make);
  text('model', facts.model);
  text('trim', facts.trim);
  number('miles', facts.miles?.toString());
  text('lotNumber', facts.lotNumber);
  text('venue', names.venues.find(({ id }) => id === facts.venueId)?.name ?? facts.venueName ?? facts.venueId);
  text('sale', facts.sale);
  text('seller', facts.seller);
  text('location', facts.location);
  if (facts.close !== undefined) {
    text('closes', localTime(facts.close));
    text('zone', facts.close.zone);
    text('closesUtc', new Date(facts.close.instant).toISOString().replace('.000Z', 'Z'));
  }
  number('priceNow', dollars(facts.priceNow));
  number('increment', dollars(facts.increment));
  number('retailLow', dollars(facts.retail?.low));
  number('retailLikely', dollars(facts.retail?.likely));
  number('retailHigh', dollars(facts.retail?.high));
  const recon = reconOf(facts);
  number('reconLow', dollars(recon?.low));
  number('reconLikely', dollars(recon?.likely));
  number('reconHigh', dollars(recon?.high));
  text('title', names.titles.find(({ id }) => id === facts.titleId)?.name ?? facts.titleId);
  number('transport', dollars(facts.transport));
  number('proxy', dollars(facts.proxy));
  text('funding', facts.funding);
  text('pageUrl', facts.pageUrl);
  text('notes', facts.notes);
  return cells;
}

/** One recon line shows its range; of several only the expected sum, because ranges do not add up. */
function reconOf({ recon = [] }: LotFacts): Estimate | undefined {
  const [only, second] = recon;
  if (only === undefined) return undefined;
  if (second === undefined && only.chance === 1_000_000) return only.amount;
  const expected = recon.reduce((sum, { amount, chance }) => sum + rateOf(amount.likely, chance), 0);
  return { likely: cents(expected) };
}

/** Plain figures without a sign or separators: what every program reads as a number. */
function dollars(amount: Cents | undefined): string | undefined {
  return amount === undefined ? undefined : amount % 100 === 0 ? String(amount / 100) : (amount / 100).toFixed(2);
}

/** The wall clock of the sale, year first, so that no reader can take the day for the month. */
function localTime({ instant, zone }: CloseTime): string {
  const { date, time, second } = wallClock(instant, zone);
  return second === 0 ? `${date} ${time}` : `${date} ${time}:${String(second).padStart(2, '0')}`;
}

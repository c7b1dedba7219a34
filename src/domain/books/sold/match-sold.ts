import type { LotId } from '../../lot/lot.ts';
import type { Cents } from '../../money/cents.ts';
import { formatMoney } from '../../money/format-money.ts';
import type { LocalDate } from '../../time/local-date.ts';
import type { PurchaseFolder } from '../folder/folder.ts';
import { matchCar } from '../invoice/match-car.ts';

/** A car that was sold, as a list says. */
export interface SoldRow {
  /** Its row in the file. */
  readonly row: number;
  readonly vin: string;
  readonly date: LocalDate;
  /** Above 0. */
  readonly price: Cents;
  readonly buyer: 'retail' | 'business' | 'wholesale';
}

/**
 * What becomes of a row: `new` can be recorded; `differs` would correct what is recorded; `look` fits only in part;
 * `same` is recorded already; `none` belongs to no car that was won.
 */
export interface MatchedSale extends SoldRow {
  readonly state: 'new' | 'differs' | 'look' | 'same' | 'none';
  readonly folder: PurchaseFolder | null;
  readonly why: string;
}

/** Finds the folder of each sold car, as the rows of an invoice are matched. Every row comes back, whatever became of it. */
export function matchSold(rows: readonly SoldRow[], folders: readonly PurchaseFolder[]): readonly MatchedSale[] {
  const won = folders.filter(({ stage }) => stage === 'in-stock' || stage === 'sold');
  const byLot = new Map(won.map((folder) => [folder.lot, folder]));
  const cars = won.map(({ lot, facts, won: win }) => ({ lot, vin: facts.vin, won: win?.date }));
  const matched = rows.map((row) => matchedSale(row, cars, byLot));
  const times = new Map<LotId, number>();
  for (const { folder } of matched) if (folder !== null) times.set(folder.lot, (times.get(folder.lot) ?? 0) + 1);
  return matched.map((one) => {
    const { folder, state } = one;
    const twice = folder !== null && state !== 'same' && (times.get(folder.lot) ?? 0) > 1;
    return twice
      ? { ...one, state: 'look', why: 'The file has this car more than once. Tick the row that is right.' }
      : one;
  });
}

function matchedSale(
  row: SoldRow,
  cars: Parameters<typeof matchCar>[1],
  byLot: ReadonlyMap<LotId, PurchaseFolder>,
): MatchedSale {
  const match = matchCar({ vin: row.vin, date: row.date }, cars, '', undefined);
  const folder = match.lot === null ? undefined : byLot.get(match.lot);
  if (folder === undefined) return { ...row, state: 'none', folder: null, why: match.why };
  const { outcome, won } = folder;
  if (won !== null && row.date < won.date)
    return { ...row, state: 'look', folder, why: `It was won on ${won.date}, after this sale. Check the date.` };
  if (match.how !== 'exact') return { ...row, state: 'look', folder, why: match.why };
  if (outcome === undefined) return { ...row, state: 'new', folder, why: match.why };
  if (outcome.priceCents === row.price && outcome.date === row.date)
    return { ...row, state: 'same', folder, why: 'Recorded already.' };
  const recorded = `${formatMoney(outcome.priceCents)} on ${outcome.date}`;
  return { ...row, state: 'differs', folder, why: `Recorded as ${recorded}. Tick it to correct that.` };
}

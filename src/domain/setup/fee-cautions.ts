import type { FeeBand, FeeEdition, FeeTable } from '../fees/fee-schedule.ts';
import { bandFee } from '../fees/fees-at.ts';
import { ZERO } from '../money/cents.ts';
import { formatMoney } from '../money/format-money.ts';
import { type Unlikely, unlikely } from './unlikely.ts';

/** No fee table worth having ends its bands below this price. */
const LOWEST_LAST_BAND = 100_000;
/** A band that reaches a price like this and charges less than {@link SMALL_FEE} there is probably written in dollars. */
const PRICE_OF_A_CAR = 200_000;
const SMALL_FEE = 1000;

const RATE = { least: 2000, most: 600_000, none: true } as const;
const FLAT = { least: 0, most: 1_000_000 } as const;
const LIMIT = { least: 500, most: 5_000_000, none: true } as const;
const CHARGE = { least: 200, most: 500_000, none: true } as const;

/** What is odd about the fees of one set of rates: a table that charges nothing, a percentage of next to nothing. */
export function feeCautions({ tables, charges }: FeeEdition): readonly Unlikely[] {
  return [
    ...tables.flatMap((table) => [
      ...tableCautions(table),
      ...table.bands.flatMap((band) => bandCautions(band, table)),
    ]),
    ...labelsTwice([...tables, ...charges].map(({ label }) => label)),
    ...charges.flatMap((charge) => unlikely('cents', charge.cents, CHARGE, `“${charge.label}”`)),
  ];
}

function tableCautions(table: FeeTable): readonly Unlikely[] {
  const last = table.bands.at(-1);
  const name = `“${table.label}”`;
  if (table.bands.every((band) => isFree(band))) {
    return [{ message: `${name} charges $0 at every price, so no fee is counted. Enter its fees.` }];
  }
  return table.bands.length > 1 && last !== undefined
    ? unlikely('fromCents', last.fromCents, LAST_BAND, `The price at which the last band of ${name} starts`)
    : [];
}

const LAST_BAND = { least: LOWEST_LAST_BAND, most: Number.POSITIVE_INFINITY } as const;

const isFree = ({ flatCents, ratePpm, minimumCents = ZERO }: FeeBand): boolean =>
  flatCents + ratePpm + minimumCents === 0;

function bandCautions(band: FeeBand, table: FeeTable): readonly Unlikely[] {
  const of = (what: string) => `The ${what} of “${table.label}” from ${formatMoney(band.fromCents)}`;
  const next = table.bands[table.bands.indexOf(band) + 1]?.fromCents ?? Number.POSITIVE_INFINITY;
  const top = Math.min(next - 1, Math.max(band.fromCents, PRICE_OF_A_CAR));
  const most = bandFee(band, top, table.rounding);
  if (top >= PRICE_OF_A_CAR && most > 0 && most < SMALL_FEE) {
    return unlikely('cents', most, { least: SMALL_FEE, most: SMALL_FEE }, of('fee'));
  }
  return [
    ...unlikely('flatCents', band.flatCents, FLAT, of('flat fee')),
    ...unlikely('ratePpm', band.ratePpm, RATE, of('percentage')),
    ...unlikely('minimumCents', band.minimumCents, LIMIT, of('minimum')),
    ...unlikely('maximumCents', band.maximumCents, LIMIT, of('maximum')),
  ];
}

/** Two lines of one name are both charged, and on a worksheet nobody can tell them apart. */
function labelsTwice(labels: readonly string[]): readonly Unlikely[] {
  const twice = labels.filter((label, i) => labels.indexOf(label) === i && labels.lastIndexOf(label) !== i);
  return twice.map((label) => ({
    message: `“${label}” stands twice in the same rates, and both are charged. Rename one, or remove it.`,
  }));
}

import { expectedCheckDigit } from '../../../src/domain/vin/check-digit.ts';
import { readVin } from '../../../src/domain/vin/read-vin.ts';
import type { Dice } from '../dice.ts';

/** What a page of the laboratory may say of a lot; amounts in whole dollars, the close in milliseconds since 1970. */
export interface InventedLot {
  readonly vin: string;
  readonly year: number;
  readonly make: string;
  readonly model: string;
  readonly trim: string;
  readonly miles: number;
  readonly priceNow: number;
  readonly nextBid: number;
  readonly increment: number;
  readonly buyNow: number;
  readonly closes: number;
  readonly lotNumber: string;
  readonly runNumber: string;
  readonly location: string;
  readonly seller: string;
  readonly title: string;
  readonly condition: string;
  readonly drive: string;
  readonly transmission: string;
}

/** A sale's house, in one zone, with its sale of the day. */
export interface House {
  readonly name: string;
  readonly host: string;
  readonly sale: string;
  readonly zone: string;
}

/** What the lots of one part of the families are made of; nothing of one part is in the other. */
export interface Stock {
  readonly cars: readonly (readonly [make: string, model: string, ...trims: string[]])[];
  readonly houses: readonly House[];
  readonly towns: readonly string[];
  readonly sellers: readonly string[];
  readonly titles: readonly string[];
  readonly conditions: readonly string[];
  readonly drives: readonly string[];
  readonly gearboxes: readonly string[];
  /** A lot's number from a count. */
  readonly numbers: readonly ((count: number) => string)[];
}

// Position 10 by model year, 49 CFR 565.15, Table VII.
const YEAR_CODES = 'ABCDEFGHJKLMNPRSTV';
const LETTERS = 'ABCDEFGHJKLMNPRSTUVWXYZ';

/** A VIN with a right check digit, for nobody's car. */
export function inventedVin(dice: Dice, year: number): string {
  const some = (from: string, count: number) => Array.from({ length: count }, () => dice.one([...from])).join('');
  const before = `${dice.one(['5Z', '7Y', '7Z', '1Z'])}${some(LETTERS, 1)}${some(LETTERS, 3)}${some(LETTERS, 1)}${some('123456789', 1)}`;
  const after = `${YEAR_CODES[year - 2010] ?? 'A'}${some(LETTERS, 1)}${some('0123456789', 6)}`;
  const vin = readVin(`${before}0${after}`);
  if (!vin.ok) throw new Error(vin.message);
  return `${before}${expectedCheckDigit(vin.value)}${after}`;
}

/** Lots of one sale, each closing a few minutes after the one before. */
export function inventedLots(dice: Dice, stock: Stock, count: number, now: number): readonly InventedLot[] {
  const number = dice.one(stock.numbers);
  const start = dice.whole(2, 900);
  const first = Math.floor(now / 3_600_000) * 3_600_000 + dice.whole(4, 120) * 3_600_000 + dice.whole(0, 11) * 300_000;
  const gap = dice.one([60_000, 120_000, 300_000]);
  return Array.from({ length: count }, (_, at) => {
    const [make, model, ...trims] = dice.one(stock.cars);
    const year = dice.whole(2012, 2025);
    const increment = dice.one([50, 100, 150, 200, 250]);
    const priceNow = dice.whole(40, 640) * 50;
    return {
      vin: inventedVin(dice, year),
      year,
      make,
      model,
      trim: dice.one(trims),
      miles: dice.whole(9_000, 189_999),
      priceNow,
      increment,
      nextBid: priceNow + increment,
      buyNow: priceNow + dice.whole(20, 80) * 100 + 25,
      closes: first + at * gap,
      lotNumber: number(start + at),
      runNumber: String(dice.whole(1, 199)),
      location: dice.one(stock.towns),
      seller: dice.one(stock.sellers),
      title: dice.one(stock.titles),
      condition: dice.one(stock.conditions),
      drive: dice.one(stock.drives),
      transmission: dice.one(stock.gearboxes),
    };
  });
}

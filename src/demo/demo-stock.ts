import type { StockRecord } from '../domain/carrying/stock-record.ts';
import type { LocalDate } from '../domain/time/local-date.ts';

/** Days that the invented dealer's own cars took; those with a minus have not sold at that age. */
const DAYS = [
  6, 9, 12, 14, 17, 19, 21, 22, 25, 27, 29, 33, 34, 38, 41, 44, 48, 52, 57, 63, 71, 84, 96, -3, -8, -11, -19, -26, -34,
  -47, -61, -88,
];

export const demoStock = (today: LocalDate): StockRecord => ({
  asOf: today,
  cars: DAYS.map((days) => ({ days: Math.abs(days), sold: days > 0, enteredAtDays: 0 })),
});

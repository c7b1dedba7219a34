import type { Claim } from '../domain/lot/claim.ts';
import { type Cents, cents, ZERO } from '../domain/money/cents.ts';
import { ppm } from '../domain/money/rate.ts';
import type { Ceiling } from '../domain/retail/ceiling.ts';
import type { Comp } from '../domain/retail/comp.ts';
import { addDays } from '../domain/time/calendar-day.ts';
import type { LocalDate } from '../domain/time/local-date.ts';
import type { DemoCar } from './demo-cars.ts';

const toFifties = (amount: number): Cents => cents(Math.round(amount / 50) * 5000);

/**
 * What the listing says that carries money, with what there is to show for it.
 * @param miles as the listing's own field has them; every fourth listing with a mileage claim says another figure there
 */
export function claimsFor(i: number, miles: number): Claim[] {
  const stated = i % 4 === 2 ? miles : miles - 11_300;
  const claims: Claim[] = [
    { about: 'transmission', statement: 'Automatic transmission', evidence: 'stated', worthIfFalse: cents(180_000) },
    {
      about: 'mileage',
      statement: `${stated.toLocaleString('en-US')} miles, actual`,
      evidence: 'stated',
      worthIfFalse: cents(260_000),
    },
    { about: 'one-owner', statement: 'One owner, fleet maintained', evidence: 'seen', worthIfFalse: cents(70_000) },
    {
      about: 'packages',
      statement: i % 2 === 0 ? 'Tow package' : 'Cold-weather package',
      evidence: 'vin-agrees',
      worthIfFalse: cents(110_000),
    },
  ];
  return claims.slice(0, 2 + (i % 3));
}

/** Cars like it that sold or are offered, a little apart in miles, age and price; the last is one to be suspicious of. */
export function compsFor(car: DemoCar, i: number, today: LocalDate): Comp[] {
  const at = (share: number) => toFifties(car.retail * share);
  const comps: Comp[] = [
    {
      kind: 'sold',
      price: at(1.03),
      miles: car.miles - 9000,
      year: car.year,
      date: addDays(today, -48),
      daysListed: 22,
      source: 'Our own',
      differences: [{ label: 'New tires', cents: cents(-40_000) }],
      leftOut: false,
    },
    {
      kind: 'asking',
      price: at(1.01),
      miles: car.miles + 14_000,
      year: car.year,
      date: addDays(today, -3),
      daysListed: 31,
      source: 'Dealer in the next town',
      differences: [],
      leftOut: false,
    },
    {
      kind: 'sold',
      price: at(0.93),
      miles: car.miles + 6000,
      year: car.year - 1,
      date: addDays(today, -95),
      daysListed: 40,
      source: 'Our own',
      differences: [{ label: 'Ladder rack', cents: cents(-35_000) }],
      leftOut: false,
    },
    {
      kind: 'asking',
      price: at(1.45),
      miles: car.miles,
      year: car.year,
      date: addDays(today, -3),
      daysListed: 140,
      source: 'Overpriced, still unsold',
      differences: [],
      leftOut: false,
    },
  ];
  return comps.slice(0, i % 12 === 2 ? 4 : 2 + (i % 2));
}

/** What a customer could buy instead. */
export function ceilingsFor(car: DemoCar, i: number): Ceiling[] {
  const rebate = cents(250_000);
  return [
    {
      kind: 'new',
      label: `New ${car.model}, after its rebate`,
      list: toFifties((car.retail * 1.12 + 2500) / 0.9),
      markup: ppm(100_000),
      rebate,
      cheaperBy: ZERO,
      inStock: i % 4 === 2 ? 1 : 0,
    },
  ];
}

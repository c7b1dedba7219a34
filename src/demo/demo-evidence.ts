import type { Claim } from '../domain/claims/claim.ts';
import { cents, ZERO } from '../domain/money/cents.ts';
import type { Comp } from '../domain/retail/comp.ts';
import type { DemoCar } from './demo-cars.ts';

/** What the listing says that carries money, with what there is to show for it. */
export function claimsFor(car: DemoCar, i: number): Claim[] {
  const claims: Claim[] = [
    { about: 'transmission', statement: 'Automatic transmission', evidence: 'stated', worthIfFalse: cents(180_000) },
    { about: 'mileage', statement: 'Odometer reads true', evidence: 'vin-agrees', worthIfFalse: cents(260_000) },
    { about: 'one-owner', statement: 'One owner, fleet maintained', evidence: 'seen', worthIfFalse: cents(70_000) },
    { about: 'packages', statement: `${car.trim || 'Work'} package`, evidence: 'stated', worthIfFalse: cents(110_000) },
  ];
  return claims.slice(0, 2 + (i % 3));
}

/** Cars like it that sold or are offered, a little apart in miles, age and price. */
export function compsFor(car: DemoCar, i: number): Comp[] {
  const at = (share: number) => cents(Math.round((car.retail * share) / 50) * 5000);
  const none = { differences: [], leftOut: false };
  const comps: Comp[] = [
    { kind: 'sold', price: at(1.03), miles: car.miles - 9000, year: car.year, source: 'Own sale in spring', ...none },
    {
      kind: 'asking',
      price: at(1.01),
      miles: car.miles + 14_000,
      year: car.year,
      daysListed: 31,
      source: 'Dealer in the next town',
      ...none,
    },
    {
      kind: 'sold',
      price: at(0.93),
      miles: car.miles + 6000,
      year: car.year - 1,
      source: 'Own sale in summer',
      ...none,
    },
    {
      kind: 'asking',
      price: at(1.34),
      miles: car.miles,
      year: car.year,
      daysListed: 140,
      source: 'Far too dear, still unsold',
      ...none,
    },
  ];
  return comps.slice(0, 2 + (i % 3)).filter((comp) => comp.price > ZERO);
}

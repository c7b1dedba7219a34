import { demoVin } from '../../../src/demo/demo-vin.ts';
import type { LotFacts } from '../../../src/domain/lot/lot.ts';
import { cents } from '../../../src/domain/money/cents.ts';
import { zone } from '../../../src/domain/time/zone.ts';
import type { Clock } from './machine.ts';

export const dollars = (amount: number) => cents(amount * 100);

export const EVIDENCE = {
  vin: { from: 'structured-data', text: 'vehicleIdentificationNumber', sure: 'certain' },
  miles: { from: 'page-text', text: 'Odometer 61,400 mi', sure: 'likely' },
} as const;

export function carFromPage(clock: Clock): LotFacts {
  return {
    vin: demoVin('1LX', 2021, 4417),
    year: 2021,
    make: 'Larkspur',
    model: 'Hauler 20',
    trim: 'Crew cab',
    miles: 61_400,
    lotNumber: '4417',
    venueId: 'saguaro',
    close: {
      instant: clock.at(2 * 24 * 60),
      text: 'Sat Nov 14, 11:00 AM',
      zone: zone('America/Phoenix'),
      how: 'venue-zone',
      doubts: [],
      otherwise: [],
    },
    pageUrl: 'https://sale.example/lots/4417',
  };
}

export function carFromFile(i: number, clock: Clock): LotFacts {
  return {
    vin: demoVin('5WK', 2019, 700 + i),
    year: 2019,
    make: 'Merrow',
    model: 'Boxline 12',
    miles: 90_000 + 1700 * i,
    lotNumber: String(310 + i),
    venueId: 'caliche',
    priceNow: dollars(9000 + 250 * i),
    close: {
      instant: clock.at(2 * 24 * 60 + i),
      text: 'Sat 11:30 AM CT',
      zone: zone('America/Chicago'),
      how: 'stated-zone',
      doubts: [],
      otherwise: [],
    },
  };
}

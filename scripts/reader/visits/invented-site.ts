import { HOUR, MINUTE } from '../../../src/domain/time/units.ts';
import type { Dice } from '../dice.ts';

/** A lot as the sale's computer has it. Everything it ever said of the lot is kept, because that is what may be written. */
export interface SiteLot {
  readonly vin: string;
  readonly name: string;
  readonly number: string;
  price: number;
  closes: number;
  readonly prices: Set<number>;
  readonly closings: Set<number>;
}

/** The parts of a lot's page that a site may fill in one after the other. */
export const PARTS = ['vin', 'name', 'number', 'price', 'closes'] as const;
export type Part = (typeof PARTS)[number];

/** VINs with a right check digit (49 CFR 565.15), for nobody's cars. */
const VINS = ['5ZXB38E89ME487234', '5ZXA9NB95LC347889', '7YTG5DC01KB655830', '7YTD44J54ND810741', '5ZXH19H43MG220030'];
const NAMES = [
  '2021 Larkspur Hauler 250',
  '2020 Tamarack Stockman',
  '2019 Merrow Sawyer',
  '2022 Quillon Packer',
  '2018 Dunmore Deckhand',
];

/** The lots of a small sale; many of them have the same close, and some the same price. */
export function siteLots(dice: Dice, now: number): readonly SiteLot[] {
  const shared = Math.floor(now / MINUTE) * MINUTE + dice.whole(2, 60) * HOUR;
  const usual = dice.whole(20, 500) * 100;
  return VINS.map((vin, at) => {
    const price = dice.happens(0.1) ? usual : dice.whole(5, 600) * 50;
    const closes = dice.happens(0.5) ? shared : shared + dice.whole(1, 300) * MINUTE;
    return {
      vin,
      name: NAMES[at] ?? '',
      number: String(101 + at),
      price,
      closes,
      prices: new Set([price]),
      closings: new Set([closes]),
    };
  });
}

export function bidUp(lot: SiteLot, dice: Dice): void {
  lot.price += dice.whole(1, 8) * 50;
  lot.prices.add(lot.price);
}

export function putOff(lot: SiteLot, dice: Dice): void {
  lot.closes += dice.whole(1, 10) * MINUTE;
  lot.closings.add(lot.closes);
}

/** A part of a lot as the page words it. */
export function wording(lot: SiteLot, part: Part): string {
  if (part === 'price') return `$${lot.price.toLocaleString('en-US')}`;
  if (part === 'closes') return moment(lot.closes);
  return part === 'vin' ? lot.vin : part === 'name' ? lot.name : lot.number;
}

function moment(at: number): string {
  return WORDING.format(at);
}

const WORDING = new Intl.DateTimeFormat('en-US', {
  timeZone: 'America/Phoenix',
  weekday: 'short',
  month: 'short',
  day: 'numeric',
  year: 'numeric',
  hour: 'numeric',
  minute: '2-digit',
  timeZoneName: 'short',
});

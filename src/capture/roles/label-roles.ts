import { type Meaning, meaningOf } from './label-list.ts';
import type { FactRole } from './label-rules.ts';
import { FACT_LABELS } from './label-rules.ts';
import { MONEY_LABELS, type MoneyRole } from './money-roles.ts';
import { type RoleWeights, weighWords } from './role-words.ts';
import { TIME_LABELS, type TimeRole } from './time-roles.ts';

/** What a label speaks for, of each kind of value that may stand beside it. */
export interface LabelRoles {
  readonly money: RoleWeights<MoneyRole>;
  readonly time: RoleWeights<TimeRole>;
  readonly fact: RoleWeights<FactRole>;
}

const MONEY_MEANINGS: Partial<Record<Meaning, MoneyRole>> = {
  priceNow: 'priceNow',
  nextBid: 'nextBid',
  increment: 'increment',
  buyNow: 'buyNow',
  price: 'price',
  'other-money': 'other',
};
const TIME_MEANINGS: Partial<Record<Meaning, TimeRole>> = {
  'closes-at': 'close',
  'time-left': 'left',
  'other-time': 'other',
};
const FACT_MEANINGS: Partial<Record<Meaning, FactRole>> = {
  vin: 'vin',
  year: 'year',
  make: 'make',
  model: 'model',
  trim: 'trim',
  miles: 'miles',
  kilometers: 'kilometers',
  lotNumber: 'lotNumber',
  runNumber: 'runNumber',
  venueName: 'venueName',
  sale: 'sale',
  seller: 'seller',
  location: 'location',
  title: 'title',
  condition: 'condition',
  transmission: 'transmission',
  drive: 'drive',
  other: 'other',
};

const known = new Map<string, LabelRoles>();
const MOST_KNOWN = 4000;

/**
 * What a label speaks for: whole labels of the list with the most weight, else its words. A page repeats its labels, so each
 * is weighed once.
 */
export function labelRoles(label: string): LabelRoles {
  const before = known.get(label);
  if (before !== undefined) return before;
  const roles = weigh(label);
  if (known.size >= MOST_KNOWN) known.clear();
  known.set(label, roles);
  return roles;
}

function weigh(label: string): LabelRoles {
  const text = label.replace(/\s*[:*]+\s*$/, '').slice(0, 80);
  const meaning = meaningOf(text);
  const money = weighWords(text, MONEY_LABELS);
  const time = weighWords(text, TIME_LABELS);
  const fact = weighWords(text, FACT_LABELS);
  const [moneyRole, timeRole, factRole] = [
    meaning && MONEY_MEANINGS[meaning],
    meaning && TIME_MEANINGS[meaning],
    meaning && FACT_MEANINGS[meaning],
  ];
  // A whole label that is known says all there is to say.
  if (moneyRole !== undefined) return { money: new Map([[moneyRole, 1]]), time: new Map(), fact: new Map() };
  if (timeRole !== undefined) return { money: new Map(), time: new Map([[timeRole, 1]]), fact: new Map() };
  if (factRole !== undefined)
    return { money: factRole === 'other' ? money : new Map(), time, fact: new Map([[factRole, 1]]) };
  return { money, time, fact };
}

const LEAST_TALK = 100;

/** Whether what stands under a label is somebody's own words about the car, in which any figure may come up. */
export const isTalk = (label: string, value: string): boolean =>
  value.length > LEAST_TALK &&
  !value.includes('\n') &&
  /\b(?:descri(?:ption|bed)|comments?|remarks|story|says|in (?:his|her|their|our) words|about (?:this|the))\b/i.test(
    label,
  );

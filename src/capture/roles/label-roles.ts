import { type Meaning, meaningsOf } from './label-list.ts';
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
  const meanings = meaningsOf(text);
  const money = weighWords(text, MONEY_LABELS);
  const time = weighWords(text, TIME_LABELS);
  const fact = weighWords(text, FACT_LABELS);
  if (meanings.length === 0) return { money, time, fact };
  const listed = <Role extends string>(names: Partial<Record<Meaning, Role>>): Map<Role, number> =>
    new Map(meanings.flatMap((meaning) => (names[meaning] === undefined ? [] : [[names[meaning], 1] as const])));
  const [moneyRoles, timeRoles, factRoles] = [listed(MONEY_MEANINGS), listed(TIME_MEANINGS), listed(FACT_MEANINGS)];
  // A whole label that is known says all there is to say; of one that is known for a fact the words may still tell of a time.
  if (moneyRoles.size > 0 || timeRoles.size > 0) return { money: moneyRoles, time: timeRoles, fact: factRoles };
  return { money: factRoles.has('other') ? money : new Map(), time, fact: factRoles };
}

const LEAST_TALK = 100;

/** Whether what stands under a label is somebody's own words about the car, in which any figure may come up. */
export const isTalk = (label: string, value: string): boolean =>
  value.length > LEAST_TALK &&
  !value.includes('\n') &&
  /\b(?:descri(?:ption|bed)|comments?|remarks|story|says|in (?:his|her|their|our) words|about (?:this|the))\b/i.test(
    label,
  );

/** Whether a label is over somebody's remarks. */
export const isRemark = (label: string): boolean =>
  /\b(?:remarks?|comments?|notes?|(?:seller|owner) says|remarques?|observaciones|notas|bemerkung\w*)\b/i.test(label);

/** Whether a value is an amount or a time by its form, so that a label that could mean either does not name a fact here. */
const isAmountOrTime = (value: string): boolean =>
  /[$€£¥]|\b(?:USD|CAD)\b|\d{1,2}:\d\d|\b\d{1,2} ?[ap]\.?m\b|\d ?h ?\d\d\b|\b\d{1,2}\/\d{1,2}\/\d\d|^\d{1,3}(?:,\d{3})+(?:\.\d\d)?$/i.test(
    value,
  );

/**
 * Whether a label can name a fact here: it says nothing of amounts and times, or it is a known one that may mean either and what
 * stands beside it is none of them.
 */
export function canNameFact(label: string, value: string): boolean {
  const { money, time } = labelRoles(label);
  if (money.size === 0 && time.size === 0) return true;
  return meaningsOf(label).length > 0 && !isAmountOrTime(value);
}

import { LABEL_LENGTH, type Meaning, meaningOf } from './labels.ts';

const FIGURES: ReadonlySet<Meaning> = new Set([
  'year',
  'miles',
  'kilometres',
  'lotNumber',
  'runNumber',
  'priceNow',
  'price',
  'nextBid',
  'increment',
  'buyNow',
  'other-money',
  'closes-at',
  'time-left',
  'other-time',
]);
const MONEY: ReadonlySet<Meaning> = new Set(['priceNow', 'price', 'nextBid', 'increment', 'buyNow', 'other-money']);

/** Whether a text can at all be the value of such a label: figures have digits, money is short and mostly an amount. */
export function fitsMeaning(text: string, meaning: Meaning): boolean {
  const first = text.split('\n', 1)[0] ?? '';
  if (meaning === 'vin') return /[A-Z0-9]{6}/i.test(first);
  if (MONEY.has(meaning)) return /^[^\d]{0,8}\d/.test(first) && first.length <= 40;
  if (FIGURES.has(meaning)) return /\d/.test(text) && first.length <= 60;
  return first !== '' && first === text && first.length <= 60;
}

/** Whether a text brings its own label: `Minimum increment: $250.00`, `Lot 12`. It is then no value of the label before. */
export function namesItself(text: string): boolean {
  const first = text.slice(0, 200).split('\n', 1)[0] ?? '';
  const colon = first.indexOf(':');
  if (colon > 0 && colon <= LABEL_LENGTH && meaningOf(first.slice(0, colon)) !== undefined) return !/^\d/.test(first);
  const words = first.split(' ', 6);
  for (let count = Math.min(5, words.length - 1); count >= 1; count--) {
    const meaning = /^[$#\d]/.test(words[count] ?? '') ? meaningOf(words.slice(0, count).join(' ')) : undefined;
    if (meaning !== undefined && meaning !== 'other') return true;
  }
  return false;
}

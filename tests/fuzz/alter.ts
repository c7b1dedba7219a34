import { type Dice, diceOf } from '../../scripts/learn/dice.ts';

/** What readers look for, and what trips them: signs, figures at the edge, names that objects have, letters of many bytes. */
const PIECES = [
  ...[
    '"',
    "'",
    '\\',
    ',',
    ';',
    '\t',
    '\n',
    '\r\n',
    '\0',
    '{',
    '}',
    '[',
    ']',
    ':',
    '<',
    '>',
    '&',
    '</script>',
    '<!--',
    '-->',
  ],
  ...[
    '$',
    '%',
    '1,234.56',
    '1.234,56',
    '-0',
    '1e308',
    '9007199254740993',
    '0x10',
    'NaN',
    '00',
    '999999999999999999999',
  ],
  ...['null', 'true', '__proto__', 'constructor', 'toString', 'lots-added', '"version":99', '{"a":', '[[[['],
  ...[
    '2026-02-30',
    '25:61',
    '12/31/1969',
    'Sat',
    'noon',
    'EST',
    '11:30',
    '1LX4P7C59N0000001',
    'VIN',
    'Lot',
    'Current bid',
  ],
  ...['\u2028', '\u202e', '\ufeff', '\ud83d', '🚚', 'İ', 'ﬀ', '½', '−', '\u00a0', 'é'],
];
const MOST_AGAIN = 400;
const LONGEST = 30_000;

const below = (dice: Dice, end: number) => Math.floor(dice.uniform() * end);
const oneOf = <Value>(dice: Dice, list: readonly Value[]): Value | undefined => list[below(dice, list.length)];

type Change = (text: string, dice: Dice, others: readonly string[]) => string;

/** A stretch of a text: where it begins and ends. */
function stretch(text: string, dice: Dice): readonly [from: number, to: number] {
  const from = below(dice, text.length + 1);
  return [from, Math.min(text.length, from + below(dice, dice.uniform() < 0.8 ? 24 : text.length + 1))];
}

const CHANGES: readonly Change[] = [
  (text, dice) => {
    const [from, to] = stretch(text, dice);
    return text.slice(0, from) + text.slice(to);
  },
  (text, dice) => {
    const at = below(dice, text.length + 1);
    return text.slice(0, at) + (oneOf(dice, PIECES) ?? '') + text.slice(at);
  },
  (text, dice) => {
    const [from, to] = stretch(text, dice);
    return text.slice(0, from) + (oneOf(dice, PIECES) ?? '') + text.slice(to);
  },
  (text, dice) => {
    const at = below(dice, text.length + 1);
    return (
      text.slice(0, at) + String.fromCharCode(below(dice, dice.uniform() < 0.7 ? 128 : 65_536)) + text.slice(at + 1)
    );
  },
  (text, dice) => {
    const [from, to] = stretch(text, dice);
    const part = text.slice(from, to) || (oneOf(dice, PIECES) ?? '');
    return text.slice(0, to) + part.repeat(1 + below(dice, MOST_AGAIN)) + text.slice(to);
  },
  (text, dice) => text.slice(0, below(dice, text.length + 1)),
  (text, dice, others) => {
    const other = oneOf(dice, others) ?? '';
    const [from, to] = stretch(other, dice);
    const at = below(dice, text.length + 1);
    return text.slice(0, at) + other.slice(from, to) + text.slice(at);
  },
  // Figures are where most rules are.
  (text, dice) => {
    const figures = [...text.matchAll(/\d+/g)];
    const figure = oneOf(dice, figures);
    if (figure === undefined) return text;
    const other = oneOf(dice, ['0', '-1', '999999999999', '1e9', '', String(below(dice, 100_000))]) ?? '';
    return text.slice(0, figure.index) + other + text.slice(figure.index + figure[0].length);
  },
];

/**
 * A text made from honest ones by a few changes, the same for the same seed.
 * @param honest what a reader reads well; at least one
 */
export function altered(honest: readonly string[], seed: number): string {
  const dice = diceOf(seed);
  // The first numbers of seeds in a row are alike.
  for (let i = 0; i < 4; i++) dice.uniform();
  let text = oneOf(dice, honest) ?? '';
  for (let left = 1 + below(dice, 6); left > 0; left--)
    text = (oneOf(dice, CHANGES)?.(text, dice, honest) ?? text).slice(0, LONGEST);
  return text;
}

import type { MoveKind } from '../../../src/domain/books/bank/book-move.ts';
import type { ProposedMatch } from '../../../src/domain/books/bank/match-bank.ts';
import { formatMoney } from '../../../src/domain/money/format-money.ts';

/** What was recorded, in a word. */
export const MOVE_WORDS: Readonly<Record<MoveKind, string>> = {
  payment: 'Payment',
  refund: 'Refund',
  returned: 'Returned payment',
  cost: 'Bill paid at once',
  payoff: 'Floor-plan payoff',
  sale: 'Car sold',
};

const SPEAKS: Readonly<Record<ProposedMatch['evidence'], string>> = {
  number: 'same number',
  payee: 'names the payee',
  silent: 'amount and day fit, no name is given',
  unknown: 'only the amount fits',
};

/** Why a match is proposed, and what is in doubt. */
export function whyMatch({ evidence, difference, lines, moves, others }: ProposedMatch): string {
  return [
    SPEAKS[evidence],
    moves.length > 1 && `one line for ${moves.length} recorded amounts`,
    lines.length > 1 && `${lines.length} lines for one recorded amount`,
    difference !== 0 && `the bank has ${formatMoney(difference, { sign: 'always' })}`,
    others.length > 0 && 'another recorded amount fits too',
  ]
    .filter((words) => words !== false)
    .join('; ');
}

import { daysBetween } from '../../time/calendar-day.ts';
import type { BookMove } from './book-move.ts';
import { tidyNumber } from './line-words.ts';
import type { NamedMove, ReadLine } from './name-payees.ts';

/** What speaks for a line being a recorded move, the strongest first. */
export const EVIDENCE = ['number', 'payee', 'silent', 'unknown'] as const;
export type Evidence = (typeof EVIDENCE)[number];

/**
 * How far the bank's day may lie from the recorded one, in days; below zero the bank was first. Common practice, no
 * source: a transfer takes days, a check waits until somebody cashes it.
 */
const SURE = { transfer: [-3, 10], check: [-5, 60], silent: [-1, 5] } as const;
const OFFERED = [-10, 60] as const;
/** A bank need not pay a check that is older than six months (UCC 4-404, from memory), and may. */
const CASHED = [-10, 200] as const;

const isCheckNumber = (number: string): boolean => /^\d{1,7}$/.test(number);

/** Whether a line and a move have the same number, one with figures that changed places, different ones, or leave it open. */
function numbersOf(line: ReadLine, { number }: BookMove): 'same' | 'alike' | 'differ' | 'open' {
  const own = number === undefined ? '' : tidyNumber(number);
  if (own === '') return 'open';
  if (line.check !== undefined && isCheckNumber(own)) {
    const check = tidyNumber(line.check);
    if (check === own) return 'same';
    return [...check].sort().join() === [...own].sort().join() ? 'alike' : 'differ';
  }
  return line.words.numbers.has(own) ? 'same' : 'open';
}

export interface Fit {
  readonly evidence: Evidence;
  /** Whether the day, and what is said and not said, leave no doubt; another line or move may still. */
  readonly clear: boolean;
}

/** Whether a line may be a move, whatever their amounts, and what speaks for it; null where something speaks against it. */
export function fitOf(line: ReadLine, move: NamedMove): Fit | null {
  if (line.cents > 0 !== move.cents > 0) return null;
  // Money that came back unpaid is no refund, and a refund is no payment that came back.
  const { returned, names } = line.words;
  if (returned !== (move.what === 'returned') && (returned || line.cents > 0)) return null;
  const days = daysBetween(move.date, line.date);
  const within = ([first, last]: readonly [number, number]) => days >= first && days <= last;
  const numbers = numbersOf(line, move);
  if (!within(numbers === 'same' ? CASHED : OFFERED)) return null;
  const isPayee = move.payeeKey !== undefined && line.payees.has(move.payeeKey);
  if (numbers === 'alike') return { evidence: 'unknown', clear: false };
  if (numbers === 'differ') return isPayee ? { evidence: 'unknown', clear: false } : null;
  if (numbers === 'same') return { evidence: 'number', clear: within(SURE.check) };
  if (isPayee) return { evidence: 'payee', clear: line.check === undefined && within(SURE.transfer) };
  if (line.payees.size > 0) return null;
  if (names.length > 0) return { evidence: 'unknown', clear: false };
  return {
    evidence: 'silent',
    clear: line.check === undefined && move.number === undefined && within(SURE.silent),
  };
}

/** Lower is stronger. */
export const strength = ({ evidence }: Pick<Fit, 'evidence'>): number => EVIDENCE.indexOf(evidence);

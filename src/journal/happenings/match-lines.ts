import type { BankDraft, NotedMatch } from '../states/bank-state.ts';

/** Takes a match in, unless one of its lines is not there, or one of its lines or of what was recorded is matched already. */
export function match(bank: BankDraft, one: NotedMatch): void {
  const isFree = one.lines.every((key) => bank.lines.has(key) && !bank.byLine.has(key));
  if (!isFree || new Set(one.lines).size < one.lines.length || new Set(one.booked).size < one.booked.length) return;
  if (one.booked.some((key) => bank.byBooked.has(key))) return;
  for (const key of one.lines) bank.byLine.set(key, one);
  for (const key of one.booked) bank.byBooked.set(key, one);
}

/** Takes the match of a line back. */
export function part(bank: BankDraft, line: string): void {
  const one = bank.byLine.get(line);
  if (one === undefined) return;
  for (const key of one.lines) bank.byLine.delete(key);
  for (const key of one.booked) bank.byBooked.delete(key);
}

/** Lines that the bank took back or replaced; they also stay away where an older file is read again. */
export function dropLines(bank: BankDraft, keys: readonly string[]): void {
  for (const key of keys) {
    part(bank, key);
    bank.lines.delete(key);
    bank.gone.add(key);
  }
}

import * as z from 'zod/mini';
import { bankLineKeySchema, bankLineSchema, bankMatchSchema } from '../../domain/books/bank/bank-line.ts';
import { centsSchema } from '../../domain/money/cents.ts';
import { localDateSchema } from '../../domain/time/local-date.ts';
import { dropLines, match, part } from './match-lines.ts';
import { aboutBooks } from './row.ts';

const keys = z.array(bankLineKeySchema).check(z.minLength(1));

/** What the bank says, and what of it belongs to what was recorded. None of it is about one lot. */
export const BANK = [
  /** A statement that was read. Of lines that are there already nothing changes. */
  aboutBooks(
    'bank-read',
    {
      /** What the account is called here; never its whole number. */
      account: z.string().check(z.minLength(1), z.maxLength(40)),
      file: z.optional(z.string().check(z.maxLength(260))),
      from: localDateSchema,
      to: localDateSchema,
      opening: z.optional(centsSchema),
      closing: z.optional(centsSchema),
      lines: z.array(bankLineSchema),
      /** Earlier lines that the bank took back. */
      dropped: z.optional(z.array(bankLineKeySchema)),
    },
    {
      fold({ bank }, { kind: _, lines, dropped = [], ...statement }, noted) {
        dropLines(bank, [...dropped, ...lines.flatMap(({ replaces }) => replaces ?? [])]);
        const fresh = lines.filter(({ key }) => !bank.lines.has(key) && !bank.gone.has(key));
        for (const line of fresh) bank.lines.set(line.key, { ...line, ...noted, account: statement.account });
        bank.statements.push({ ...statement, ...noted, lines: lines.length, fresh: fresh.length });
      },
      ofLot: () => null,
      undo: 'where made',
      pack: 'everything',
    },
  ),
  /** Lines at the bank and what was recorded that are the same money. What is matched already stays so. */
  aboutBooks(
    'bank-matched',
    { matches: z.array(bankMatchSchema).check(z.minLength(1)) },
    {
      fold({ bank }, { matches }, noted) {
        for (const one of matches) match(bank, { ...one, ...noted });
      },
      ofLot: () => null,
      undo: 'where made',
      pack: 'everything',
    },
  ),
  /** The matches of these lines no longer count. */
  aboutBooks(
    'bank-parted',
    { lines: keys },
    {
      fold({ bank }, { lines }) {
        for (const key of lines) part(bank, key);
      },
      ofLot: () => null,
      undo: 'where made',
      pack: 'everything',
    },
  ),
  /** Lines that have nothing to do with these books. */
  aboutBooks(
    'bank-left-out',
    { lines: keys, why: z.string().check(z.minLength(1), z.maxLength(200)) },
    {
      fold({ bank }, { lines, why }, noted) {
        for (const key of lines) bank.leftOut.set(key, { why, ...noted });
      },
      ofLot: () => null,
      undo: 'where made',
      pack: 'everything',
    },
  ),
] as const;

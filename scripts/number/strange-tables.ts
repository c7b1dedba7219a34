import { readFileSync } from 'node:fs';

import { ok } from '../../src/domain/outcome.ts';
import { instant } from '../../src/domain/time/instant.ts';
import { worksheetCommand } from '../worksheet/worksheet-command.ts';

/**
 * Tables of lots with the max bid that each row must come to, written by somebody who had not read the code: steps of fees
 * and of bid increments, rounding, editions by date, cells that moved, headings with units, amounts in every writing,
 * venues and titles that are named loosely, cars that stand twice.
 */
interface StrangeTables {
  readonly setup: Readonly<Record<string, unknown>>;
  readonly cases: readonly StrangeTable[];
}
export interface StrangeTable {
  readonly name: string;
  readonly lots: string;
  /** Sections in the place of the common setup's. */
  readonly setup?: Readonly<Record<string, unknown>>;
  readonly rows: readonly ExpectedRow[];
}
interface ExpectedRow {
  /** Words of the row that no other row has. */
  readonly tag: string;
  /** Max bids that are right, in dollars. */
  readonly bids: readonly number[];
  /** Whether no max bid is right too, and by which of these words it says why. */
  readonly none?: true;
  readonly whyNone?: string;
  /** Whether any max bid will do, as long as it says these words. */
  readonly any?: true;
  /** Words of which one must be said beside a max bid. */
  readonly says?: string;
  /** The words are missing, and the row is so plain without them that they are not owed: a venue by its id, say. */
  readonly quiet?: true;
}
interface Answer {
  readonly row: number;
  readonly maxBid: number | null;
  readonly limitedBy: string | null;
  readonly lines: readonly { readonly amount: number }[];
  readonly problems: readonly { readonly message: string }[];
  readonly faults: readonly string[];
  readonly assumptions: readonly string[];
}

const { setup, cases }: StrangeTables = JSON.parse(readFileSync('tests/fixtures/strange-tables.json', 'utf8'));

async function answersOf({ lots, setup: changed }: StrangeTable) {
  const texts = { lots, setup: JSON.stringify({ ...setup, ...changed }) };
  const warned: string[] = [];
  let out = '';
  const code = await worksheetCommand(['lots', '--setup', 'setup', '--json'], {
    read: (path) => ok(new TextEncoder().encode(path === 'lots' ? texts.lots : texts.setup)),
    out: (text) => {
      out += text;
    },
    warn: (line) => warned.push(line),
    now: instant(Date.parse('2026-11-30T12:00:00Z')),
  });
  if (code !== 0) throw new Error(warned.join('\n'));
  const answers: readonly Answer[] = JSON.parse(out);
  return { answers, warned };
}

const hasTag = (answer: Answer, tag: string) => new RegExp(`(?<!\\w)${tag}(?!\\w)`).test(JSON.stringify(answer));

export const STRANGE_TABLES: readonly StrangeTable[] = cases;

/** What came of one row: the number that is right or the reason why there is none, or what was wrong. */
export interface JudgedRow {
  readonly tag: string;
  /** `lost`: no number where there is one; `priced`: a wrong one; `silent`: right, but not said what has to be (`quiet` where that was looked at and left); `sum`: its lines don't add up. */
  readonly verdict: 'right' | 'quiet' | 'lost' | 'priced' | 'silent' | 'sum';
  readonly said: string;
}

/** Puts a table through the terminal command and judges each of its rows. */
export async function judgeTable(table: StrangeTable): Promise<readonly JudgedRow[]> {
  const { answers, warned } = await answersOf(table);
  const left = new Set(answers);
  return table.rows.map((expected) => {
    const { tag } = expected;
    const answer = [...left].find((one) => hasTag(one, tag));
    if (answer === undefined) {
      // A line of totals or averages is no lot: left out it has no number, which is all that is wanted of it.
      const isNoLot = expected.none === true && expected.whyNone === undefined;
      return { tag, verdict: isNoLot ? 'right' : 'lost', said: isNoLot ? 'left out' : 'no row of that name' };
    }
    left.delete(answer);
    const { row, maxBid, lines } = answer;
    const said = [
      answer.limitedBy?.replaceAll('-', ' ') ?? '',
      ...answer.problems.map(({ message }) => message),
      ...answer.faults,
      ...answer.assumptions,
      ...warned.filter((line) => !/^Row \d/.test(line) || line.startsWith(`Row ${row}`)),
    ].join('\n');
    const sum = lines.reduce((total, { amount }) => total + Math.round(amount * 100), 0);
    return { tag, said, verdict: verdictOf(expected, maxBid, said, sum) };
  });
}

function verdictOf(
  { bids, none, whyNone, any, says, quiet }: ExpectedRow,
  maxBid: number | null,
  said: string,
  sum: number,
): JudgedRow['verdict'] {
  if (maxBid === null && none !== true) return 'lost';
  if (maxBid !== null && any !== true && !bids.includes(maxBid)) return 'priced';
  if (maxBid !== null && sum !== Math.round(maxBid * 100)) return 'sum';
  const words = maxBid === null ? whyNone : (says ?? (any ? whyNone : undefined));
  if (words === undefined || new RegExp(words, 'i').test(said)) return 'right';
  return quiet ? 'quiet' : 'silent';
}

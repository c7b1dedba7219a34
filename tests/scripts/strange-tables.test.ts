import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { worksheetCommand } from '../../scripts/worksheet/worksheet-command.ts';
import { ok } from '../../src/domain/outcome.ts';
import { instant } from '../../src/domain/time/instant.ts';

/**
 * Tables of lots with the max bid that each row must come to, written by somebody who had not read the code: steps of fees
 * and of bid increments, rounding, editions by date, cells that moved, headings with units, amounts in every writing,
 * venues and titles that are named loosely, cars that stand twice.
 */
interface StrangeTables {
  readonly setup: Readonly<Record<string, unknown>>;
  readonly cases: readonly StrangeTable[];
}
interface StrangeTable {
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
}
interface Answer {
  readonly row: number;
  readonly maxBid: number | null;
  readonly limitedBy: string | null;
  readonly lines: readonly { readonly amount: number }[];
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
  expect(code, warned.join('\n')).toBe(0);
  const answers: readonly Answer[] = JSON.parse(out);
  return { answers, warned };
}

const hasTag = (answer: Answer, tag: string) => new RegExp(`(?<!\\w)${tag}(?!\\w)`).test(JSON.stringify(answer));

describe('a table written by somebody else', () => {
  test.each(cases.map((one) => [one.name, one] as const))('%s', async (_, table) => {
    const { answers, warned } = await answersOf(table);
    const left = new Set(answers);
    for (const { tag, bids, none, whyNone, any, says } of table.rows) {
      const answer = [...left].find((one) => hasTag(one, tag));
      if (answer === undefined) throw new Error(`no row has “${tag}”`);
      left.delete(answer);
      const { row, maxBid, lines } = answer;
      const { lines: _lines, ...sayings } = answer;
      const said = [
        JSON.stringify(sayings),
        ...warned.filter((line) => !/^Row \d/.test(line) || line.startsWith(`Row ${row}`)),
      ];
      const words = maxBid === null ? whyNone : (says ?? (any ? whyNone : undefined));
      if (maxBid === null) expect(none, `${tag} has no max bid: ${said.join('\n')}`).toBe(true);
      else if (any !== true) expect(bids, tag).toContain(maxBid);
      if (words !== undefined) expect(said.join('\n'), tag).toMatch(new RegExp(words, 'i'));
      const sum = lines.reduce((total, { amount }) => total + Math.round(amount * 100), 0);
      if (maxBid !== null) expect(sum, tag).toBe(Math.round(maxBid * 100));
    }
  });
});

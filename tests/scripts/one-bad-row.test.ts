import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { LotAnswer } from '../../scripts/worksheet/lot-answer.ts';
import { lotAnswer } from '../../scripts/worksheet/lot-answer.ts';
import { worksheetCommand } from '../../scripts/worksheet/worksheet-command.ts';
import { ok } from '../../src/domain/outcome.ts';
import { instant } from '../../src/domain/time/instant.ts';
import { pricingContext } from '../../src/domain/worksheet/pricing-context.ts';
import { hostileFacts, plainFacts, poisoned } from '../domain/lot/hostile-facts.ts';
import { inventedSetup } from '../domain/worksheet/invented-setup.ts';

const SETUP = readFileSync('tests/fixtures/setup-example.json', 'utf8');
const context = pricingContext(inventedSetup());

async function answers(csv: string): Promise<{ lots: readonly LotAnswer[]; table: string; warned: string }> {
  const warned: string[] = [];
  const outs: string[] = [];
  for (const flags of [['--json'], []]) {
    let out = '';
    const code = await worksheetCommand(['-', '--setup', 'setup.json', ...flags], {
      read: (path) => ok(new TextEncoder().encode(path === '-' ? csv : SETUP)),
      out: (text) => {
        out += text;
      },
      warn: (line) => warned.push(line),
      now: instant(Date.parse('2026-11-25T12:00:00Z')),
    });
    expect(code).toBe(0);
    outs.push(out);
  }
  return { lots: JSON.parse(outs[0] ?? '[]'), table: outs[1] ?? '', warned: warned.join('\n') };
}

const HEAD = 'Lot number,Venue,Retail low,Retail,Retail high,Recon,Year,Title,Transport\n';
const GOOD = 'L1,Foxglove Fleet Lanes,16000,18000,20000,900,2020,Clean,300\n';

describe('a row that can’t be meant costs only itself in the terminal', () => {
  test.each([
    ['a low end of nothing', 'L2,Foxglove Fleet Lanes,0,18000,,900,2020,Clean,300\n', 'low end of retail is $0'],
    ['a low end of nothing with a high one', 'L2,Foxglove Fleet Lanes,0,18000,20000,900,2020,Clean,300\n', 'is $0'],
    ['a retail of billions', 'L2,Foxglove Fleet Lanes,,9999999999,,900,2020,Clean,300\n', 'more than any car'],
    ['recon of billions', 'L2,Foxglove Fleet Lanes,,18000,,9999999999,2020,Clean,300\n', 'more than any car'],
    ['transport of billions', 'L2,Foxglove Fleet Lanes,,18000,,900,2020,Clean,9999999999\n', 'more than any car'],
    ['a digit too few', 'L2,Foxglove Fleet Lanes,160,18000,,900,2020,Clean,300\n', 'no range for one car'],
  ])('%s', async (_, bad, sentence) => {
    const { lots, table, warned } = await answers(HEAD + bad + GOOD);
    const [alone] = (await answers(HEAD + GOOD)).lots;
    expect(lots[0]?.maxBid).toBeNull();
    expect(lots[1]?.maxBid).toBe(alone?.maxBid);
    expect(lots[1]?.maxBid).toBeGreaterThan(0);
    expect(warned).toContain(sentence);
    expect(table.split('\n\n')[0]?.trimEnd().split('\n')).toHaveLength(3);
  });

  test('a model year of 1900 is not read, and the price does not rest on it', async () => {
    const { lots, warned } = await answers(`${HEAD}${GOOD.replace('2020', '1900')}`);
    expect(warned).toContain('1900 can’t be a model year');
    expect(lots[0]?.maxBid).toBeGreaterThan(0);
  });
});

test.each([
  ['slips of the keyboard', plainFacts],
  ['the largest amounts that are kept', hostileFacts],
])('whatever a lot holds, %s, it has an answer', (_, made) => {
  fc.assert(
    fc.property(made, fc.boolean(), (facts, poison) => {
      const row = { row: 2, facts: poison ? poisoned(facts, 'ceilings') : facts, faults: [], barring: [] };
      const answer = lotAnswer(row, context, instant(Date.UTC(2026, 10, 25)));
      expect(answer.maxBid === null || answer.maxBid >= 0).toBe(true);
      if (answer.limitedBy === null) expect(answer.problems.length).toBeGreaterThan(0);
      JSON.stringify(answer);
    }),
    { numRuns: 200 },
  );
});

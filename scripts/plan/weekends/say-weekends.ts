/** Prints what the plan earns in simulated weekends beside other ways to bid. */

import { type Cell, type Compared, compareOn } from './compare.ts';
import { sayForgetting } from './forgetting.ts';

const right = (lots: number, share: number): Cell => ({ lots, share, off: 0, weekendSd: 0 });
const SHARES: readonly Cell[] = [
  right(40, 0.2),
  right(40, 0.5),
  right(40, 0.8),
  right(100, 0.1),
  right(100, 0.2),
  right(100, 0.35),
  right(100, 0.5),
  right(100, 0.8),
  right(100, 1.2),
  right(200, 0.1),
  right(200, 0.35),
  right(200, 0.8),
];
const short = (off: number, weekendSd = 0): Cell => ({ lots: 100, share: 0.35, off, weekendSd });
const OFF: readonly Cell[] = [short(0, 0.05), short(0.05), short(-0.05), short(0.1), short(-0.1), short(0.1, 0.05)];

/** @param flags `--weekends N` plays N weekends in each line, in place of 40; `--forgetting` says what old closings are worth instead */
export function sayWeekends(flags: readonly string[] = []): Promise<void> {
  if (flags.includes('--forgetting')) {
    sayForgetting();
    return Promise.resolve();
  }
  const at = flags.indexOf('--weekends');
  const weekends = at < 0 ? 40 : Number(flags[at + 1]);
  if (!(Number.isInteger(weekends) && weekends > 0)) throw new Error('--weekends takes a whole number above 0.');
  const lines: Compared[] = [];
  console.log(
    '| lots | cash share | prices run | plan over max everywhere | loses a weekend | best few over max | plan / hindsight | odds known: over max | odds known / hindsight |',
  );
  console.log('| -: | -: | :- | -: | -: | -: | -: | -: | -: |');
  for (const [i, cell] of [...SHARES, ...OFF].entries()) {
    const line = compareOn(cell, weekends, 1_000 * (i + 1));
    lines.push(line);
    console.log(rowOf(line));
  }
  const cells = lines.slice(0, SHARES.length);
  const lost = cells.reduce((sum, { lost }) => sum + lost, 0) / (cells.length * weekends);
  console.log(
    `\nWhere prices run as learned the plan loses ${(lost * 100).toFixed(0)} of 100 weekends against bidding the max everywhere.`,
  );
  console.log(
    '“Odds known” is the same plan made by somebody who knows how likely each price is, and the weekend’s level.',
  );
  console.log(
    'Prices are drawn from 2 to 15 rivals with a common effect on each lot; the plan believes in five apart from one another.',
  );
  return Promise.resolve();
}

function rowOf({ cell, weekends, plan, max, few, knowing, hindsight, lost, gainError }: Compared): string {
  const over = (one: number) => `${one >= max ? '+' : '−'}${(Math.abs(one / max - 1) * 100).toFixed(0)}%`;
  const runs = [
    cell.off === 0 ? 'as learned' : `${Math.abs(cell.off * 100)}% ${cell.off > 0 ? 'higher' : 'lower'}`,
    ...(cell.weekendSd > 0 ? [`± ${cell.weekendSd * 100}% by weekend`] : []),
  ].join(', ');
  const loses = `${((lost / weekends) * 100).toFixed(0)}%`;
  const gain = `${over(plan)} ± ${(gainError * 100).toFixed(0)}`;
  return `| ${cell.lots} | ${cell.share * 100}% | ${runs} | ${gain} | ${loses} | ${over(few)} | ${(plan / hindsight).toFixed(2)} | ${over(knowing)} | ${(knowing / hindsight).toFixed(2)} |`;
}

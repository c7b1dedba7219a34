/** Prints how right the number is: max bids of strange tables, the chance of a loss, and what the range of retail holds. */
import { LOSS_DEALS, lossChancesOf } from './loss-deals.ts';
import { rangeCoverage } from './range-coverage.ts';
import { type JudgedRow, judgeTable, STRANGE_TABLES } from './strange-tables.ts';

const CARS = 20_000;

/** @param flags `--list` names each row of a table that is not right */
export async function sayNumber(flags: readonly string[] = []): Promise<void> {
  const counts = new Map<JudgedRow['verdict'], number>();
  let whole = 0;
  for (const table of STRANGE_TABLES) {
    const judged = await judgeTable(table);
    for (const { verdict, tag, said } of judged) {
      counts.set(verdict, (counts.get(verdict) ?? 0) + 1);
      if (verdict !== 'right' && flags.includes('--list')) console.log(`${table.name}, ${tag}: ${verdict}\n  ${said}`);
    }
    if (judged.every(({ verdict }) => verdict === 'right' || verdict === 'quiet')) whole++;
  }
  const of = (verdict: JudgedRow['verdict']) => counts.get(verdict) ?? 0;
  console.log(`Strange tables: ${whole} of ${STRANGE_TABLES.length} right in every row.`);
  console.log(
    `Rows: ${of('right')} right, ${of('quiet')} right where a word would be nice, ${of('priced')} wrongly priced, ${of('lost')} without the max bid that is due, ` +
      `${of('silent')} without a word that is due, ${of('sum')} whose lines don’t add up.\n`,
  );

  const off = LOSS_DEALS.flatMap((deal) => {
    const { typed, withCarSpread } = lossChancesOf(deal);
    return [Math.abs(typed - deal.typed), Math.abs(withCarSpread - deal.withCarSpread)];
  });
  const points = (share: number) => (share * 100).toFixed(3);
  console.log(
    `Chance of a loss, ${off.length} simulated: ${points(Math.max(...off))} points off at most, ` +
      `${points(off.reduce((sum, one) => sum + one, 0) / off.length)} on average.\n`,
  );

  console.log(
    '| comparables beside an estimate 10% off | range of 80% holds, cars 6% apart | 7% | error of the middle, 6% | 7% |',
  );
  console.log('| -: | -: | -: | -: | -: |');
  for (const comps of [0, 1, 2, 3, 5, 8]) {
    const [six, seven] = [rangeCoverage(comps, 0.06, 100 + comps, CARS), rangeCoverage(comps, 0.07, 200 + comps, CARS)];
    const share = (value: number) => `${(value * 100).toFixed(1)}%`;
    console.log(
      `| ${comps} | ${share(six.holds)} | ${share(seven.holds)} | ${share(six.rmse)} | ${share(seven.rmse)} |`,
    );
  }
}

import { formatMoney } from '../../src/domain/money/format-money.ts';
import type { ResultTotals } from '../../src/domain/sale/result-totals.ts';

/** What the shown results come to. */
export function Totals({ totals }: { totals: ResultTotals }) {
  const { count, won, hammer, canceled, lost, compared, withinReach, averageOver, pending, notSold } = totals;
  const facts: readonly (readonly [string, string])[] = [
    ['Results', count.toLocaleString('en-US')],
    ['Won', won.toLocaleString('en-US')],
    ['Hammer of cars won', formatMoney(hammer)],
    ['Lost', lost.toLocaleString('en-US')],
    ['Lost below our max', compared === 0 ? '—' : `${withinReach} of ${compared} compared`],
    ['Over our max on average', averageOver === null ? '—' : formatMoney(averageOver, { cents: 'never' })],
    ...(canceled > 0 ? [['Sales canceled', canceled.toLocaleString('en-US')] as const] : []),
    ...(notSold > 0 ? [['Not sold', notSold.toLocaleString('en-US')] as const] : []),
    ...(pending > 0 ? [['Pending', pending.toLocaleString('en-US')] as const] : []),
  ];
  return (
    <dl class="result-totals">
      {facts.map(([name, value]) => (
        <div key={name}>
          <dt>{name}</dt>
          <dd>{value}</dd>
        </div>
      ))}
    </dl>
  );
}

import { formatMoney } from '../../src/domain/money/format-money.ts';
import type { ResultTotals } from '../../src/domain/sale/result-totals.ts';
import { TermLink } from '../../src/ui/term-link.tsx';
import type { TermId } from '../../src/views/words/glossary.ts';

/** What the shown results come to. */
export function Totals({ totals }: { totals: ResultTotals }) {
  const { count, won, hammer, canceled, lost, compared, withinReach, averageOver, pending, notSold } = totals;
  const facts: readonly (readonly [string, TermId, string])[] = [
    ['Results', 'result', count.toLocaleString('en-US')],
    ['Won', 'result', won.toLocaleString('en-US')],
    ['Hammer of cars won', 'hammer-price', formatMoney(hammer)],
    ['Lost', 'result', lost.toLocaleString('en-US')],
    ['Lost below our max', 'lost-below-max', compared === 0 ? '—' : `${withinReach} of ${compared} compared`],
    [
      'Over our max on average',
      'against-max',
      averageOver === null ? '—' : formatMoney(averageOver, { cents: 'never' }),
    ],
    ...(canceled > 0 ? [['Sales canceled', 'canceled-sale', canceled.toLocaleString('en-US')] as const] : []),
    ...(notSold > 0 ? [['Not sold', 'result', notSold.toLocaleString('en-US')] as const] : []),
    ...(pending > 0 ? [['Pending', 'result', pending.toLocaleString('en-US')] as const] : []),
  ];
  return (
    <dl class="result-totals">
      {facts.map(([name, term, value]) => (
        <div key={name}>
          <dt>
            <TermLink term={term}>{name}</TermLink>
          </dt>
          <dd>{value}</dd>
        </div>
      ))}
    </dl>
  );
}

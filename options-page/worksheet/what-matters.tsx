import { useEffect, useState } from 'preact/hooks';
import type { Accepts } from '../../src/domain/bid/accepted-intervals.ts';
import type { Deal } from '../../src/domain/bid/deal.ts';
import { type Move, type Sensitivity, sensitivityOf } from '../../src/domain/bid/sensitivity.ts';
import { type Cents, cents } from '../../src/domain/money/cents.ts';
import { formatMoney } from '../../src/domain/money/format-money.ts';
import { ScrollX } from '../../src/ui/scroll-x.tsx';

interface WhatMattersProps {
  readonly deal: Deal;
  readonly riskCapOf: (deal: Deal) => Accepts | undefined;
}

/** What each input does to the max bid: by $100, and over its own range where it has one. */
export function WhatMatters({ deal, riskCapOf }: WhatMattersProps) {
  const [rows, setRows] = useState<readonly Sensitivity[]>([]);
  useEffect(() => {
    // Dozens of searches, each with its own chances of a loss: the number itself must not wait for them.
    const timer = setTimeout(() => setRows(sensitivityOf(deal, riskCapOf)), 50);
    return () => clearTimeout(timer);
  }, [deal, riskCapOf]);
  const widest = Math.max(1, ...rows.map(reach));
  return (
    <section class="stack">
      <h2>What would change it most</h2>
      {rows.length === 0 && <p role="status">Working it out…</p>}
      <ScrollX label="What would change the max bid most">
        <table class="ledger">
          <thead>
            <tr>
              <th scope="col">Input</th>
              <th scope="col" class="number">
                As it stands
              </th>
              <th scope="col" class="number">
                $100 more
              </th>
              <th scope="col" class="number">
                $100 less
              </th>
              <th scope="col">Over its range</th>
            </tr>
          </thead>
          <tbody>
            {rows.map((row) => (
              <tr key={row.input}>
                <th scope="row" class="what-input">
                  {row.label}
                </th>
                <td class="number">{formatMoney(row.cents)}</td>
                <td class="number">{moveWords(row.up)}</td>
                <td class="number">{moveWords(row.down)}</td>
                <td>
                  <RangeBar row={row} widest={widest} />
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </ScrollX>
    </section>
  );
}

function RangeBar({ row, widest }: { row: Sensitivity; widest: number }) {
  const low = row.atLow?.change;
  const high = row.atHigh?.change;
  if (low === undefined || low === null || high === undefined || high === null)
    return <span class="missing">no range</span>;
  const [down, up] = low < high ? [low, high] : [high, low];
  const share = (amount: number) => `${(Math.abs(amount) / widest) * 50}%`;
  return (
    <span class="range-bar">
      <span class="range-track" aria-hidden="true">
        <span class="range-down" style={{ right: '50%', width: share(Math.min(0, down)) }} />
        <span class="range-up" style={{ left: '50%', width: share(Math.max(0, up)) }} />
      </span>
      <span class="small number">
        {signed(down)} to {signed(up)}
      </span>
    </span>
  );
}

const reach = (row: Sensitivity) => Math.max(Math.abs(row.atLow?.change ?? 0), Math.abs(row.atHigh?.change ?? 0));

function moveWords(move: Move): string {
  if (move.by === 0) return '—';
  return move.change === null ? 'no price pays' : signed(move.change);
}

const signed = (amount: Cents) =>
  amount === 0 ? '0' : amount > 0 ? `+${formatMoney(amount)}` : `−${formatMoney(cents(-amount))}`;

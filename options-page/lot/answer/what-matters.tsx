import { useEffect, useState } from 'preact/hooks';
import { type Move, type Sensitivity, sensitivityOf } from '../../../src/domain/deal/sensitivity.ts';
import type { LotFacts } from '../../../src/domain/lot/lot.ts';
import { type Cents, cents } from '../../../src/domain/money/cents.ts';
import { formatMoney } from '../../../src/domain/money/format-money.ts';
import { daysWhatIf } from '../../../src/domain/worksheet/days-what-if.ts';
import type { PricingContext } from '../../../src/domain/worksheet/pricing-context.ts';
import type { Worksheet } from '../../../src/domain/worksheet/worksheet-of.ts';
import { Ledger } from '../../../src/ui/tables/ledger.tsx';
import { ScrollX } from '../../../src/ui/tables/scroll-x.tsx';
import { Fold } from '../fold.tsx';
import { Tornado, type TornadoRow } from './tornado.tsx';

interface WhatMattersProps {
  readonly facts: LotFacts;
  readonly context: PricingContext;
  readonly sheet: Worksheet;
}

interface Worked {
  readonly inputs: readonly Sensitivity[];
  readonly rows: readonly TornadoRow[];
}

/** What each input does to the max bid: over its own range as a picture, and by $100 in a table. */
export function WhatMatters({ facts, context, sheet }: WhatMattersProps) {
  const [worked, setWorked] = useState<Worked>();
  const { maxBid } = sheet.result;
  useEffect(() => {
    // Dozens of searches, each with its own chances of a loss: the number itself must not wait for them.
    const timer = setTimeout(() => {
      const inputs = sensitivityOf(sheet.deal, sheet.stopOf);
      setWorked({ inputs, rows: rowsOf(inputs, facts, context, maxBid) });
    }, 50);
    return () => clearTimeout(timer);
  }, [facts, context, sheet, maxBid]);
  const first = worked?.rows[0];
  return (
    <Fold
      id="matters"
      title="What matters most"
      result={
        first === undefined ? (
          <span class="quiet">{worked === undefined ? 'Working it out…' : 'No input has a range yet.'}</span>
        ) : (
          <>
            <strong>{first.label}</strong>: the max bid is {boundWords(first.low)} to {boundWords(first.high)} over its
            range
          </>
        )
      }
    >
      {() =>
        worked === undefined ? (
          <p role="status">Working it out…</p>
        ) : (
          <>
            {worked.rows.length > 0 && maxBid !== null && <Tornado rows={worked.rows} maxBid={maxBid} />}
            <ByHundred rows={worked.inputs} />
          </>
        )
      }
    </Fold>
  );
}

const boundWords = (bid: Cents | null): string => (bid === null ? 'nothing' : formatMoney(bid));

/** Inputs with a range, the widest first. */
function rowsOf(
  inputs: readonly Sensitivity[],
  facts: LotFacts,
  context: PricingContext,
  maxBid: Cents | null,
): readonly TornadoRow[] {
  const rows = inputs.flatMap(({ input, label, cents: amount, atLow, atHigh }): readonly TornadoRow[] => {
    if (atLow === undefined || atHigh === undefined || (atLow.by === 0 && atHigh.by === 0)) return [];
    const span = `${whole(cents(amount + atLow.by))} to ${whole(cents(amount + atHigh.by))}`;
    return [row(input, label, span, atLow.maxBid, atHigh.maxBid)];
  });
  const days = daysWhatIf(facts, context);
  if (days !== undefined) rows.push(row('days', 'Days to sell', 'half to twice as long', days.half, days.double));
  const width = ({ low, high }: TornadoRow) => Math.abs((high ?? 0) - (low ?? 0));
  return maxBid === null ? [] : rows.filter((one) => width(one) > 0).sort((a, b) => width(b) - width(a));
}

function row(key: string, label: string, span: string, one: Cents | null, other: Cents | null): TornadoRow {
  const inOrder = (one ?? 0) <= (other ?? 0);
  return { key, label, span, low: inOrder ? one : other, high: inOrder ? other : one };
}

const whole = (amount: Cents): string => formatMoney(amount, { cents: 'never' });

function ByHundred({ rows }: { rows: readonly Sensitivity[] }) {
  return (
    <ScrollX label="What $100 more or less does">
      <Ledger
        rows={rows}
        rowKey={({ input }) => input}
        columns={[
          { label: 'Input', heads: true, class: 'what-input', cell: ({ label }) => label },
          { label: 'Now', number: true, cell: (one) => formatMoney(one.cents) },
          { label: '$100 more', number: true, cell: ({ up }) => moveWords(up) },
          { label: '$100 less', number: true, cell: ({ down }) => moveWords(down) },
        ]}
      />
    </ScrollX>
  );
}

function moveWords(move: Move): string {
  if (move.by === 0) return '—';
  if (move.change === null) return 'Don’t bid';
  return move.change === 0 ? '0' : formatMoney(move.change, { sign: 'always' });
}

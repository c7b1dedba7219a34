import { useMemo, useState } from 'preact/hooks';
import type { CorrectionId } from '../../../src/domain/correction/corrections.ts';
import {
  type ReplayedLot,
  type ReplaySums,
  replayOf,
  replaySums,
} from '../../../src/domain/learn/corrections/replay.ts';
import { roundedCents } from '../../../src/domain/money/cents.ts';
import { formatMoney } from '../../../src/domain/money/format-money.ts';
import { Ledger, type LedgerColumn } from '../../../src/ui/tables/ledger.tsx';
import { ScrollX } from '../../../src/ui/tables/scroll-x.tsx';
import { TermLink } from '../../../src/ui/term-link.tsx';
import { moveWords } from './effect-part.tsx';
import type { CorrectionData } from './use-correction-data.ts';
import { useSlices } from './use-slices.ts';

const SHOWN = 10;

const money = (amount: number): string => formatMoney(roundedCents(amount), { cents: 'never' });

/** Goes through the past with the correction on, as it would have been learned week by week. */
export function ReplayPart({ id, data }: { id: CorrectionId; data: CorrectionData }) {
  const [asked, setAsked] = useState(false);
  const begin = useMemo(() => (asked ? () => replayOf(data.timed, data.evidence, [id]) : null), [asked, data, id]);
  const { result, done, failed } = useSlices(begin);
  const sums = useMemo(() => (result === null ? null : replaySums(result)), [result]);
  return (
    <section class="stack" aria-label="Replay">
      <h3>
        <TermLink term="replay">Replay</TermLink> of the past
      </h3>
      {!asked && (
        <>
          <p class="quiet small">
            What your past bids would have been with this on. It is learned anew each Monday, from what was recorded by
            then.
          </p>
          <p>
            <button type="button" onClick={() => setAsked(true)}>
              Replay
            </button>
          </p>
        </>
      )}
      {asked && sums === null && (
        <p role="status">{failed ?? `Going through ${data.timed.length} past lots: ${done} done.`}</p>
      )}
      {sums !== null && <Sums sums={sums} />}
    </section>
  );
}

function Sums({ sums }: { sums: ReplaySums }) {
  const { on, moved, averageChange, wins, notBought, maybeWon, unknown, profit, profitKept, open } = sums;
  if (on === 0)
    return <p role="status">It would never have been on: there were not enough cases before your last sale.</p>;
  return (
    <div class="stack" role="status">
      <p>
        It would have been on for {on} past lots and moved {moved} of their max bids, {moveWords(averageChange)} on
        average.
      </p>
      <p>
        Of {wins} wins, {notBought.length} would not have been bought. The wins left {money(profit)} so far; those still
        bought would have left {money(profitKept)}.
        {open > 0 && ` ${open} ${open === 1 ? 'win has' : 'wins have'} not sold yet: what they will leave is unknown.`}
      </p>
      {notBought.length > 0 && (
        <ScrollX label="Wins that would not have been bought">
          <Ledger
            caption="Wins that would not have been bought, the latest first"
            columns={NOT_BOUGHT}
            rows={notBought.slice(0, SHOWN)}
            rowKey={({ past }) => past.lot}
          />
        </ScrollX>
      )}
      <p>
        {maybeWon.length === 0
          ? 'No lost lot would have been within reach at a price that is known.'
          : `${maybeWon.length} lost ${maybeWon.length === 1 ? 'lot' : 'lots'} might have been won: the max bid would have been above the winner’s price. How high the winner would have gone, nobody knows.`}
        {unknown > 0 && ` At ${unknown} more the bid would have been higher, and the final price was never recorded.`}
      </p>
      <p class="quiet small">
        The money that was not spent would have bought something else, which is not counted here.
      </p>
    </div>
  );
}

const NOT_BOUGHT: readonly LedgerColumn<ReplayedLot>[] = [
  { label: 'Lot', heads: true, cell: ({ past }) => <a href={`#/lot/${past.lot}`}>{past.title}</a> },
  {
    label: 'Won at',
    number: true,
    cell: ({ past }) => (past.happened.hammer === null ? '' : money(past.happened.hammer)),
  },
  { label: 'Max bid then', number: true, cell: ({ after }) => (after === null ? 'No bid' : money(after)) },
  { label: 'It left', number: true, cell: ({ profit }) => (profit === null ? 'Not known yet' : money(profit)) },
];

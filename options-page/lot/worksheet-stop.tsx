import { bidWords, priceWords } from '../../src/domain/bid/bid-words.ts';
import { stopOf } from '../../src/domain/bid/stop-of.ts';
import { formatMoney } from '../../src/domain/money/format-money.ts';
import { isOver } from '../../src/folds/bid-given.ts';
import { useStandingsNow } from '../../src/ui/hooks/use-standings.ts';
import { TermLink } from '../../src/ui/term-link.tsx';
import { plannedWords } from '../../src/views/lots/stop-words.ts';
import { PlaceProxy } from './sale/place-proxy.tsx';
import type { WorksheetHeadProps } from './worksheet-head.tsx';
import './worksheet-stop.css';

/** The number to stop at, what our bid is, and the proxy: in sight however far down the worksheet one reads. */
export function WorksheetStop({ lot, sheet, now }: WorksheetHeadProps) {
  const standings = useStandingsNow();
  const bid = standings.bids.at(lot, now);
  const standing = standings.of(lot);
  const planWords = plannedWords(standing);
  // The worksheet knows earlier lives of the car that the list does not, so the max bid is its own.
  const maxBid = sheet.ok ? sheet.value.result.maxBid : undefined;
  const stop = stopOf({ maxBid, planned: standing.planned }).at;
  return (
    <section class="worksheet-stop" aria-label="Max bid and proxy">
      <div class="worksheet-stop-line">
        <span class="small quiet">
          <TermLink term="max-bid">Max bid</TermLink>
        </span>
        <span class={sheet.ok ? 'figure-large' : 'figure-large no-figure'}>{stopWords(sheet)}</span>
        {planWords !== undefined && (
          <>
            <span class="small quiet worksheet-stop-bid">
              <TermLink term="planned-bid">Planned bid</TermLink>
            </span>
            <a class="figure" href="#/plan">
              {planWords}
            </a>
          </>
        )}
        <span class="small quiet worksheet-stop-bid">
          <TermLink term="bid">Bid</TermLink>
        </span>
        <span class={bid.loud ? 'worksheet-stop-state act' : 'worksheet-stop-state'}>
          {[bidWords(bid), priceWords(bid)].filter(Boolean).join(', ')}
        </span>
      </div>
      {!isOver(lot, now) && <PlaceProxy lot={lot} bid={bid} stop={stop} />}
    </section>
  );
}

function stopWords(sheet: WorksheetHeadProps['sheet']): string {
  if (!sheet.ok) return sheet.problems.some(({ short }) => short !== undefined) ? 'can’t be worked out' : 'not yet';
  const { maxBid } = sheet.value.result;
  return maxBid === null ? 'Don’t bid' : formatMoney(maxBid);
}

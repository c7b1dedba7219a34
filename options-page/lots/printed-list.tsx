import type { BidState } from '../../src/domain/bid/bid-state.ts';
import { bidWords } from '../../src/domain/bid/bid-words.ts';
import { sayClose } from '../../src/domain/close/say-close.ts';
import { lotTitle } from '../../src/domain/lot/car-name.ts';
import { formatMoney } from '../../src/domain/money/format-money.ts';
import { MINUTE } from '../../src/domain/time/units.ts';
import type { LotState } from '../../src/folds/lot-state.ts';
import { useNow } from '../../src/ui/hooks/use-now.ts';
import { useWorkspace } from '../../src/ui/workspace.ts';
import type { LotWorks, Standing } from '../../src/views/lots/standing.ts';

interface PrintedListProps {
  readonly lots: readonly LotState[];
  readonly works: LotWorks;
}

/** Some twenty sheets: more is no list for a person, and the file for a spreadsheet holds all of it. */
const MOST = 600;

/** The list on paper: every lot that is shown, not only the rows in sight. */
export function PrintedList({ lots, works }: PrintedListProps) {
  const { setup } = useWorkspace();
  const printed = lots.slice(0, MOST);
  const now = useNow(MINUTE);
  return (
    <section class="printed-list">
      <p>
        {lots.length > MOST
          ? `The first ${MOST.toLocaleString('en-US')} of ${lots.length.toLocaleString('en-US')} lots; “Save as CSV” has all of them.`
          : `${lots.length.toLocaleString('en-US')} lots.`}{' '}
        Closes in store time ({setup.store.zone}).
      </p>
      <table class="ledger">
        <thead>
          <tr>
            <th scope="col">Closes</th>
            <th scope="col">Car</th>
            <th scope="col">Venue, lot</th>
            <th scope="col" class="number">
              Price now
            </th>
            <th scope="col" class="number">
              Max bid
            </th>
            <th scope="col" class="number">
              Headroom
            </th>
            <th scope="col">Bid</th>
          </tr>
        </thead>
        <tbody>
          {printed.map((lot) => (
            <PrintedLot key={lot.id} lot={lot} standing={works.of(lot)} bid={works.bids.at(lot, now)} />
          ))}
        </tbody>
      </table>
    </section>
  );
}

interface PrintedLotProps {
  readonly lot: LotState;
  readonly standing: Standing;
  readonly bid: BidState;
}

function PrintedLot({ lot: { facts, addedAt }, standing, bid }: PrintedLotProps) {
  const { setup } = useWorkspace();
  const { headroom } = standing;
  const venue = setup.venues.find(({ id }) => id === facts.venueId)?.name ?? facts.venueName;
  return (
    <tr>
      <td>{facts.close === undefined ? 'no close' : sayClose(facts.close, setup.store.zone, addedAt)}</td>
      <td class="strong">
        {lotTitle(facts)}
        {facts.vin !== undefined && <div class="small quiet">{facts.vin}</div>}
      </td>
      <td>{[venue, facts.lotNumber].filter(Boolean).join(', ')}</td>
      <td class="number">{facts.priceNow !== undefined && formatMoney(facts.priceNow)}</td>
      <td class="number strong">
        {standing.missing.length > 0
          ? standing.missing[0]
          : standing.maxBid === null
            ? 'Don’t bid'
            : formatMoney(standing.maxBid)}
      </td>
      <td class="number">{headroom !== null && formatMoney(headroom)}</td>
      <td class={bid.loud ? 'strong' : ''}>{bidWords(bid)}</td>
    </tr>
  );
}

import { useState } from 'preact/hooks';
import { lotTitle } from '../../src/domain/lot/car-name.ts';
import { formatMoney } from '../../src/domain/money/format-money.ts';
import { Ledger } from '../../src/ui/tables/ledger.tsx';
import { ScrollX } from '../../src/ui/tables/scroll-x.tsx';
import { useWorkspace } from '../../src/ui/workspace.ts';
import type { AfterLot } from '../../src/views/after-sale/after-lot.ts';
import { STANDING_TITLES, standingInWords } from '../../src/views/after-sale/standing-words.ts';

const SHOWS = [
  { value: 'open', label: 'Not final yet' },
  { value: 'final', label: 'Final' },
  { value: 'undone', label: 'Canceled' },
] as const;
const MOST = 200;

/** Every win and how sure it is, the latest first. */
export function WonLots({ lots }: { lots: readonly AfterLot[] }) {
  const { setup } = useWorkspace();
  const [show, setShow] = useState<(typeof SHOWS)[number]['value']>('open');
  const won = lots.filter(({ standing }) => standing !== undefined);
  const shown = won
    .filter(({ standing }) => standing?.as === show)
    .sort((a, b) => (b.sold.ended?.at ?? 0) - (a.sold.ended?.at ?? 0));
  return (
    <section class="stack">
      <h2>Won lots</h2>
      <fieldset class="row no-print">
        <legend class="visually-hidden">Which won lots</legend>
        {SHOWS.map(({ value, label }) => (
          <button key={value} type="button" aria-pressed={show === value} onClick={() => setShow(value)}>
            {label} {won.filter(({ standing }) => standing?.as === value).length}
          </button>
        ))}
      </fieldset>
      {shown.length === 0 ? (
        <p class="quiet">None.</p>
      ) : (
        <ScrollX label="Won lots">
          <Ledger
            rows={shown.slice(0, MOST)}
            rowKey={({ lot }) => lot.id}
            columns={[
              {
                label: 'Car',
                cell: ({ lot, place }) => (
                  <>
                    <a href={`#/won/${lot.id}`}>{lotTitle(lot.facts)}</a>
                    <div class="quiet small">{place.name}</div>
                  </>
                ),
              },
              { label: 'Hammer', number: true, cell: ({ money }) => money && formatMoney(money.hammer) },
              {
                label: 'To pay',
                number: true,
                cell: ({ money }) => (money && money.toPay > 0 ? formatMoney(money.toPay) : '–'),
              },
              {
                label: 'Status',
                cell: ({ standing }) =>
                  standing && (
                    <>
                      <span class="strong">{STANDING_TITLES[standing.as]}</span>
                      <div class="quiet small">{standingInWords(standing, setup.store.zone)}</div>
                    </>
                  ),
              },
            ]}
          />
        </ScrollX>
      )}
      {shown.length > MOST && (
        <p class="quiet small">
          The latest {MOST} of {shown.length}.
        </p>
      )}
    </section>
  );
}

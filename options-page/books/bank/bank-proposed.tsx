import { useState } from 'preact/hooks';
import type { ProposedMatch } from '../../../src/domain/books/bank/match-bank.ts';
import type { LotId } from '../../../src/domain/lot/lot.ts';
import { formatMoney } from '../../../src/domain/money/format-money.ts';
import { Ledger } from '../../../src/ui/tables/ledger.tsx';
import { ScrollX } from '../../../src/ui/tables/scroll-x.tsx';
import { ShowAll } from '../../../src/ui/tables/show-all.tsx';
import { countWords } from '../../../src/views/words/count-words.ts';
import { dateInWords } from '../../../src/views/words/date-words.ts';
import { useBook } from '../use-book.ts';
import { whyMatch } from './bank-words.ts';
import { MoveCell } from './move-cell.tsx';

interface BankProposedProps {
  readonly proposed: readonly ProposedMatch[];
  readonly carsOf: (move: string) => readonly LotId[];
}

const MOST_ROWS = 200;
const keyOf = ({ lines }: ProposedMatch): string => lines.map(({ key }) => key).join(' ');

/** What seems to belong together: sure matches start checked, doubtful ones don't. */
export function BankProposed({ proposed, carsOf }: BankProposedProps) {
  const book = useBook();
  const [ticks, setTicks] = useState<ReadonlyMap<string, boolean>>(new Map());
  const [all, setAll] = useState(false);
  if (proposed.length === 0) return null;
  const isTicked = (one: ProposedMatch) => ticks.get(keyOf(one)) ?? one.sure;
  const ticked = proposed.filter(isTicked);
  // What is asked stands first.
  const inOrder = proposed.toSorted((a, b) => Number(a.sure) - Number(b.sure));
  const shown = all ? inOrder : inOrder.slice(0, MOST_ROWS);
  const record = () =>
    book(
      {
        kind: 'bank-matched',
        matches: ticked.map(({ lines, moves }) => ({
          lines: lines.map(({ key }) => key),
          booked: moves.flatMap(({ keys }) => keys),
        })),
      },
      `${countWords(ticked.length, 'match', 'matches')} recorded.`,
    );
  return (
    <section class="stack" aria-labelledby="bank-proposed">
      <h2 id="bank-proposed">Seem to belong together</h2>
      <ScrollX label="Proposed matches">
        <Ledger
          class="fits-narrow"
          rows={shown}
          rowKey={keyOf}
          columns={[
            {
              label: 'Match',
              quietHead: true,
              class: 'no-print',
              cell: (one) => (
                <input
                  type="checkbox"
                  aria-label={`Match ${one.lines[0]?.text}, ${formatMoney(one.lines[0]?.cents ?? one.difference)}`}
                  checked={isTicked(one)}
                  onChange={(event) => {
                    const { checked } = event.currentTarget;
                    setTicks((before) => new Map(before).set(keyOf(one), checked));
                  }}
                />
              ),
            },
            {
              label: 'In the bank',
              heads: true,
              cell: ({ lines }) =>
                lines.map(({ key, text, date, cents }) => (
                  <span key={key} class="block">
                    {text} <span class="quiet small">{dateInWords(date)}</span>
                    <span class="small narrow-only">{formatMoney(cents, { cents: 'always' })}</span>
                  </span>
                )),
            },
            {
              label: 'Bank amount',
              number: true,
              class: 'wide-only',
              cell: ({ lines }) =>
                lines.map(({ key, cents }) => (
                  <span key={key} class="block">
                    {formatMoney(cents, { cents: 'always' })}
                  </span>
                )),
            },
            {
              label: 'Recorded',
              cell: (match) => (
                <>
                  {match.moves.map((one) => (
                    <MoveCell key={one.key} move={one} cars={carsOf(one.key)}>
                      <span class="small narrow-only">{formatMoney(one.cents, { cents: 'always' })}</span>
                    </MoveCell>
                  ))}
                  <span class="small quiet narrow-only">{whyMatch(match)}</span>
                </>
              ),
            },
            {
              label: 'Recorded amount',
              number: true,
              class: 'wide-only',
              cell: ({ moves }) =>
                moves.map(({ key, cents }) => (
                  <span key={key} class="block">
                    {formatMoney(cents, { cents: 'always' })}
                  </span>
                )),
            },
            { label: 'Why', class: 'small wide-only', cell: whyMatch },
          ]}
        />
      </ScrollX>
      <ShowAll shown={shown.length} of={proposed.length} which="The first" onAll={() => setAll(true)} />
      <div class="panel row apart book-invoice no-print">
        <span>
          {ticked.length < proposed.length &&
            `${countWords(proposed.length - ticked.length, 'match is', 'matches are')} not checked: doubtful ones stand first.`}
        </span>
        <button type="button" class="main" disabled={ticked.length === 0} onClick={record}>
          Record {countWords(ticked.length, 'checked match', 'checked matches')}
        </button>
      </div>
    </section>
  );
}

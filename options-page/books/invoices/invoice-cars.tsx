import type { ExpectedLine } from '../../../src/domain/books/folder/expected.ts';
import type { JudgedLine, Verdict } from '../../../src/domain/books/invoice/judge-line.ts';
import { canBeTicked, isPlain, type MatchedCar } from '../../../src/domain/books/invoice/match-invoice.ts';
import type { LotId } from '../../../src/domain/lot/lot.ts';
import { formatMoney } from '../../../src/domain/money/format-money.ts';
import type { LocalDate } from '../../../src/domain/time/local-date.ts';
import { ScrollX } from '../../../src/ui/tables/scroll-x.tsx';
import { folderName } from '../../../src/views/books/folder-name.ts';
import { countWords } from '../../../src/views/words/count-words.ts';
import { useBooks } from '../use-books.ts';
import { LineChoices } from './line-choices.tsx';

export interface InvoiceCarsProps {
  readonly how: 'exact' | 'near' | 'none';
  readonly cars: readonly MatchedCar[];
  readonly isTicked: (car: MatchedCar, line: JudgedLine) => boolean;
  readonly onTick: (line: string, on: boolean) => void;
  /** Says what a line is. */
  readonly onTurn: (line: string, what: 'cost' | 'payment') => void;
  /** Says which expected line, by its name in plain words, a wording stands for; '' for none. */
  readonly onLink: (words: string, name: string) => void;
  readonly onDay: (line: string, day: LocalDate | undefined) => void;
  readonly onChoose: (car: string, lot: LotId | null) => void;
}

const HEADS = {
  exact: { head: 'Matched', what: 'No problems found. Lines that match are checked.' },
  near: { head: 'Close match', what: 'Something does not match. Check, then choose what to record.' },
  none: { head: 'No match', what: 'Nothing here is recorded until you choose the car.' },
} as const;

const VERDICT_WORDS: Readonly<Record<Verdict, string | null>> = {
  'as-expected': null,
  differs: 'differs',
  'not-expected': 'not expected',
  booked: 'already recorded',
  again: 'recorded with another amount',
  twice: 'twice in this file',
  payment: null,
  'part-payment': 'part payment',
  overpaid: 'too much',
  'came-back': 'refund or returned',
  'which-day': 'which day?',
  unsure: 'payment or charge?',
};

const NONE: readonly ExpectedLine[] = [];

/** The cars of an invoice that were matched alike, each with its lines beside what the folder expects. */
export function InvoiceCars({ how, cars, ...rest }: InvoiceCarsProps) {
  if (cars.length === 0) return null;
  const { head, what } = HEADS[how];
  return (
    <section class="stack" aria-labelledby={`invoice-${how}`}>
      <h2 id={`invoice-${how}`}>
        {head}: {countWords(cars.length, 'car', 'cars')}
      </h2>
      <p class="quiet">{what}</p>
      <ScrollX label={head}>
        <table class="ledger invoice-lines">
          <thead>
            <tr>
              <th scope="col">Record</th>
              <th scope="col">On the invoice</th>
              <th scope="col" class="number">
                Amount
              </th>
              <th scope="col" class="number">
                Expected
              </th>
              <th scope="col">Result</th>
            </tr>
          </thead>
          {cars.map((car) => (
            <Car key={car.id} car={car} {...rest} />
          ))}
        </table>
      </ScrollX>
    </section>
  );
}

function Car({
  car,
  isTicked,
  onTick,
  onTurn,
  onDay,
  onLink,
  onChoose,
}: { car: MatchedCar } & Omit<InvoiceCarsProps, 'how' | 'cars'>) {
  const { folders } = useBooks();
  const { match, lines } = car;
  const folder = folders.find(({ lot }) => lot === match.lot);
  const plain = match.how === 'near' ? lines.filter((line) => isPlain(line) && !isTicked(car, line)) : [];
  const theirs =
    [car.vin && `VIN ${car.vin}`, car.lotNumber && `lot ${car.lotNumber}`].filter(Boolean).join(', ') || 'No car given';
  return (
    <tbody>
      <tr class="invoice-car">
        <th scope="colgroup" colSpan={2}>
          {theirs}
        </th>
        <td colSpan={3}>
          <span class="row">
            <select
              aria-label={`Folder for ${theirs}`}
              value={match.lot ?? ''}
              onChange={(event) => {
                const { value } = event.currentTarget;
                onChoose(car.id, folders.find(({ lot }) => lot === value)?.lot ?? null);
              }}
            >
              <option value="">no folder</option>
              {folders.map(({ lot, facts }) => (
                <option key={lot} value={lot}>
                  {folderName(facts)}
                </option>
              ))}
            </select>
            {folder !== undefined && <a href={`#/books/${folder.lot}`}>Open</a>}
            {folder !== undefined && plain.length > 0 && (
              <button
                type="button"
                aria-label={`It is this car: check ${countWords(plain.length, 'line', 'lines')} as expected, ${theirs}`}
                onClick={() => {
                  for (const { line } of plain) onTick(line.id, true);
                }}
              >
                It is this car: check {countWords(plain.length, 'line', 'lines')}
              </button>
            )}
          </span>
          <span class="small quiet">{match.why}</span>
        </td>
      </tr>
      {lines.map((judged) => {
        const { line, verdict, expected, why } = judged;
        const words = VERDICT_WORDS[verdict];
        const money = formatMoney(line.cents);
        return (
          <tr key={line.id}>
            <td>
              <input
                type="checkbox"
                aria-label={`Record ${line.label}, ${money}, ${theirs}`}
                checked={isTicked(car, judged)}
                disabled={match.lot === null || !canBeTicked(judged)}
                onChange={(event) => onTick(line.id, event.currentTarget.checked)}
              />
            </td>
            <td>
              {line.label}
              <span class="small quiet block">
                {[line.date, line.number && `no. ${line.number}`, `row ${line.row}`].filter(Boolean).join(' · ')}
              </span>
              <LineChoices
                judged={judged}
                theirs={theirs}
                expected={folder?.expected?.lines ?? NONE}
                onTurn={onTurn}
                onDay={onDay}
                onLink={onLink}
              />
            </td>
            <td class="number">{money}</td>
            <td class="number">
              {line.what === 'payment' ? '' : expected === null ? '–' : formatMoney(expected.cents)}
            </td>
            <td class="why">
              {words !== null && match.lot !== null && <span class="tag act">{words}</span>} {why}
            </td>
          </tr>
        );
      })}
    </tbody>
  );
}

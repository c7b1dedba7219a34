import { useState } from 'preact/hooks';
import type { FolderStage, PurchaseFolder } from '../../src/domain/books/folder/folder.ts';
import { type Month, monthInWords, monthOf } from '../../src/domain/books/month.ts';
import { type Cents, cents } from '../../src/domain/money/cents.ts';
import { formatMoney } from '../../src/domain/money/format-money.ts';
import { plainWords } from '../../src/domain/text/plain-words.ts';
import { ChoiceInput } from '../../src/ui/inputs/choice-input.tsx';
import { type SortColumn, SortTable } from '../../src/ui/tables/sort-table.tsx';
import { folderName } from '../../src/views/books/folder-name.ts';
import { countWords } from '../../src/views/words/count-words.ts';
import { dateInWords } from '../../src/views/words/date-words.ts';
import { decoded } from './decoded.ts';
import { SearchBox } from './search-box.tsx';
import { useBooks } from './use-books.ts';

/** A quarter's worth of a busy store; older ones are found by month, by words, or all at once. */
const MOST_ROWS = 200;

const WANTED = [
  { value: 'look', label: 'An amount differs' },
  { value: 'owed', label: 'Something is owed' },
  { value: 'missing', label: 'Something is missing' },
  { value: 'in-stock', label: 'In stock' },
  { value: 'sold', label: 'Sold' },
  { value: 'undone', label: 'Canceled' },
] as const;

export const STAGE_WORDS: Readonly<Record<FolderStage, string>> = {
  'in-stock': 'In stock',
  sold: 'Sold',
  undone: 'Canceled',
  'not-won': 'Not won',
};

/** Every purchase folder, to be narrowed down to those that want something. @param wanted words to look for at first */
export function FolderList({ wanted: sought = '' }: { wanted?: string }) {
  const { folders } = useBooks();
  const [month, setMonth] = useState<string>();
  const [wanted, setWanted] = useState<string>();
  const [words, setWords] = useState(decoded(sought));
  const months = [...new Set(folders.flatMap(({ won }) => (won === null ? [] : monthOf(won.date))))];
  const shown = folders.filter(
    (folder) =>
      (month === undefined || (folder.won !== null && monthOf(folder.won.date) === month)) &&
      (wanted === undefined || wants(folder, wanted)) &&
      (words === '' || plainWords(textOf(folder)).includes(plainWords(words))),
  );
  return (
    <>
      <header class="stack">
        <h1>Purchase folders</h1>
        <p class="quiet">
          {countWords(folders.length, 'car', 'cars')} won. Expected is the worksheet at the time of the win. Actual is
          what was recorded.
        </p>
      </header>
      <div class="fields no-print">
        <SearchBox label="Search cars, vendors, bill and check numbers" value={words} onChange={setWords} />
        <ChoiceInput
          label="Won in"
          value={month}
          none="any month"
          choices={months.map((each) => ({ value: each, label: monthInWords(each as Month) }))}
          onCommit={setMonth}
        />
        <ChoiceInput label="Show" value={wanted} none="all" choices={WANTED} onCommit={setWanted} />
      </div>
      <SortTable
        label="Purchase folders"
        columns={COLUMNS}
        rows={shown}
        rowKey={({ lot }) => lot}
        first="-won"
        most={MOST_ROWS}
        totalLabel={countWords(shown.length, 'folder', 'folders')}
        empty={
          folders.length === 0
            ? 'No cars won yet. When you mark a lot as won, its folder opens here.'
            : 'No folder matches.'
        }
      />
    </>
  );
}

/** The car, who billed it, and the numbers of its bills, checks and transfers. */
const textOf = ({ facts, costs, payments, floor }: PurchaseFolder) =>
  [
    ...[folderName(facts), facts.vin, facts.venueName, facts.seller],
    ...[...costs, ...payments].flatMap(({ payee, document }) => [payee, document?.number]),
    ...floor.map(({ document }) => document?.number),
  ]
    .filter(Boolean)
    .join(' ');

function wants(folder: PurchaseFolder, wanted: string): boolean {
  if (wanted === 'look') return folder.look;
  if (wanted === 'owed') return folder.open !== 0;
  if (wanted === 'missing') return folder.missing.length > 0;
  return folder.stage === wanted;
}

const sum = (rows: readonly PurchaseFolder[], of: (folder: PurchaseFolder) => Cents | null): Cents =>
  cents(rows.reduce((total, row) => total + (of(row) ?? 0), 0));
const money = (amount: Cents | null) => (amount === null ? '–' : formatMoney(amount));

const COLUMNS: readonly SortColumn<PurchaseFolder>[] = [
  {
    key: 'car',
    label: 'Car',
    by: ({ facts }) => folderName(facts),
    cell: ({ lot, facts }) => <a href={`#/books/${lot}`}>{folderName(facts)}</a>,
  },
  {
    key: 'won',
    label: 'Won',
    by: ({ won }) => won?.date ?? null,
    cell: ({ won, facts }) => (
      <>
        <span class="day">{won === null ? '–' : dateInWords(won.date)}</span>
        <span class="quiet small block">{facts.venueName ?? ''}</span>
      </>
    ),
  },
  {
    key: 'stands',
    label: 'Status',
    by: ({ stage }) => STAGE_WORDS[stage],
    cell: (folder) => (
      <>
        {STAGE_WORDS[folder.stage]} {folder.look && <span class="tag act">amount differs</span>}
      </>
    ),
  },
  {
    key: 'expected',
    label: 'Expected cost',
    number: true,
    by: ({ expectedCents }) => expectedCents,
    cell: ({ expectedCents }) => money(expectedCents),
    total: (rows) => money(sum(rows, ({ expectedCents }) => expectedCents)),
  },
  {
    key: 'actual',
    label: 'Recorded',
    number: true,
    by: ({ actualCents }) => actualCents,
    cell: ({ actualCents }) => money(actualCents),
    total: (rows) => money(sum(rows, ({ actualCents }) => actualCents)),
  },
  {
    key: 'owed',
    label: 'Still owed',
    number: true,
    by: ({ open }) => open,
    cell: ({ open, notBilled = 0 }) => (
      <>
        {money(open)}
        {notBilled > 0 && open > 0 && <span class="quiet small block">not billed yet</span>}
      </>
    ),
    total: (rows) => money(sum(rows, ({ open }) => open)),
  },
  {
    key: 'floor',
    label: 'On floor plan',
    number: true,
    by: ({ floorOwed }) => floorOwed,
    cell: ({ floorOwed }) => money(floorOwed),
    total: (rows) => money(sum(rows, ({ floorOwed }) => floorOwed)),
  },
  {
    key: 'gross',
    label: 'Gross',
    number: true,
    by: ({ gross }) => gross,
    cell: ({ gross }) => money(gross),
    total: (rows) => money(sum(rows, ({ gross }) => gross)),
  },
  {
    key: 'missing',
    label: 'Missing',
    by: ({ missing }) => missing.length,
    cell: ({ missing }) => <span class="small folder-missing">{missing.join(', ')}</span>,
  },
];

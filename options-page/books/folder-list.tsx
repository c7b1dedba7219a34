import { useEffect, useState } from 'preact/hooks';
import type { PurchaseFolder } from '../../src/domain/books/folder/folder.ts';
import { type Month, monthInWords, monthOf } from '../../src/domain/books/month.ts';
import { type Cents, cents } from '../../src/domain/money/cents.ts';
import { plainWords } from '../../src/domain/text/plain-words.ts';
import { ChoiceInput } from '../../src/ui/inputs/choice-input.tsx';
import { type SortColumn, SortTable } from '../../src/ui/tables/sort-table.tsx';
import { folderName } from '../../src/views/books/folder-name.ts';
import { type FolderWords, folderWords, moneyOrDash } from '../../src/views/books/folder-words.ts';
import { markBooksAddedUp } from '../../src/views/books/folders-shown.ts';
import { countWords } from '../../src/views/words/count-words.ts';
import { decoded } from './decoded.ts';
import { FOLDER_CELLS, type FolderCells, type FolderColumn, STAGE_WORDS } from './folder-cells.tsx';
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

/** Every purchase folder, to be narrowed down to those that want something. @param wanted words to look for at first */
export function FolderList({ wanted: sought = '' }: { wanted?: string }) {
  const { folders } = useBooks();
  const [month, setMonth] = useState<string>();
  const [wanted, setWanted] = useState<string>();
  const [words, setWords] = useState(decoded(sought));
  useEffect(markBooksAddedUp, []);
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

/** What each column is sorted by, and whether what it says is added up below. */
const BY: Readonly<Record<FolderColumn, (folder: PurchaseFolder) => string | Cents | number | null>> = {
  car: ({ facts }) => folderName(facts),
  won: ({ won }) => won?.date ?? null,
  stands: ({ stage }) => STAGE_WORDS[stage],
  expected: ({ expectedCents }) => expectedCents,
  actual: ({ actualCents }) => actualCents,
  owed: ({ open }) => open,
  floor: ({ floorOwed }) => floorOwed,
  gross: ({ gross }) => gross,
  missing: ({ missing }) => missing.length,
};
const TOTALS: Partial<Record<FolderColumn, (folder: PurchaseFolder) => Cents | null>> = {
  expected: ({ expectedCents }) => expectedCents,
  actual: ({ actualCents }) => actualCents,
  owed: ({ open }) => open,
  floor: ({ floorOwed }) => floorOwed,
  gross: ({ gross }) => gross,
};

/** Every column asks for the same words. */
const known = new WeakMap<PurchaseFolder, FolderWords>();
function wordsOf(folder: PurchaseFolder): FolderWords {
  const words = known.get(folder) ?? folderWords(folder);
  known.set(folder, words);
  return words;
}

const COLUMNS = (Object.keys(FOLDER_CELLS) as FolderColumn[]).map((key): SortColumn<PurchaseFolder> => {
  const { cell, ...column }: FolderCells = FOLDER_CELLS[key];
  const total = TOTALS[key];
  return {
    key,
    ...column,
    by: BY[key],
    cell: (folder) => cell(wordsOf(folder)),
    ...(total !== undefined && { total: (rows) => moneyOrDash(sum(rows, total)) }),
  };
});

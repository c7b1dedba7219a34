import { zoneColumn } from '../../../src/intake/books/books-columns.ts';
import { booksToCsv } from '../../../src/intake/books/books-to-csv.ts';
import { RESULT_COLUMNS } from '../../../src/intake/books/result-columns.ts';
import { saveFile } from '../../../src/ui/save-file.ts';
import { useWorkspace } from '../../../src/ui/workspace.ts';
import { resultOut } from '../../../src/views/books/result-out.ts';
import { useBooks } from '../use-books.ts';

interface ResultsOutProps {
  /** The first day that is shown; empty for all. */
  readonly from: string;
  /** The venue that is shown; undefined for all. */
  readonly venue: string | undefined;
}

/** The results that the review shows, as a file. */
export function ResultsOut({ from, venue }: ResultsOutProps) {
  const { setup } = useWorkspace();
  const { lots, folders, today } = useBooks();
  const { zone } = setup.store;
  const save = () => {
    const byLot = new Map(folders.map((folder) => [folder.lot, folder]));
    const rows = lots
      .flatMap((lot) => resultOut(lot, byLot.get(lot.id), zone) ?? [])
      .filter(({ day, facts }) => day >= from && (venue === undefined || (facts.venueName ?? NO_VENUE) === venue))
      .sort((a, b) => (a.day < b.day ? -1 : 1));
    const csv = booksToCsv([...RESULT_COLUMNS, zoneColumn(zone)], rows);
    saveFile(new Blob([csv], { type: 'text/csv;charset=utf-8' }), `headroom-results-${today}.csv`);
  };
  return (
    <button type="button" onClick={save}>
      Results, as CSV
    </button>
  );
}

const NO_VENUE = 'No venue named';

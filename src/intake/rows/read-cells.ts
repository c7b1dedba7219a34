import type { ColumnFieldId } from '../columns/column-fields.ts';
import { readCloseCells } from './read-close-cells.ts';
import { readReconCells, readRetailCells } from './read-estimate-cells.ts';
import {
  readCarCell,
  readFundingCell,
  readMilesCell,
  readMoneyCell,
  readPageCell,
  readTextCell,
  readVinCell,
  readYearCell,
} from './read-plain-cells.ts';
import type { RowContext } from './row-context.ts';
import type { Cell, RowDraft } from './row-draft.ts';

/** The cells of a row that state something, by what they hold. */
export type Cells = Partial<Record<ColumnFieldId, Cell>>;

/** Reads every cell but the notes and what the tool itself wrote for the other columns. */
export function readCells(cells: Cells, draft: RowDraft, context: RowContext): void {
  if (cells.vin) readVinCell(cells.vin, draft);
  if (cells.year) readYearCell(cells.year, draft, context);
  if (cells.make) readTextCell(cells.make, 'make', draft);
  if (cells.model) readTextCell(cells.model, 'model', draft);
  if (cells.trim) readTextCell(cells.trim, 'trim', draft);
  if (cells.car) readCarCell(cells.car, draft, context);
  if (cells.miles) readMilesCell(cells.miles, draft, context);
  else if (cells.kilometres) readMilesCell(cells.kilometres, draft, context);
  if (cells.lotNumber) readTextCell(cells.lotNumber, 'lotNumber', draft);
  if (cells.venue) readVenueCell(cells.venue, draft, context);
  if (cells.sale) readTextCell(cells.sale, 'sale', draft);
  if (cells.seller) readTextCell(cells.seller, 'seller', draft);
  if (cells.location) readTextCell(cells.location, 'location', draft);
  const venueZone = context.venues.find((venue) => venue.id === draft.facts.venueId)?.zone;
  readCloseCells(cells, venueZone, draft, context);
  if (cells.priceNow) readMoneyCell(cells.priceNow, 'priceNow', draft, context);
  if (cells.increment) readMoneyCell(cells.increment, 'increment', draft, context);
  readRetailCells({ low: cells.retailLow, likely: cells.retailLikely, high: cells.retailHigh }, draft, context);
  readReconCells({ low: cells.reconLow, likely: cells.reconLikely, high: cells.reconHigh }, draft, context);
  if (cells.title) readTitleCell(cells.title, draft, context);
  if (cells.transport) readMoneyCell(cells.transport, 'transport', draft, context);
  if (cells.proxy) readMoneyCell(cells.proxy, 'proxy', draft, context);
  if (cells.funding) readFundingCell(cells.funding, draft);
  if (cells.pageUrl) readPageCell(cells.pageUrl, draft);
}

function readVenueCell(cell: Cell, draft: RowDraft, context: RowContext): void {
  readTextCell(cell, 'venueName', draft);
  const venue = context.venueNamed(cell.text);
  if (venue.ok) draft.set('venueId', venue.value, cell, 'likely');
  else draft.question(cell, venue.message);
}

/** As long as a fact of a lot may be. */
const LONGEST_TITLE = 200;

function readTitleCell(cell: Cell, draft: RowDraft, context: RowContext): void {
  const title = context.titleNamed(cell.text);
  if (title.ok) {
    draft.set('titleId', title.value, cell, 'likely');
    return;
  }
  // A lot without a title is taken as clean. One whose title nobody understands must not be: it gets no max bid before
  // somebody has said what the words mean.
  draft.set('titleId', cell.text.slice(0, LONGEST_TITLE), cell, 'doubtful');
  draft.unsettled(cell, title.message);
}

import type { ComponentChildren } from 'preact';
import { carName } from '../../src/domain/lot/car-name.ts';
import type { LotFacts } from '../../src/domain/lot/lot.ts';
import type { Instant } from '../../src/domain/time/instant.ts';
import { CloseLines } from '../../src/ui/close-lines.tsx';
import type { SortBy } from '../../src/views/lots/list-order.ts';
import type { RowWords } from '../../src/views/lots/row-words.ts';
import type { Standing } from '../../src/views/lots/standing.ts';
import { urgencyOf } from '../../src/views/lots/urgency.ts';
import type { TermId } from '../../src/views/words/glossary.ts';
import { CarCell } from './car-cell.tsx';
import { isEnded, TodoCell } from './todo-cell.tsx';

/** A column of the list: all that the screen, paper and the file need to know of it stands in its row of `COLUMNS`. */
export interface Column {
  /** Names its class too: `lot-price`. */
  readonly key: string;
  readonly label: string;
  /** What explains the figure. */
  readonly term?: TermId;
  /** Figures stand to the right. */
  readonly number?: true;
  /** Its track of the grid on a wide screen. */
  readonly width: string;
  /** Money is looked at from the top, time and names from the start. */
  readonly largestFirst?: true;
  readonly by: SortBy;
  readonly cell: (row: RowWords, now: Instant) => ComponentChildren;
  readonly paper: (row: RowWords, now: Instant, facts: LotFacts) => ComponentChildren;
  /** In the file for a spreadsheet; null where the lot's own facts say it. */
  readonly file: FileColumn | null;
}

interface FileColumn {
  readonly heading: string;
  /** Words, or whole cents. */
  readonly of: (lot: FileLot) => string | number | null | undefined;
}

/** What is worked out of a lot for the file. */
export interface FileLot {
  readonly standing: Standing;
  /** The state of its bid, in words. */
  readonly bid: string;
}

/** In their order. The first rows of the page are drawn from them before any figure can be worked out. */
export const COLUMNS: readonly Column[] = [
  {
    key: 'close',
    label: 'Closes (store time)',
    width: '10.5rem',
    by: () => (lot) => lot.facts.close?.instant ?? null,
    cell: (row, now) => <CloseLines look={row.close} now={now} />,
    paper: ({ close }) => close?.when ?? 'no close',
    file: null,
  },
  {
    key: 'car',
    label: 'Car',
    width: 'minmax(9rem, 1fr)',
    by: () => (lot) => carName(lot.facts).toLowerCase() || null,
    cell: (row) => <CarCell row={row} />,
    paper: ({ title, sub }, _, { vin }) => (
      <>
        <span class="strong">{title}</span>
        <span class="small quiet lot-sub">{vin === undefined ? sub : `${sub.replace(VIN_END, '')} · ${vin}`}</span>
      </>
    ),
    file: null,
  },
  {
    key: 'price',
    label: 'Price now',
    term: 'price-now',
    number: true,
    width: '5.5rem',
    largestFirst: true,
    by: () => (lot) => lot.facts.priceNow ?? null,
    cell: ({ price }) => (
      <>
        <span class="lot-label">now </span>
        {price ?? <span class="missing">no price</span>}
      </>
    ),
    paper: ({ price }) => price,
    file: null,
  },
  {
    key: 'max-bid',
    label: 'Max bid',
    term: 'max-bid',
    number: true,
    width: '7rem',
    largestFirst: true,
    by:
      ({ of }) =>
      (lot) =>
        of(lot).maxBid,
    cell: ({ maxBid, planned }) => (
      <>
        <span class={MAX_BID_CLASS[maxBid.as]}>{maxBid.words}</span>
        {planned && <span class="small lot-planned">plan: {planned}</span>}
      </>
    ),
    paper: ({ maxBid, planned }) => (
      <>
        <span class="strong">{maxBid.words}</span>
        {planned && <span class="small lot-sub">plan: {planned}</span>}
      </>
    ),
    file: { heading: 'Max bid', of: ({ standing }) => standing.maxBid },
  },
  {
    key: 'headroom',
    label: 'Headroom',
    term: 'headroom',
    number: true,
    width: '6.5rem',
    largestFirst: true,
    by:
      ({ of }) =>
      (lot) =>
        of(lot).headroom,
    cell: ({ headroom }) =>
      headroom && (
        <>
          {!headroom.past && <span class="lot-label">room </span>}
          {headroom.words}
          {headroom.past && <span class="small"> over max</span>}
        </>
      ),
    paper: ({ headroom }) => headroom && `${headroom.words}${headroom.past ? ' over max' : ''}`,
    file: { heading: 'Headroom', of: ({ standing }) => standing.headroom },
  },
  {
    key: 'todo',
    label: 'To do',
    width: 'minmax(10rem, 22rem)',
    by:
      ({ bids, now }) =>
      (lot) =>
        urgencyOf(bids.at(lot, now)),
    cell: (row, now) => <TodoCell row={row} now={now} />,
    paper: (row, now) => (isEnded(row, now) ? row.ended.words : [row.todo.words, ...beside(row)].join('; ')),
    file: { heading: 'Bid state', of: ({ bid }) => bid },
  },
];

const MAX_BID_CLASS = { figure: 'lot-figure', strong: 'strong', missing: 'missing' } as const;

/** The end of the VIN, which paper shows whole. */
const VIN_END = / · …\S+$/;

/** On paper nobody can press, so what was bid stands beside what there is to do. */
const beside = ({ todo, bid }: RowWords): readonly string[] => (bid === '' || bid === todo.words ? [] : [bid]);

/** The planned bid stands under the max bid, so it has an order and a column of the file, and none of the screen. */
export const PLANNED: Pick<Column, 'key' | 'label' | 'by' | 'largestFirst'> & { readonly file: FileColumn } = {
  key: 'planned',
  label: 'Planned bid',
  largestFirst: true,
  by:
    ({ of }) =>
    (lot) =>
      of(lot).planned ?? null,
  file: { heading: 'Planned bid', of: ({ standing }) => (standing.planned === null ? 'leave out' : standing.planned) },
};

export const columnOf = (key: string): Pick<Column, 'key' | 'label' | 'by' | 'largestFirst'> | undefined =>
  key === PLANNED.key ? PLANNED : COLUMNS.find((column) => column.key === key);

/** The tracks of the grid, the first for what is chosen. A page's own style sheet can't know them. */
export function setTracks(): void {
  const tracks = ['1.5rem', ...COLUMNS.map(({ width }) => width)].join(' ');
  document.documentElement.style.setProperty('--lot-tracks', tracks);
}

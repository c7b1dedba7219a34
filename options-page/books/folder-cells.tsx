import type { ComponentChildren } from 'preact';
import type { FolderStage } from '../../src/domain/books/folder/folder.ts';
import type { FolderWords } from '../../src/views/books/folder-words.ts';

export const STAGE_WORDS: Readonly<Record<FolderStage, string>> = {
  'in-stock': 'In stock',
  sold: 'Sold',
  undone: 'Canceled',
  'not-won': 'Not won',
};

/** A column of the list of folders, as far as it is drawn from words. */
export interface FolderCells {
  readonly label: string;
  readonly number?: true;
  readonly cell: (words: FolderWords) => ComponentChildren;
}

/** The columns of the list of folders, from left to right. */
export const FOLDER_CELLS = {
  car: { label: 'Car', cell: ({ lot, name }) => <a href={`#/books/${lot}`}>{name}</a> },
  won: {
    label: 'Won',
    cell: ({ won, venue }) => (
      <>
        <span class="day">{won}</span>
        <span class="quiet small block">{venue}</span>
      </>
    ),
  },
  stands: {
    label: 'Status',
    cell: ({ stage, look }) => (
      <>
        {STAGE_WORDS[stage]} {look && <span class="tag act">amount differs</span>}
      </>
    ),
  },
  expected: { label: 'Expected cost', number: true, cell: ({ expected }) => expected },
  actual: { label: 'Recorded', number: true, cell: ({ actual }) => actual },
  owed: {
    label: 'Still owed',
    number: true,
    cell: ({ owed, notBilled }) => (
      <>
        {owed}
        {notBilled && <span class="quiet small block">not billed yet</span>}
      </>
    ),
  },
  floor: { label: 'On floor plan', number: true, cell: ({ floor }) => floor },
  gross: { label: 'Gross', number: true, cell: ({ gross }) => gross },
  missing: { label: 'Missing', cell: ({ missing }) => <span class="small folder-missing">{missing}</span> },
} as const satisfies Record<string, FolderCells>;

export type FolderColumn = keyof typeof FOLDER_CELLS;

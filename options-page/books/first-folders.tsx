import type { FolderWords } from '../../src/views/books/folder-words.ts';
import { FOLDER_CELLS, type FolderCells, type FolderColumn } from './folder-cells.tsx';
import './first-folders.css';

/** The parts of the books that can be shown before the books are added up. */
export const SHOWS_FOLDERS: ReadonlySet<string> = new Set(['', 'share']);

interface FirstFoldersProps {
  readonly part: string;
  /** The latest wins, as they were put into words. */
  readonly rows: readonly FolderWords[];
}

/** What stands of the books while they are added up: the latest folders, or the latest cars to split a bill between. */
export function FirstFolders({ part, rows }: FirstFoldersProps) {
  return part === 'share' ? (
    <>
      <header class="stack">
        <h1>One bill for several cars</h1>
        <p class="prose" role="status">
          Adding up the books… The shares add up to the bill to the cent. Each share is rounded down, and leftover cents
          go to the largest remainders.
        </p>
      </header>
      <div class="share-form-room no-print" />
      <div class="scroll-x">
        <table class="ledger">
          <ShareHead />
          <tbody class="first-folders">
            {rows.filter(isBought).map((words) => (
              <FirstShare key={words.lot} words={words} />
            ))}
          </tbody>
        </table>
      </div>
    </>
  ) : (
    <>
      <header class="stack">
        <h1>Purchase folders</h1>
        <p class="quiet" role="status">
          Adding up the books… Expected is the worksheet at the time of the win. Actual is what was recorded.
        </p>
      </header>
      <div class="folder-tools-room no-print" />
      <div class="scroll-x">
        <table class="ledger sort-table">
          <thead>
            <tr>
              {(Object.keys(FOLDER_CELLS) as FolderColumn[]).map((key) => (
                <FirstHead key={key} {...FOLDER_CELLS[key]} sorted={key === 'won'} />
              ))}
            </tr>
          </thead>
          <tbody class="first-folders">
            {rows.map((words) => (
              <FirstFolder key={words.lot} words={words} />
            ))}
          </tbody>
        </table>
      </div>
    </>
  );
}

function FirstHead({ label, number, sorted }: Pick<FolderCells, 'label' | 'number'> & { readonly sorted: boolean }) {
  return (
    <th scope="col" class={number && 'number'} aria-sort={sorted ? 'descending' : undefined}>
      <span class="sort-head">
        {label}
        {sorted && <span aria-hidden="true"> ↓</span>}
      </span>
    </th>
  );
}

/** One folder of the list, as its table draws it. */
export function FirstFolder({ words }: { readonly words: FolderWords }) {
  return (
    <tr>
      {Object.entries<FolderCells>(FOLDER_CELLS).map(([key, { number, cell }]) =>
        key === 'car' ? (
          <th key={key} scope="row" class="row-head">
            {cell(words)}
          </th>
        ) : (
          <td key={key} class={number && 'number'}>
            {cell(words)}
          </td>
        ),
      )}
    </tr>
  );
}

/** The heads of the cars that a bill is split between. */
export function ShareHead({ weights = false }: { readonly weights?: boolean }) {
  return (
    <thead>
      <tr>
        <th scope="col">Car</th>
        {weights && <th scope="col">Weight</th>}
        <th scope="col" class="number">
          Hammer
        </th>
        <th scope="col" class="number">
          Share
        </th>
      </tr>
    </thead>
  );
}

/** Whether a bill can be for it. */
export const isBought = ({ stage }: Pick<FolderWords, 'stage'>): boolean => stage === 'in-stock' || stage === 'sold';

/** One car that a bill may be for, before it can be chosen. */
export function FirstShare({ words: { name, hammer } }: { readonly words: FolderWords }) {
  return (
    <tr>
      <td>
        <span class="row">
          <input type="checkbox" disabled aria-label={name} />
          <span>{name}</span>
        </span>
      </td>
      <td class="number">{hammer}</td>
      <td class="number">–</td>
    </tr>
  );
}

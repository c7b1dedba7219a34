import type { ComponentChildren } from 'preact';
import type { BookMove } from '../../../src/domain/books/bank/book-move.ts';
import type { LotId } from '../../../src/domain/lot/lot.ts';
import { folderName } from '../../../src/views/books/folder-name.ts';
import { countWords } from '../../../src/views/words/count-words.ts';
import { dateInWords } from '../../../src/views/words/date-words.ts';
import { useBooks } from '../use-books.ts';
import { MOVE_WORDS } from './bank-words.ts';

interface MoveCellProps {
  readonly move: BookMove;
  readonly cars: readonly LotId[];
  readonly children?: ComponentChildren;
}

/** A recorded move: what it was, to whom, when, and for which car. */
export function MoveCell({ move, cars, children }: MoveCellProps) {
  const { folders } = useBooks();
  const [first] = cars;
  const folder = cars.length === 1 ? folders.find(({ lot }) => lot === first) : undefined;
  const { what, payee, number, date } = move;
  return (
    <span class="block">
      {MOVE_WORDS[what]}
      {payee !== undefined && `, ${payee}`}
      {number !== undefined && `, no. ${number}`} <span class="quiet small">{dateInWords(date)}</span>
      <span class="small block">
        {folder === undefined ? (
          countWords(cars.length, 'car', 'cars')
        ) : (
          <a href={`#/books/${folder.lot}`}>{folderName(folder.facts)}</a>
        )}
      </span>
      {children}
    </span>
  );
}

import type { TargetedKeyboardEvent } from 'preact';

/**
 * Enter, Arrow Down and Arrow Up go to the same column of the next or the last row, as in a spreadsheet. What was typed
 * is kept on the way, because a box is read when it is left.
 */
export function moveBetweenRows(event: TargetedKeyboardEvent<HTMLTableElement>): void {
  const step = { Enter: 1, ArrowDown: 1, ArrowUp: -1 }[event.key];
  const { target, currentTarget: table } = event;
  if (step === undefined || !(target instanceof HTMLInputElement) || target.type !== 'text') return;
  const cell = target.closest('td');
  const row = cell?.closest('tr');
  if (!cell || !row) return;
  event.preventDefault();
  const rows = [...table.querySelectorAll('tr')].filter((each) => each.querySelector('input') !== null);
  const place = [...row.children].indexOf(cell);
  const next = rows[rows.indexOf(row) + step]?.children[place]?.querySelector('input');
  // After the box has been read and drawn again, so that it is not read a second time with its old value.
  if (next) {
    setTimeout(() => {
      next.focus();
      next.select();
    });
  }
}

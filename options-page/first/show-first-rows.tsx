import type { Instant } from '../../src/domain/time/instant.ts';
import { markLotsShown } from '../../src/views/lots/lots-shown.ts';
import type { RowWords } from '../../src/views/lots/row-words.ts';
import { setTracks } from '../lots/columns.tsx';
import { LotRow } from '../lots/lot-row.tsx';
import { NARROW, rowHeight } from '../lots/lot-table-frame.tsx';
import { drawOnce } from './draw-once.ts';
import '../shell/frame.css';
import '../lots/lot-table.css';

/** What stands above the rows is at least this high, in CSS pixels; every row too many would only take time. */
const ABOVE_LIST = 200;
/** A tab that nobody looks at draws no frame to wait for. */
const PATIENCE_MS = 250;

/**
 * Draws the rows of the lots that are still open into the list's frame, as the list will draw them, and waits until they
 * have been drawn. Does nothing when there are none.
 */
export async function showFirstRows(rows: readonly RowWords[], page: HTMLElement): Promise<void> {
  const now = Date.now() as Instant;
  const open = rows.filter(({ close }) => close !== undefined && close.instant > now);
  const narrow = matchMedia(NARROW).matches;
  const markup = document.getElementById(narrow ? 'first-narrow' : 'first-wide');
  if (open.length === 0 || !(markup instanceof HTMLTemplateElement)) return;
  const frame = document.importNode(markup.content, true);
  const list = frame.querySelector<HTMLElement>('.lot-all');
  if (list === null) return;
  const height = rowHeight(narrow);
  const inSight = open.slice(0, Math.ceil((innerHeight - ABOVE_LIST) / height));
  setTracks();
  frame.querySelector('.lot-table')?.setAttribute('aria-rowcount', String(open.length + 1));
  list.style.height = `${open.length * height}px`;
  list.append(
    ...drawOnce(
      inSight.map((row, index) => (
        <LotRow key={row.id} row={row} index={index} top={index * height} height={height} now={now} />
      )),
    ),
  );
  await standIn(frame, page, markLotsShown);
}

/** Puts what was drawn into the page, lets the browser paint it, and waits until it has. */
export async function standIn(drawn: DocumentFragment, page: HTMLElement, note: () => void): Promise<void> {
  // In an element of its own, which the program that comes later takes away as a whole.
  const place = document.createElement('div');
  place.id = 'first-rows';
  place.append(drawn);
  page.replaceChildren(place);
  startPainting();
  note();
  await Promise.race([
    new Promise((resolve) => requestAnimationFrame(() => setTimeout(resolve))),
    new Promise((resolve) => setTimeout(resolve, PATIENCE_MS)),
  ]);
}

/**
 * Has the browser draw nothing yet. What it would draw meanwhile, a sentence, takes the very time in which the first rows
 * are fetched, and holds them up.
 */
export function holdPainting(): void {
  document.documentElement.classList.add('held');
}

export function startPainting(): void {
  document.documentElement.classList.remove('held');
}

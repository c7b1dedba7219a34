import type { RowWords } from '../../src/views/lots/row-words.ts';

/** The name, which opens the worksheet, and what else tells the lot from others. */
export function CarCell({ row }: { row: RowWords }) {
  return (
    <>
      <a href={`#/lot/${row.id}`} class="lot-name">
        {row.title}
      </a>
      <span class="quiet small lot-sub">{row.sub}</span>
    </>
  );
}

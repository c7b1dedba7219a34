/** Prints how well the page reader reads a folder of stored pages, field by field. */
import { type Judged, judgePage } from './score-lots.ts';
import { scoreTable, surenessTable } from './score-table.ts';
import { expectedPage, PAGES, pageNames, readStoredPage } from './stored-page.ts';

/** @param flags the folder, where it is another; `--list` names each value that is not right */
export async function sayReaderScores(flags: readonly string[]): Promise<void> {
  const folder = flags.find((flag) => !flag.startsWith('-')) ?? PAGES;
  const all: Judged[] = [];
  for (const name of pageNames(folder)) {
    const expected = expectedPage(folder, name);
    if (expected === null) throw new Error(`${name} has no expectation`);
    const judged = judgePage(expected.lots, await readStoredPage(folder, name, expected));
    all.push(...judged);
    if (flags.includes('--list')) sayWhatIsNotRight(name, judged);
  }
  console.log(`${scoreTable(all)}\n\n${surenessTable(all)}`);
}

function sayWhatIsNotRight(name: string, judged: readonly Judged[]): void {
  for (const { field, verdict, sure, expected, read } of judged) {
    if (verdict === 'right') continue;
    console.log(`${name}  ${field}  ${verdict} ${sure ?? ''}  ${String(expected)} <- ${String(read)}`);
  }
}

import { type Judged, judgePage } from '../reader/score-lots.ts';
import { scoreTable, surenessTable } from '../reader/score-table.ts';
import { expectedPage, PAGES, pageNames, readStoredPage } from '../reader/stored-page.ts';

/** `npm run scores`: how well the page reader reads the invented pages, field by field, as DEVELOPERS.md keeps it. */
export async function run(flags: readonly string[] = []): Promise<number> {
  const folder = flags.find((flag) => !flag.startsWith('-') && flag !== 'reader') ?? PAGES;
  const list = flags.includes('--list');
  const all: Judged[] = [];
  for (const name of pageNames(folder)) {
    const expected = expectedPage(folder, name);
    if (expected === null) throw new Error(`${name} has no expectation`);
    const judged = judgePage(expected.lots, await readStoredPage(folder, name, expected));
    all.push(...judged);
    if (list) sayWhatIsNotRight(name, judged);
  }
  console.log(`${scoreTable(all)}\n\n${surenessTable(all)}`);
  return 0;
}

function sayWhatIsNotRight(name: string, judged: readonly Judged[]): void {
  for (const { field, verdict, sure, expected, read } of judged) {
    if (verdict !== 'right')
      console.log(`${name}  ${field}  ${verdict} ${sure ?? ''}  ${String(expected)} <- ${String(read)}`);
  }
}

/** Prints how well the page reader reads stored pages and those of the laboratory, field by field. */
import { HELD_OUT, judgeFamilies, LEARNED } from './laboratory/laboratory.ts';
import { type Judged, judgePage } from './score-lots.ts';
import { scoreTable, surenessTable } from './score-table.ts';
import { expectedPage, PAGES, pageNames, readStoredPage } from './stored-page.ts';

/** How many pages of each part of the families, where `--pages=N` does not say. */
const PAGES_OF_EACH = 300;

/**
 * @param flags the folder of stored pages, where it is another (then nothing else is judged); `--list` names each value that
 * is not right, but for the families that are held out: whoever looked at those could make rules for them
 */
export async function sayReaderScores(flags: readonly string[]): Promise<void> {
  const folder = flags.find((flag) => !flag.startsWith('-'));
  const list = flags.includes('--list');
  const stored = await judgeFolder(folder ?? PAGES, list);
  if (folder !== undefined) return say('', stored);
  const said = flags.find((flag) => flag.startsWith('--pages='));
  const count = said === undefined ? PAGES_OF_EACH : Number(said.slice('--pages='.length));
  const learned = await judgeFamilies(LEARNED, count, (page, judged) => {
    if (list) sayWhatIsNotRight(page.name, judged);
  });
  const heldOut = await judgeFamilies(HELD_OUT, count);
  say('Stored pages:\n', stored);
  say(`\nLearned families, ${count} pages:\n`, learned);
  say(`\nFamilies that are held out, ${count} pages:\n`, heldOut);
}

function say(heading: string, judged: readonly Judged[]): void {
  console.log(`${heading}${heading === '' ? '' : '\n'}${scoreTable(judged)}\n\n${surenessTable(judged)}`);
}

async function judgeFolder(folder: string, list: boolean): Promise<readonly Judged[]> {
  const all: Judged[] = [];
  for (const name of pageNames(folder)) {
    const expected = expectedPage(folder, name);
    if (expected === null) throw new Error(`${name} has no expectation`);
    const judged = judgePage(expected.lots, await readStoredPage(folder, name, expected));
    all.push(...judged);
    if (list) sayWhatIsNotRight(name, judged);
  }
  return all;
}

function sayWhatIsNotRight(name: string, judged: readonly Judged[]): void {
  for (const { field, verdict, sure, expected, read } of judged) {
    if (verdict === 'right') continue;
    console.log(`${name}  ${field}  ${verdict} ${sure ?? ''}  ${String(expected)} <- ${String(read)}`);
  }
}

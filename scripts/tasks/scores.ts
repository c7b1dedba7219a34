import { PAGES, scorePages, scoreTable } from '../reader-scores.ts';

/** `npm run scores`: how well the page reader reads the invented pages, field by field, as DEVELOPERS.md keeps it. */
export async function run(): Promise<number> {
  console.log(scoreTable(await scorePages(PAGES)));
  return 0;
}

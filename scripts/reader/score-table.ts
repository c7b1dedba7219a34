/** The scores of many pages as tables in Markdown. */
import type { Sure } from '../../src/capture/draft/draft-lot.ts';
import type { Judged, Verdict } from './score-lots.ts';

type Counts = Record<Verdict, number>;

/** Fields that decide what a lot is, what it costs now and when it closes. */
const FIRST: readonly string[] = ['vin', 'year', 'make', 'model', 'miles', 'priceNow', 'close', 'lotNumber'];

const none = (): Counts => ({ right: 0, wrong: 0, missed: 0, open: 0, tempted: 0 });

function add(to: Counts, one: Judged): void {
  to[one.verdict]++;
}

/**
 * One line a field and one for each group. `found` is what was read rightly of what there was to read; `not right` is what
 * was wrong or not there to read, of all that was said.
 */
export function scoreTable(judged: readonly Judged[]): string {
  const byField = new Map<string, Counts>();
  const [first, rest, all] = [none(), none(), none()];
  for (const one of judged) {
    const counts = byField.get(one.field) ?? none();
    byField.set(one.field, counts);
    for (const to of [counts, all, FIRST.includes(one.field) ? first : rest]) add(to, one);
  }
  const rank = (field: string) => (FIRST.includes(field) ? FIRST.indexOf(field) : FIRST.length);
  const rows = [...byField].sort(([a], [b]) => rank(a) - rank(b) || a.localeCompare(b));
  return [
    '| field | right | wrong | missed | left open | tempted | found | not right |',
    '| --- | ---: | ---: | ---: | ---: | ---: | ---: | ---: |',
    ...rows.filter(([field]) => FIRST.includes(field)).map(line),
    line(['**these eight**', first]),
    ...rows.filter(([field]) => !FIRST.includes(field)).map(line),
    line(['**the rest**', rest]),
    line(['**all**', all]),
  ].join('\n');
}

function line([field, { right, wrong, missed, open, tempted }]: readonly [string, Counts]): string {
  const there = right + wrong + missed + open;
  const said = right + wrong + tempted;
  return `| ${field} | ${right} | ${wrong} | ${missed} | ${open} | ${tempted} | ${percent(right, there)} | ${percent(wrong + tempted, said)} |`;
}

/** How often each degree of sureness was right. */
export function surenessTable(judged: readonly Judged[]): string {
  const rows = (['certain', 'likely', 'doubtful'] as const).map((sure: Sure) => {
    const said = judged.filter((one) => one.sure === sure);
    const wrong = said.filter((one) => one.verdict !== 'right').length;
    return `| ${sure} | ${said.length} | ${wrong} | ${percent(wrong, said.length)} |`;
  });
  return ['| said as | times | not right | share |', '| --- | ---: | ---: | ---: |', ...rows].join('\n');
}

const percent = (part: number, whole: number): string =>
  whole === 0 ? '–' : `${Math.round((1000 * part) / whole) / 10}%`;

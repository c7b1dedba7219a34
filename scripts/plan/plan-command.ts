import { marketOf } from '../../src/domain/market/market.ts';
import { planOf } from '../../src/domain/plan/plan-of.ts';
import type { Purse } from '../../src/domain/plan/purse.ts';
import type { Setup } from '../../src/domain/setup/setup.ts';
import { mondayOf, startOfDay } from '../../src/domain/time/calendar-day.ts';
import { dateIn } from '../../src/domain/time/wall-clock.ts';
import { pricingContext } from '../../src/domain/worksheet/pricing-context.ts';
import { decodeText } from '../../src/intake/csv/decode-text.ts';
import { type LotAnswer, lotAnswer } from '../worksheet/lot-answer.ts';
import { type LotRow, readRows } from '../worksheet/read-rows.ts';
import { readSetup, type Surroundings } from '../worksheet/worksheet-command.ts';
import { readPlanCommand } from './command-line.ts';
import { HELP } from './help.ts';
import { planTable } from './plan-table.ts';
import { planLotOf, plannedLot } from './planned-lot.ts';
import { type PurseFile, readPurse } from './read-purse.ts';

/**
 * The command-line plan: a table of lots, a setup and a purse in, planned bids out.
 * @returns the exit code: 1 when the command, the setup, the purse or the table can't be used, else 0
 */
export async function planCommand(flags: readonly string[], around: Surroundings): Promise<number> {
  const command = readPlanCommand(flags, around.environment);
  if (!command.ok) return refused(around, command.message);
  if (command.value === 'help') {
    around.out(HELP);
    return 0;
  }
  const { lots, setup: setupPath, purse: pursePath, json } = command.value;
  const setup = readSetup(setupPath, around);
  if (setup === undefined) return 1;
  const { zone } = setup.store;
  const { now } = around;
  const weekendFrom = startOfDay(mondayOf(dateIn(zone, now)), zone);
  const file = purseAt(pursePath, around, (text) => readPurse(text, zone, weekendFrom));
  if (file === undefined) return 1;
  const { purse, choices, closings, groupOf } = file;
  for (const sentence of file.readAs) around.warn(sentence);
  if (purse.until !== undefined && purse.until <= now)
    return refused(around, 'The purse’s last day is over. Set “until” to a later day, or leave it out.');
  const bytes = around.read(lots);
  if (!bytes.ok) return refused(around, bytes.message);
  const table = await readRows(bytes.value, setup, now);
  if (!table.ok) return refused(around, `${lots === '-' ? 'The table' : lots}: ${table.message}`);
  const { rows, unused, dayFirst } = table.value;
  if (rows.length === 0) return refused(around, 'There are no lots in the table. Add a row for each.');
  if (unused.length > 0) around.warn(`Columns left out: ${unused.join(', ')}.`);
  if (dayFirst) around.warn('Closes: every date is read with the day first, because some can’t be read otherwise.');
  const context = pricingContext(setup);
  const { kept, again } = withoutRepeats(rows);
  for (const sentence of again) around.warn(sentence);
  const answers = new Map(kept.map((row) => [String(row.row), { row, answer: lotAnswer(row, context, now) }]));
  for (const { answer } of answers.values()) tell(answer, around);
  const known = new Set(kept.flatMap(({ facts }) => (facts.vin === undefined ? [] : [facts.vin])));
  for (const vin of choices.keys())
    if (!known.has(vin)) around.warn(`Purse, choices: there is no lot with the VIN ${vin}.`);
  const market = marketOf(closings, weekendFrom);
  const plan = planOf(
    kept.map((row) => planLotOf(row, { context, groupOf, choice: choices.get(row.facts.vin ?? '') })),
    purse,
    market,
    now,
  );
  for (const sentence of takenFor(kept, setup, purse)) around.warn(sentence);
  for (const { sentence } of plan.faults) around.warn(sentence);
  const planned = plan.rows.flatMap((row) => {
    const of = answers.get(row.lotId);
    return of === undefined ? [] : [plannedLot(row, of.row, of.answer)];
  });
  around.out(json ? `${JSON.stringify(planned, null, 2)}\n` : planTable(planned, plan));
  return 0;
}

function purseAt(
  path: string,
  around: Surroundings,
  read: (text: string) => ReturnType<typeof readPurse>,
): PurseFile | undefined {
  const bytes = around.read(path);
  const text = bytes.ok ? decodeText(bytes.value) : bytes;
  if (!text.ok) {
    around.warn(text.message);
    return undefined;
  }
  const file = read(text.value.text);
  if (file.ok) return file.value;
  around.warn(`The purse ${path === '-' ? 'on standard input' : path} can’t be used: ${file.message}`);
  return undefined;
}

/** One car is paid for once: of rows with the same VIN and close only the first takes part. */
function withoutRepeats(rows: readonly LotRow[]): {
  readonly kept: readonly LotRow[];
  readonly again: readonly string[];
} {
  const first = new Map<string, number>();
  const again: string[] = [];
  const kept = rows.filter(({ row, facts: { vin } }) => {
    const before = vin === undefined ? undefined : first.get(vin);
    if (before !== undefined)
      again.push(`Row ${row} has the VIN of row ${before}: one car, so only row ${before} is planned.`);
    else if (vin !== undefined) first.set(vin, row);
    return before === undefined;
  });
  return { kept, again };
}

/** What was taken for granted where the table or the setup does not say. */
function takenFor(rows: readonly LotRow[], setup: Setup, { line }: Purse): readonly string[] {
  const rowsWhere = (is: (row: LotRow) => boolean) => rows.filter(is).map(({ row }) => row);
  const untitled = rowsWhere(({ facts, faults }) => facts.titleId === undefined && !faults.some(isOfTitle));
  const byVenue = rowsWhere(({ facts }) => facts.close?.how === 'venue-zone');
  const byStore = rowsWhere(({ facts }) => facts.close?.how === 'store-zone');
  return [
    ...(untitled.length > 0
      ? [`No title in ${rowWords(untitled)}: priced at full retail, and planned from own cash only. Fill in the title.`]
      : []),
    ...(byVenue.length > 0 ? [`No zone at the close in ${rowWords(byVenue)}: the venue’s was taken.`] : []),
    ...(byStore.length > 0 ? [`No zone at the close in ${rowWords(byStore)}: the store’s was taken.`] : []),
    ...(line !== undefined && setup.carrying.floorPlan === undefined
      ? ['The purse has a floor line and the setup has no floor plan: every car is planned from cash.']
      : []),
  ];
}

const isOfTitle = ({ heading }: LotRow['faults'][number]): boolean => /title/i.test(heading);

const MOST_NAMED = 8;

/** "row 3", "rows 3, 5 and 9 more". */
function rowWords(rows: readonly number[]): string {
  const named = rows.slice(0, MOST_NAMED).join(', ');
  const more = rows.length - MOST_NAMED;
  return `${rows.length === 1 ? 'row' : 'rows'} ${named}${more > 0 ? ` and ${more} more` : ''}`;
}

function tell({ row, vin, problems, faults, cautions }: LotAnswer, around: Surroundings): void {
  const which = vin === null ? `Row ${row}` : `Row ${row} (${vin})`;
  for (const sentence of new Set([...faults, ...problems.map(({ message }) => message), ...cautions])) {
    around.warn(`${which}: ${sentence}`);
  }
}

function refused(around: Surroundings, message: string): number {
  around.warn(message);
  return 1;
}

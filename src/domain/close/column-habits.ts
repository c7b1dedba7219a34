import type { LocalDate } from '../time/local-date.ts';
import { weekdayOf } from '../time/wall-clock.ts';
import { calendarDate } from './calendar-date.ts';
import type { ColumnHabits } from './close-known.ts';
import { type DateOrder, type OrderedDate, orderedDates } from './date-order.ts';
import { scan } from './scan.ts';
import type { Token, WrittenDate } from './token.ts';

/** What all cells of a column say together about how each is to be read. */
export interface FoundHabits extends ColumnHabits {
  /** `ask` where a cell leaves its order open and nothing decides, or where cells contradict each other. */
  readonly found: DateOrder | 'ask' | 'none';
  /** A cell that decided, for the user to see. */
  readonly because?: string | undefined;
}

/** Collects what cells show, one after the other; thousands may be the same, and each is looked at once. */
export class HabitsOfColumn {
  readonly #today: LocalDate;
  readonly #seen = new Set<string>();
  readonly #votes = new Map<DateOrder, string>();
  #open = false;
  #wholeDay = false;
  #halves = false;

  constructor(today: LocalDate) {
    this.#today = today;
  }

  look(cell: string): void {
    if (cell === '' || this.#seen.has(cell) || cell.length > LONGEST) return;
    this.#seen.add(cell);
    const { tokens } = scan(cell);
    for (const token of tokens) if (token.kind === 'time') this.#time(token.time);
    for (const token of tokens) if (token.kind === 'date') this.#date(token.date, tokens, cell);
  }

  /** @param heading may say the order itself, or that the column counts down */
  habits(heading: string): FoundHabits {
    const wholeDay = this.#wholeDay && !this.#halves;
    const countsDown = countdownIn(heading);
    const said = orderIn(heading);
    const votes = [...this.#votes].filter(([order]) => order !== 'year-first');
    const [vote, another] = votes;
    const [found, because] =
      said !== null ? [said, heading] : another !== undefined ? [] : (vote ?? [...this.#votes][0] ?? []);
    const common = { wholeDay, ...(countsDown !== null && { countsDown }) };
    if (found === undefined) return { ...common, found: this.#open || another !== undefined ? 'ask' : 'none' };
    const open = this.#open && found === 'year-first' && said === null;
    return open ? { ...common, found: 'ask' } : { ...common, found, order: found, because };
  }

  #time({ hour, half, wholeDay }: { hour: number; half: string | null; wholeDay: boolean }): void {
    if (half !== null) this.#halves = true;
    else if (hour >= 13 || wholeDay) this.#wholeDay = true;
  }

  #date(date: WrittenDate, tokens: readonly Token[], cell: string): void {
    if (date.form === 'plain' && !date.named) this.#vote('year-first', cell);
    if (date.form !== 'figures') return;
    const weekday = tokens.find((token) => token.kind === 'weekday')?.weekday;
    const all = orderedDates(date, undefined, this.#today);
    const fitting = all.filter(
      (reading) => weekday === undefined || datesOf(reading, this.#today).some((one) => weekdayOf(one) === weekday),
    );
    const orders = fitting.length > 0 ? fitting : all;
    const days = new Set(orders.flatMap((reading) => datesOf(reading, this.#today)));
    const [only, another] = orders;
    if (only !== undefined && another === undefined) this.#vote(only.order, cell);
    else if (days.size > 1) this.#open = true;
  }

  #vote(order: DateOrder, cell: string): void {
    if (!this.#votes.has(order)) this.#votes.set(order, cell);
  }
}

const LONGEST = 200;

const datesOf = ({ years, month, day }: OrderedDate, today: LocalDate): readonly LocalDate[] =>
  (years ?? [Number(today.slice(0, 4))]).flatMap((year) => calendarDate(year, month, day));

/** "End (dd/mm/yyyy)". */
function orderIn(heading: string): DateOrder | null {
  const [pattern = ''] = /\b(?:dd?[-/. ]mm?|mm?[-/. ]dd?|yy(?:yy)?[-/. ]mm?)(?![a-z])/i.exec(heading) ?? [];
  const first = pattern.charAt(0).toLowerCase();
  return first === 'd' ? 'day-first' : first === 'm' ? 'month-first' : first === 'y' ? 'year-first' : null;
}

const COUNTS =
  /\b(?:(?:ends?|closes?|closing|ending)[ _-]*in|(?:time|days?|hours?|hrs?|minutes?|mins?)[ _-]*(?:left|remaining|to[ _-]*go)|remaining|countdown)\b/i;

/** "Ends In", "Minutes Left". */
export function countdownIn(heading: string): ColumnHabits['countsDown'] | null {
  if (heading.length > LONGEST) return null;
  const [found = ''] = COUNTS.exec(heading.replace(/(\p{Ll})(\p{Lu})/gu, '$1 $2')) ?? [];
  if (found === '') return null;
  if (/^day/i.test(found)) return 'days';
  if (/^h(?:ou)?r/i.test(found)) return 'hours';
  return /^min/i.test(found) ? 'minutes' : 'by its words';
}

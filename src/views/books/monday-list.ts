import { dueAt } from '../../domain/after-sale/due.ts';
import { type Month, monthInWords, monthOf } from '../../domain/books/month.ts';
import type { Certificate } from '../../domain/setup/certificate.ts';
import { addDays, mondayOf } from '../../domain/time/calendar-day.ts';
import type { Instant } from '../../domain/time/instant.ts';
import type { LocalDate } from '../../domain/time/local-date.ts';
import { sayTime } from '../../domain/time/say-time.ts';
import { dateIn } from '../../domain/time/wall-clock.ts';
import type { Zone } from '../../domain/time/zone.ts';
import type { LotState } from '../../folds/lot-state.ts';
import type { BooksState } from '../../journal/states/books-state.ts';
import type { AfterLot } from '../after-sale/after-lot.ts';
import { byClose, isOpenClosing } from '../results/open-closings.ts';
import { countWords } from '../words/count-words.ts';
import { dateInWords } from '../words/date-words.ts';
import { openBankLines } from './bank-lines.ts';
import type { DueBill } from './due-bills.ts';
import { folderName } from './folder-name.ts';
import { hasFolder, lotsInBooks } from './folders-of.ts';

/** One thing to settle, and the screen on which it is settled. */
export interface MondayLine {
  readonly key: string;
  /** The car, or the month. */
  readonly what: string;
  /** What is open about it. */
  readonly more: string;
  readonly hash: string;
  /** Whether it should have been settled already. */
  readonly late: boolean;
}

export interface MondayGroup {
  readonly title: string;
  /** What to say where nothing is open. */
  readonly none: string;
  readonly lines: readonly MondayLine[];
}

export interface MondayOpen {
  /** Every lot that is watched. */
  readonly watched: readonly LotState[];
  /** Every lot that was won or disputed, dropped ones too. */
  readonly after: readonly Pick<AfterLot, 'lot' | 'toDos' | 'place'>[];
  readonly books: BooksState;
  /** Bills that are overdue or due within a week. */
  readonly bills: readonly DueBill[];
  readonly zone: Zone;
  readonly certificates: readonly Certificate[];
}

/** What a bookkeeper settles on a Monday: results, bills, claims, the month. Empty groups are there too. */
export function mondayList(open: MondayOpen, now: Instant): readonly MondayGroup[] {
  return [
    { title: 'Results missing', none: 'Every close has a result.', lines: resultsMissing(open, now) },
    { title: 'Bills without a folder', none: 'Every bill is for a car you won.', lines: billsAstray(open) },
    { title: 'Bills to pay', none: 'No bill is due within a week.', lines: open.bills },
    { title: 'Claims that end this week', none: 'No claim deadline ends this week.', lines: claimsEnding(open, now) },
    { title: 'Month to close', none: 'No earlier month is open.', lines: monthToClose(open, now) },
    {
      title: 'Bank lines not matched',
      none:
        open.books.bank.statements.length === 0
          ? 'No bank statement has been read.'
          : 'Every bank line is matched or left out.',
      lines: bankLines(open),
    },
    {
      title: 'Resale certificates to renew',
      none: 'No certificate ends within 30 days.',
      lines: certificatesEnding(open, now),
    },
  ];
}

function resultsMissing({ watched, zone }: MondayOpen, now: Instant): MondayLine[] {
  return watched
    .filter((lot) => isOpenClosing(lot, now))
    .sort(byClose)
    .map(({ id, facts, sale }) => {
      const waits = sale?.result?.result.ended === 'pending' ? ', waits for the seller' : '';
      const closed = facts.close === undefined ? '' : `closed ${sayTime(facts.close.instant, zone, now)}`;
      const more = [facts.venueName, `${closed}${waits}`].filter(Boolean).join(', ');
      return { key: id, what: folderName(facts), more, hash: '#/results/missing', late: false };
    });
}

/** A bill for a car that was not won has no folder to go with it: the result is missing or wrong, or the bill is. */
function billsAstray({ watched, after, books }: MondayOpen): MondayLine[] {
  const known = new Map([...watched, ...after.map(({ lot }) => lot)].map((lot) => [lot.id, lot]));
  return [...lotsInBooks(books)].flatMap((id) => {
    const lot = known.get(id);
    if (lot !== undefined && hasFolder(lot, new Set())) return [];
    const lines = [...books.costs, ...books.payments].filter((line) => line.lot === id).length;
    const more = `${countWords(lines, 'line is', 'lines are')} recorded, and the car is not won`;
    const what = lot === undefined ? 'A car that is no longer on the list' : folderName(lot.facts);
    return { key: id, what, more, hash: `#/books/${id}`, late: false };
  });
}

/** One line: they are settled together, beside each other. */
function bankLines({ books }: MondayOpen): MondayLine[] {
  const open = openBankLines(books.bank);
  if (open === 0) return [];
  const what = countWords(open, 'bank line', 'bank lines');
  return [{ key: 'bank', what, more: 'not matched with what is recorded', hash: '#/books/bank', late: false }];
}

/** A new one takes weeks in some states (common practice, no source). */
const RENEW_DAYS = 30;

/** One that has run out is named until it is replaced in Setup, or another one of its state is good. */
function certificatesEnding({ certificates, zone }: MondayOpen, now: Instant): MondayLine[] {
  const today = dateIn(zone, now);
  const last = addDays(today, RENEW_DAYS);
  const isReplaced = ({ id, state, until = today }: Certificate) =>
    certificates.some((other) => other.id !== id && other.state === state && (other.until ?? '9999') > until);
  return certificates
    .flatMap((one): (MondayLine & { readonly until: string })[] => {
      const { id, state, number, until } = one;
      if (until === undefined || until > last || isReplaced(one)) return [];
      const late = until < today;
      const more = [number !== '' && `no. ${number}`, `${late ? 'ran out' : 'good until'} ${dateInWords(until)}`];
      return [
        {
          key: `certificate ${id}`,
          what: `Resale certificate for ${state}`,
          more: more.filter(Boolean).join(', '),
          hash: '#/setup/certificates',
          late,
          until,
        },
      ];
    })
    .sort((a, b) => (a.until < b.until ? -1 : 1));
}

/** An answer that is overdue still has to be given; a window for a claim that has ended can't be used any more. */
function claimsEnding({ after, zone }: MondayOpen, now: Instant): MondayLine[] {
  const sunday = addDays(mondayOf(dateIn(zone, now)), 6);
  return after
    .flatMap(({ lot, toDos, place }) =>
      toDos.flatMap((toDo) => {
        const at = dueAt(toDo.due);
        if (at === undefined || (toDo.kind !== 'look-over' && toDo.kind !== 'dispute')) return [];
        const late = at < now;
        if ((late && toDo.kind === 'look-over') || dateIn(zone, at) > sunday) return [];
        const dispute = toDo.dispute === undefined ? undefined : lot.after?.disputes[toDo.dispute];
        const hash = dispute === undefined ? `#/won/${lot.id}` : `#/dispute/${dispute.entry}`;
        const more = `${toDo.what}, ${place.name}, ${late ? 'was due' : 'by'} ${sayTime(at, zone, now)}`;
        return { at, line: { key: `${lot.id} ${toDo.key}`, what: folderName(lot.facts), more, hash, late } };
      }),
    )
    .sort((a, b) => a.at - b.at)
    .map(({ line }) => line);
}

/** One line: a later month closes the earlier ones with it. */
function monthToClose({ after, books, zone }: MondayOpen, now: Instant): MondayLine[] {
  const closedTo =
    books.closes
      .map(({ month }) => month)
      .sort()
      .at(-1) ?? '';
  const current = monthOf(dateIn(zone, now));
  const won = after.flatMap(({ lot }) => {
    const result = lot.sale?.result;
    return result?.result.ended === 'won' ? dateIn(zone, result.at) : [];
  });
  const booked = [...books.costs, ...books.payments, ...books.floor].map(({ date }) => date);
  const open = [...new Set([...won, ...booked].map((date: LocalDate) => monthOf(date)))]
    .filter((month) => month > closedTo && month < current)
    .sort();
  const last: Month | undefined = open.at(-1);
  if (last === undefined) return [];
  const more = open.length === 1 ? 'is still open' : `and ${countWords(open.length - 1, 'month', 'months')} before it`;
  return [{ key: last, what: monthInWords(last), more, hash: `#/books/month/${last}`, late: false }];
}

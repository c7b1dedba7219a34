import { attempt, type CantWorkOut } from '../../attempt.ts';
import { groupBy } from '../../group-by.ts';
import type { LotId } from '../../lot/lot.ts';
import type { Cents } from '../../money/cents.ts';
import type { InvoiceLine } from './invoice-line.ts';
import { type BookedCar, type JudgedLine, judgeLines } from './judge-line.ts';
import type { Links } from './linked-wordings.ts';
import { type CarMatch, type FolderCar, matchCar } from './match-car.ts';

/** The rows of an invoice that are for one car, as far as the rows say. */
export interface MatchedCar {
  /** Stands for the car among those of its file. */
  readonly id: string;
  readonly vin?: string | undefined;
  readonly lotNumber?: string | undefined;
  readonly match: CarMatch;
  readonly lines: readonly JudgedLine[];
}

/**
 * Matches the lines of an invoice to folders, car by car in the order of the file.
 * @param links how the venue words what is expected under another name
 * @param chosen folders that the user named for cars of the file, by their id here; null for "none of them"
 */
export function matchInvoice(
  lines: readonly InvoiceLine[],
  folders: readonly (FolderCar & BookedCar)[],
  venueId: string,
  chosen: ReadonlyMap<string, LotId | null> = new Map(),
  links: Links = new Map(),
): MatchedCar[] {
  const cars = groupBy(lines, ({ vin = '', lotNumber = '', row }) => {
    const id = `${vin}|${lotNumber}`;
    // Rows that name no car have nothing in common.
    return id === '|' ? `|${row}` : id;
  });
  const matched = [...cars].map(([id, own]) => ({ id, own, match: matchOf(id, own, folders, venueId, chosen) }));
  // Two cars of the file may be the same one, written in two ways: they are held against the books together.
  const byLot = new Map<LotId, InvoiceLine[]>();
  for (const { own, match } of matched)
    if (match.lot !== null) byLot.set(match.lot, [...(byLot.get(match.lot) ?? []), ...own]);
  const judged = new Map<string, JudgedLine>();
  for (const [lot, own] of byLot) {
    const folder = folders.find((each) => each.lot === lot);
    if (folder === undefined) continue;
    const lines = attempt(() => judgeLines(own, folder, links));
    for (const one of lines.ok ? lines.value : own.map((line) => unjudged(line, lines))) judged.set(one.line.id, one);
  }
  return matched.map(({ id, own, match }) => ({
    id,
    vin: own[0]?.vin,
    lotNumber: own[0]?.lotNumber,
    match,
    lines: own.map(
      (line) => judged.get(line.id) ?? { line, verdict: 'not-expected', expected: null, why: 'No folder yet.' },
    ),
  }));
}

/** A car whose lines can't be held against the books costs no other car of the invoice its verdict. */
const unjudged = (line: InvoiceLine, { message }: CantWorkOut): JudgedLine => ({
  line,
  verdict: 'not-expected',
  expected: null,
  why: message,
});

function matchOf(
  id: string,
  own: readonly InvoiceLine[],
  folders: readonly FolderCar[],
  venueId: string,
  chosen: ReadonlyMap<string, LotId | null>,
): CarMatch {
  const named = chosen.get(id);
  if (named !== undefined)
    return named === null
      ? { how: 'none', lot: null, why: 'You said it belongs to no folder.' }
      : { how: 'near', lot: named, why: 'You chose this folder.' };
  const hammer: Cents | undefined = own.find((line) => line.what === 'cost' && line.cost === 'hammer')?.cents;
  const [first] = own;
  return matchCar(first ?? {}, folders, venueId, hammer);
}

/** Whether a line starts out ticked: the car is certain, and nothing about the line wants a decision. */
export const startsTicked = (match: CarMatch, line: JudgedLine): boolean => match.how === 'exact' && isPlain(line);

/** Whether a line may be recorded at all: it is said what it is, and of which day. */
export const canBeTicked = ({ line, verdict }: JudgedLine): boolean =>
  line.what !== 'unsure' && (verdict !== 'which-day' || line.date !== undefined);

/** Whether a line itself wants no decision, once it is certain which car it is for. */
export const isPlain = ({ verdict }: JudgedLine): boolean =>
  verdict === 'as-expected' || verdict === 'payment' || verdict === 'part-payment';

import { cleanLine, shorten } from '../dom/clean-text.ts';
import type { PageNode } from '../dom/page-tree.ts';
import {
  type DraftFieldName,
  type DraftFields,
  draftFieldsSchema,
  type FieldValue,
  type PageNote,
} from './draft-lot.ts';
import { MOST_IN_PROSE, type ScoredReading, settleReadings } from './settle-readings.ts';

type Lists = { [Name in DraftFieldName]?: ScoredReading<FieldValue<Name>>[] };

/** Collects every reading of every field of one lot with how much speaks for it, then settles each field. */
export class Candidates {
  private readonly lists: Lists = {};
  private readonly nodes = new Map<unknown, PageNode>();
  private readonly said: PageNote[] = [];
  private readonly most: number;

  constructor(most: number) {
    this.most = most;
  }

  /** @param node where on the page it stands; null for what the page does not show */
  add<Name extends DraftFieldName>(
    name: Name,
    reading: ScoredReading<FieldValue<Name>>,
    node: PageNode | null = null,
  ): void {
    const list: ScoredReading<FieldValue<Name>>[] = this.lists[name] ?? [];
    if (list.length >= this.most) return;
    const score = reading.prose === true ? Math.min(MOST_IN_PROSE, reading.score) : reading.score;
    const kept = { ...reading, score, text: shorten(cleanLine(reading.text), 400) };
    list.push(kept);
    if (node !== null) this.nodes.set(kept, node);
    this.lists[name] = list as Lists[Name];
  }

  /** Every place on the page that says this of a field. */
  nodesOf<Name extends DraftFieldName>(name: Name, value: FieldValue<Name>): readonly PageNode[] {
    const same = SAME[name] ?? sameValue;
    return this.of(name).flatMap((reading) => {
      const node = this.nodes.get(reading);
      return node !== undefined && same(reading.value, value) ? [node] : [];
    });
  }

  of<Name extends DraftFieldName>(name: Name): readonly ScoredReading<FieldValue<Name>>[] {
    return this.lists[name] ?? [];
  }

  /** The value that speaks for itself most, so far. */
  best<Name extends DraftFieldName>(name: Name): ScoredReading<FieldValue<Name>> | undefined {
    return this.of(name).reduce<ScoredReading<FieldValue<Name>> | undefined>(
      (best, one) => (best === undefined || one.score > best.score ? one : best),
      undefined,
    );
  }

  /** Leaves of every reading of a field at most so much of its score. */
  doubt(name: DraftFieldName, most: number): void {
    const list = this.lists[name];
    if (list === undefined) return;
    const lower = list.map((reading) => {
      const less = { ...reading, score: Math.min(most, reading.score) };
      const node = this.nodes.get(reading);
      if (node !== undefined) this.nodes.set(less, node);
      return less;
    });
    // Only the scores are others.
    this.lists[name] = lower as never;
  }

  /** Leaves of those readings of a field that `is` picks, by value and place, at most so much of their score. */
  doubtWhere<Name extends DraftFieldName>(
    name: Name,
    most: number,
    is: (value: FieldValue<Name>, node: PageNode | undefined) => boolean,
  ): void {
    const lower = this.of(name).map((reading) => {
      const node = this.nodes.get(reading);
      if (reading.score <= most || !is(reading.value, node)) return reading;
      const less = { ...reading, score: most };
      if (node !== undefined) this.nodes.set(less, node);
      return less;
    });
    // Only the scores are others.
    if (lower.length > 0) this.lists[name] = lower as never;
  }

  drop(name: DraftFieldName): void {
    delete this.lists[name];
  }

  /** Something that the user should know about this lot's reading. */
  note(note: PageNote): void {
    if (!this.said.some(({ message }) => message === note.message)) this.said.push(note);
  }

  get notes(): readonly PageNote[] {
    return this.said;
  }

  settle(): DraftFields {
    const fields: Record<string, unknown> = {};
    for (const name of Object.keys(this.lists) as DraftFieldName[]) {
      const field = settleReadings<unknown>(this.of(name), SAME[name] ?? sameValue, { lasting: LASTING.has(name) });
      // A page can say what no draft may hold; that costs its field, not the lot.
      if (field !== undefined && draftFieldsSchema.shape[name].safeParse(field).success) fields[name] = field;
    }
    // Each list was filled through `add`, which ties the value's type to the field's name.
    return fields as DraftFields;
  }
}

/** What does not change while a lot is for sale. */
const LASTING: ReadonlySet<DraftFieldName> = new Set(['vin', 'year', 'miles']);

const sameValue = (a: unknown, b: unknown): boolean => a === b;

const words = (text: unknown): string =>
  String(text)
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, ' ')
    .trim();

/** `Phoenix` and `Phoenix, AZ` are the same place told shorter and longer. */
const sameWords = (a: unknown, b: unknown): boolean => {
  const [one, other] = [` ${words(a)} `, ` ${words(b)} `];
  return one.includes(other) || other.includes(one);
};

const CLOSE_ENOUGH_MS = 90_000;

/** The same moment, or one that the doubtful one of the two may also mean. */
const sameClose = (a: unknown, b: unknown): boolean => {
  const [one, other] = [a as FieldValue<'close'>, b as FieldValue<'close'>];
  const near = (at: number) => (that: number) => Math.abs(at - that) <= CLOSE_ENOUGH_MS;
  return (
    near(one.instant)(other.instant) ||
    one.otherwise.some(near(other.instant)) ||
    other.otherwise.some(near(one.instant))
  );
};

const SAME: Partial<Record<DraftFieldName, (a: unknown, b: unknown) => boolean>> = {
  close: sameClose,
  make: (a, b) => words(a) === words(b),
  model: sameWords,
  trim: sameWords,
  lotNumber: (a, b) => words(a) === words(b),
  runNumber: (a, b) => words(a) === words(b),
  venueName: sameWords,
  sale: sameWords,
  seller: sameWords,
  location: sameWords,
  title: sameWords,
  condition: sameWords,
  transmission: sameWords,
  drive: sameWords,
};

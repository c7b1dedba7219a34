import type { PageNode } from '../dom/page-tree.ts';
import { cleanLine, shorten } from '../text/clean-text.ts';
import type { DraftFieldName, DraftFields, FieldValue, Reading } from './draft-lot.ts';
import { settleReadings } from './settle-readings.ts';

type Lists = { [Name in DraftFieldName]?: Reading<FieldValue<Name>>[] };

/** Collects every reading of every field of one lot, then settles each field. */
export class Candidates {
  private readonly lists: Lists = {};
  private readonly nodes = new Map<unknown, PageNode>();
  private readonly most: number;

  constructor(most: number) {
    this.most = most;
  }

  /** @param node where on the page it stands; null for what the page does not show */
  add<Name extends DraftFieldName>(name: Name, reading: Reading<FieldValue<Name>>, node: PageNode | null = null): void {
    const list: Reading<FieldValue<Name>>[] = this.lists[name] ?? [];
    if (list.length >= this.most) return;
    const kept = { ...reading, text: shorten(cleanLine(reading.text), 400) };
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

  of<Name extends DraftFieldName>(name: Name): readonly Reading<FieldValue<Name>>[] {
    return this.lists[name] ?? [];
  }

  drop(name: DraftFieldName): void {
    delete this.lists[name];
  }

  settle(): DraftFields {
    const fields: Record<string, unknown> = {};
    for (const name of Object.keys(this.lists) as DraftFieldName[]) {
      const field = settleReadings<unknown>(this.of(name), SAME[name] ?? sameValue);
      if (field !== undefined) fields[name] = field;
    }
    // Each list was filled through `add`, which ties the value's type to the field's name.
    return fields as DraftFields;
  }
}

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

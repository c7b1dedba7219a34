import type { PageNode } from '../dom/page-tree.ts';
import type { SafeDom } from '../dom/safe-dom.ts';
import {
  type DraftField,
  type DraftLot,
  type DraftLots,
  type PageNote,
  type Sure,
  TIED_FIELDS,
  type TiedField,
} from '../draft/draft-lot.ts';
import type { Tie, TiesFound } from '../lots/tied-fields.ts';
import type { PageWatch } from './page-watch.ts';
import { figuresIn, saidIn } from './said-in.ts';

/** For each lot the fields whose figures came onto the page with the lot's VIN, and are not left over from another's. */
export function tiedFields(
  { lots }: DraftLots,
  { lots: ties, hiddenVins }: TiesFound,
  watch: PageWatch,
  dom: SafeDom,
): readonly (readonly TiedField[])[] {
  return lots.map((lot, at) =>
    (ties[at] ?? []).filter((tie) => cameWithVin(tie, lot, { watch, dom, hiddenVins })).map((tie) => tie.field),
  );
}

interface Circumstances {
  readonly watch: PageWatch;
  readonly dom: SafeDom;
  readonly hiddenVins: ReadonlySet<string>;
}

function cameWithVin(
  { field, figure, vin, names }: Tie,
  { fields }: DraftLot,
  { watch, dom, hiddenVins }: Circumstances,
): boolean {
  const known = fields.vin?.readings[0]?.value;
  if (known === undefined) return false;
  const vins = vin.flatMap((node) => saidIn(node, known, dom));
  // A clock that runs down is made anew each second, whoever's it is.
  if (field === 'close' && fields.close?.readings[0]?.value.how === 'countdown' && watch.movedOn() !== 'no')
    return false;
  const dollars = String(Math.floor((fields.priceNow?.readings[0]?.value ?? 0) / 100));
  return figure.every((node) =>
    watch.cameWith(
      field === 'close' ? figuresIn(node, dom) : saidIn(node, dollars, dom),
      vins,
      known,
      hiddenVins,
      textsOfNames(names, fields, dom),
    ),
  );
}

/** The texts that say the lot's number or its year, and with that its name. */
function textsOfNames({ number, year }: Tie['names'], { lotNumber, year: made }: DraftLot['fields'], dom: SafeDom) {
  const said = (nodes: readonly PageNode[], value: string | number | undefined) =>
    value === undefined ? [] : nodes.flatMap((node) => saidIn(node, String(value), dom));
  return [...said(number, lotNumber?.readings[0]?.value), ...said(year, made?.readings[0]?.value)];
}

/** Whether a page names its one lot where it named another before, under the watch's eyes. */
export const namedAnother = (
  { lots: [lot] }: DraftLots,
  { lots: [ties] }: TiesFound,
  watch: PageWatch,
  dom: SafeDom,
): boolean =>
  lot !== undefined && (ties ?? []).some(({ names }) => watch.namedAnother(textsOfNames(names, lot.fields, dom)));

const CHECK_BOTH: PageNote = {
  reason: 'moved-on',
  message:
    'This page went from one lot to another without loading anew, so its price and close may still be the other lot’s. Check both, or reload the page and read it again.',
};

/**
 * The lot of a page that has gone from one to another. What was seen to stay from the other is doubtful, and that is said;
 * where nobody saw it go, nothing is certain.
 */
export function withoutLeftovers(draft: DraftLots, tied: readonly TiedField[], moved: 'seen' | 'before'): DraftLots {
  const left = TIED_FIELDS.filter((field) => !tied.includes(field) && draft.lots[0]?.fields[field] !== undefined);
  if (left.length === 0) return draft;
  const most: Sure = moved === 'seen' ? 'doubtful' : 'likely';
  const lots = draft.lots.map((lot): DraftLot => {
    const { priceNow, close } = lot.fields;
    return {
      ...lot,
      fields: {
        ...lot.fields,
        ...(left.includes('priceNow') && priceNow && { priceNow: atMost(most, priceNow) }),
        ...(left.includes('close') && close && { close: atMost(most, close) }),
      },
    };
  });
  return { ...draft, lots, notes: moved === 'seen' ? [...draft.notes, CHECK_BOTH].slice(0, 40) : draft.notes };
}

const atMost = <Value>(most: Sure, { settled, readings }: DraftField<Value>) => ({
  settled,
  readings: readings.map((reading) => ({ ...reading, sure: reading.sure === 'doubtful' ? reading.sure : most })),
});

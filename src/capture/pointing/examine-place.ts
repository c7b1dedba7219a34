import { wordsOfDoubt } from '../../domain/close/doubt-words.ts';
import { type Outcome, ok, refuse } from '../../domain/outcome.ts';
import type { PointedPlace } from '../../domain/setup/site.ts';
import type { Instant } from '../../domain/time/instant.ts';
import { cleanLine, shorten } from '../dom/clean-text.ts';
import { type PageElement, textOf } from '../dom/page-tree.ts';
import { snapshot } from '../dom/snapshot.ts';
import type { DraftField, DraftFieldName, FieldValue } from '../draft/draft-lot.ts';
import type { ReadContext } from '../read-context.ts';
import { readPage } from '../read-page.ts';
import { moneyIn } from '../tokens/money-tokens.ts';
import { describePlace, elementFor } from './describe-place.ts';

/** Whether an element the user pointed at can be found again and gives a value for the field; and what it gives. */
export function examinePlace(
  element: Element,
  about: { readonly field: DraftFieldName; readonly url: string; readonly at: Instant; readonly context: ReadContext },
  document: Document,
): Outcome<{ readonly result: PointedPlace; readonly sentence: string }> {
  const { field, at, url, context } = about;
  const found = elementFor(element, snapshot(document).root);
  if (found === null) return refuse('not-shown', 'There is no text there. Point at the value itself.');
  const text = shorten(cleanLine(textOf(found)), 80);
  const amounts = MONEY.has(field) ? amountsApart(found) : 0;
  if (amounts > 1) return refuse('several', `There are ${amounts} amounts in “${text}”. Point at one of them alone.`);
  const place = describePlace(found, { field, site: new URL(url).hostname, at });
  if (!place.ok) return place;
  const others = (context.places ?? []).filter((one) => one.field !== field);
  const draft = readPage(document, url, at, { ...context, places: [...others, place.value] });
  const read = draft.lots
    .map(({ fields }): DraftField<FieldValue<DraftFieldName>> | undefined => fields[field])
    .find((one) => one?.readings.some(({ from }) => from === 'pointed'));
  if (read === undefined) {
    const { label } = place.value;
    const why = draft.notes.find(({ reason, message }) => reason === 'place-lost' && message.includes(`"${label}"`));
    const isAnothers = why !== undefined && !why.message.includes('could not be read as');
    const unread = `“${text}” could not be read for this. Point at the value alone, or type it in.`;
    return refuse('unreadable', isAnothers ? why.message : unread);
  }
  return ok({ result: place.value, sentence: `${place.value.label}: “${text}”.${questionOf(read)}` });
}

const MONEY: ReadonlySet<DraftFieldName> = new Set(['priceNow', 'nextBid', 'increment', 'buyNow']);

/** How many amounts stand in parts of an element, each of which could be pointed at alone. */
function amountsApart(element: PageElement): number {
  const isOnePart = !element.children.some((child) => child.kind === 'element');
  return isOnePart ? 0 : new Set(moneyIn(cleanLine(textOf(element)), undefined).map(({ cents }) => cents)).size;
}

/** What the user will be asked once he uses the place. */
function questionOf({ settled, readings: [first] }: DraftField<FieldValue<DraftFieldName>>): string {
  if (!settled) return ' It can be read in more than one way: Headroom asks you which.';
  const value = first?.value;
  if (typeof value !== 'object' || value.doubts.length === 0) return '';
  return ` ${wordsOfDoubt(value)} Headroom asks you.`;
}

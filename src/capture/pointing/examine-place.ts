import { type Outcome, ok, refuse } from '../../domain/outcome.ts';
import type { PointedPlace } from '../../domain/setup/site.ts';
import type { Instant } from '../../domain/time/instant.ts';
import { cleanLine, shorten } from '../dom/clean-text.ts';
import { textOf } from '../dom/page-tree.ts';
import { snapshot } from '../dom/snapshot.ts';
import type { DraftFieldName } from '../draft/draft-lot.ts';
import type { ReadContext } from '../read-context.ts';
import { readPage } from '../read-page.ts';
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
  const place = describePlace(found, { field, site: new URL(url).hostname, at });
  if (!place.ok) return place;
  const others = (context.places ?? []).filter((one) => one.field !== field);
  const draft = readPage(document, url, at, { ...context, places: [...others, place.value] });
  const reading = draft.lots[0]?.fields[field]?.readings.find((one) => one.from === 'pointed');
  const text = shorten(cleanLine(textOf(found)), 80);
  if (reading === undefined) {
    return refuse('unreadable', `“${text}” could not be read for this. Point at the value alone, or type it in.`);
  }
  return ok({ result: place.value, sentence: `${place.value.label}: “${text}”.` });
}

import { JSDOM, VirtualConsole } from 'jsdom';
import type { DraftLots } from '../../src/capture/draft/draft-lot.ts';
import { examinePlace } from '../../src/capture/pointing/examine-place.ts';
import { readPage } from '../../src/capture/read-page.ts';
import { closeChoices } from '../../src/domain/close/say-close.ts';
import { instant } from '../../src/domain/time/instant.ts';
import { zone } from '../../src/domain/time/zone.ts';
import type { PointingCase } from '../fixtures/pointing/case.ts';

const NOW = instant(Date.UTC(2026, 4, 5, 12));
const STORE_ZONE = zone('America/Boise');
const ADDRESS = 'https://sale.example/lot/1';

/** What came of a case, in the words of its expectation. */
export type CameOut =
  | { readonly is: 'said'; readonly value: number | string; readonly sure: string; readonly from: string }
  | { readonly is: 'asked'; readonly words: string }
  | { readonly is: 'refused'; readonly words: string }
  | { readonly is: 'point-refused'; readonly words: string };

const { document } = new JSDOM('', { url: ADDRESS, virtualConsole: new VirtualConsole() }).window;

/** Shows a page in the one window of this file: windows are dear. */
function show(html: string): Document {
  document.documentElement.innerHTML = html;
  return document;
}

/** Points at the marked element, then reads the later page with the place remembered. */
export function comeOut({ field, taught, later, vin }: PointingCase): CameOut {
  const context = { storeZone: STORE_ZONE };
  const element = show(taught).querySelector('[data-here]');
  if (element === null) throw new Error('nothing is marked');
  element.removeAttribute('data-here');
  const place = examinePlace(element, { field, url: ADDRESS, at: NOW, context }, document);
  if (!place.ok) return { is: 'point-refused', words: place.message };
  const read = readPage(show(later ?? taught.replace(' data-here', '')), ADDRESS, NOW, {
    ...context,
    places: [place.value.result],
  });
  return ofLot(read, field, vin);
}

function ofLot(read: DraftLots, field: PointingCase['field'], vin: string): CameOut {
  const lot = read.lots.find(({ fields }) => fields.vin?.readings.some(({ value }) => value === vin));
  if (lot === undefined)
    return {
      is: 'refused',
      words: `This car is not on the page. ${read.notes.map(({ message }) => message).join(' ')}`,
    };
  const found = lot.fields[field];
  const notes = read.notes.map(({ message }) => message).join(' ');
  const [first] = found?.readings ?? [];
  if (found === undefined || first === undefined) return { is: 'refused', words: notes };
  if (!found.settled) return { is: 'asked', words: found.readings.map(({ text }) => text).join(' | ') };
  const { value, sure, from } = first;
  if (typeof value === 'object') {
    if (value.doubts.length === 0) return { is: 'said', value: new Date(value.instant).toISOString(), sure, from };
    const choices = closeChoices(value, STORE_ZONE, NOW).map(({ words }) => words);
    return { is: 'asked', words: `${value.doubts.join(' ')}: ${choices.join(' | ')}` };
  }
  return { is: 'said', value, sure, from };
}

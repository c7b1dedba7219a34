import { expect, test } from 'vitest';
import { isAsked, unedited, withTyped } from '../../src/capture/draft/draft-edit.ts';
import { readCloseTime } from '../../src/domain/close/read-close-time.ts';
import type { CloseTime } from '../../src/domain/time/close-time.ts';
import { instant } from '../../src/domain/time/instant.ts';
import { zone } from '../../src/domain/time/zone.ts';
import { waysToClose } from '../../src/popup/page/ways-to-close.ts';

const NOW = instant(Date.UTC(2026, 4, 5, 12));
const BOISE = zone('America/Boise');

function close(text: string): CloseTime {
  const read = readCloseTime(text, { now: NOW, storeZone: BOISE });
  if (!read.ok) throw new Error(read.message);
  return read.value;
}
const words = (text: string) => waysToClose(close(text), BOISE, NOW).map((way) => way.words);

test('a close without a zone is asked in the zones that American sales write, on the store’s clock', () => {
  expect(words('May 9, 2026 2:00 PM')).toEqual([
    'ET: Sat May 9, 12:00 PM (2:00 PM EDT at the sale)',
    'CT: Sat May 9, 1:00 PM (2:00 PM CDT at the sale)',
    'MT: Sat May 9, 2:00 PM',
    'PT: Sat May 9, 3:00 PM (2:00 PM PDT at the sale)',
  ]);
});

test('without AM or PM it is asked for both halves of the day, and without a zone in each zone', () => {
  expect(words('May 9, 2026 2:00 EDT')).toEqual([
    'Sat May 9, 12:00 AM (2:00 AM EDT at the sale)',
    'Sat May 9, 12:00 PM (2:00 PM EDT at the sale)',
  ]);
  expect(words('May 9, 2026 2:00')).toHaveLength(8);
});

test('an answer settles the question, in the words of the page', () => {
  const asked = close('May 9, 2026 2:00 PM');
  const [eastern] = waysToClose(asked, BOISE, NOW);
  expect(eastern?.picked).toMatchObject({ doubts: [], how: 'picked', text: asked.text });
  const draft = unedited({ key: 'k', heading: 'h', pageUrl: '', tied: [], fields: {} });
  expect(isAsked(withTyped(draft, 'close', asked), 'close')).toBe(true);
  expect(isAsked(withTyped(draft, 'close', eastern?.picked), 'close')).toBe(false);
});

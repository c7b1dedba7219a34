import { renderToString } from 'preact-render-to-string';
import { expect, test } from 'vitest';
import { OldZoneNote } from '../../../options-page/shell/old-zone-note.tsx';
import { zone } from '../../../src/domain/time/zone.ts';
import { missedChange } from '../../../src/domain/time/zone-data.ts';

const said = (name: string, now: number) => renderToString(<OldZoneNote zone={zone(name)} now={now} />);
const DECEMBER = Date.UTC(2026, 11, 1);

test('a store whose clock rules are newer than this browser’s is told so in plain sight, from two months ahead on', () => {
  // tz database 2026b: Vancouver keeps -07:00 from November 1, 2026 on. A browser that knows it has nothing to say.
  const old = missedChange(zone('America/Vancouver')) !== null;
  expect(said('America/Vancouver', DECEMBER).includes('Store time may be an hour off')).toBe(old);
  expect(said('America/Vancouver', Date.UTC(2026, 9, 1)).includes('from Sun Nov 1 on')).toBe(old);
  expect(said('America/Vancouver', Date.UTC(2026, 5, 1))).toBe('');
});

test('nothing is said of a zone whose rules did not change', () => {
  for (const name of ['America/Boise', 'America/Phoenix', 'America/New_York']) expect(said(name, DECEMBER)).toBe('');
});

import { describe, expect, it } from 'vitest';
import { matchTitle } from '../../../src/domain/setup/match-title.ts';
import { matchVenue } from '../../../src/domain/setup/match-venue.ts';
import { STARTING_TITLES } from '../../../src/domain/setup/starting-titles.ts';

const titled = (text: string, titles: readonly { id: string; name: string }[] = STARTING_TITLES) => {
  const title = matchTitle(text, titles);
  return title.ok ? title.value : title.reason;
};

describe('a title state in words', () => {
  it.each([
    ['Clean', 'clean'],
    ['CLEAN TITLE', 'clean'],
    ['clear', 'clean'],
    ['Salvage certificate', 'salvage'],
    ['prior salvage', 'rebuilt'],
    ['Rebuilt', 'rebuilt'],
    ['lemon-law', 'buyback'],
    ['TMU', 'not-actual'],
    ['water damage', 'flood'],
    ['not_actual', 'not-actual'],
  ])('%j is %s', (text, id) => expect(titled(text)).toBe(id));

  it.each(['clean, prior hail', 'not clean', 'export only', 'absent', 'title', 'salvage history'])(
    '%j stays a question',
    (text) => expect(titled(text)).toBe('unknown-title'),
  );

  it.each(['Rebuilt/Salvage', 'Clean or Rebuilt', 'flood, fire', 'Salvage & Flood'])('%j is two states', (text) =>
    expect(titled(text)).toBe('ambiguous'),
  );
  it.each(['Clean?', '?', 'rebuilt??'])('%j is a question', (text) => expect(titled(text)).not.toBe('clean'));
  it.each(['rebuilt salvage', 'Junk, not repairable', 'Clean and clear'])('%j is one state', (text) =>
    expect(['rebuilt', 'junk', 'clean']).toContain(titled(text)),
  );

  it('names the states that are known', () => {
    expect(matchTitle('odd', [{ id: 'a', name: 'Clean' }])).toMatchObject({
      message: '“odd” is not a title in Setup (Clean). Choose one, or add it.',
    });
  });

  it('does not choose between two states of the same meaning', () => {
    const both = [
      { id: 'lemon-id', name: 'Lemon' },
      { id: 'bb', name: 'Manufacturer buyback' },
    ];
    expect(titled('buyback', both)).toBe('ambiguous');
    expect(titled('lemon', both)).toBe('lemon-id');
  });
});

const VENUES = [
  { id: 'saguaro', name: 'Saguaro Flats' },
  { id: 'saltmarsh', name: 'Saltmarsh Fleet' },
  { id: 'saltmarsh-night', name: 'Saltmarsh Night' },
];
const venue = (text: string) => {
  const found = matchVenue(text, VENUES);
  return found.ok ? found.value : found.reason;
};

describe('a venue in words', () => {
  it.each([
    ['saguaro', 'saguaro'],
    ['SAGUARO-FLATS', 'saguaro'],
    ['Saguaro Flats, lane 4', 'saguaro'],
    ['Saltmarsh', 'saltmarsh'],
    ['Saltmarsh Fleet', 'saltmarsh'],
  ])('%j is %s', (text, id) => expect(venue(text)).toBe(id));

  it.each([
    ['Somewhere', 'unknown-venue'],
    ['Flat', 'unknown-venue'],
    ['', 'empty'],
    ['Saltmarsh Fleet or Saltmarsh Night', 'loose'],
    ['Flats', 'loose'],
    ['night', 'loose'],
    ['Saguaro Flats West', 'loose'],
    ['Saguaro Flats online', 'loose'],
    ['New Saguaro Flats', 'loose'],
  ])('%j is %s', (text, reason) => expect(venue(text)).toBe(reason));

  it('names the venues that a loose wording could mean', () => {
    expect(matchVenue('Fleet', VENUES)).toMatchObject({
      message: '“Fleet” is not a venue’s whole name. If it is Saltmarsh Fleet, choose that.',
    });
    expect(matchVenue('Saltmarsh Fleet or Saltmarsh Night', VENUES)).toMatchObject({
      message: expect.stringMatching(/If it is Saltmarsh Fleet or Saltmarsh Night/),
    });
  });

  it('does not choose between two venues of one name', () => {
    expect(
      matchVenue('Barn', [
        { id: 'a', name: 'Barn' },
        { id: 'b', name: 'BARN' },
      ]),
    ).toMatchObject({ reason: 'ambiguous' });
  });
});

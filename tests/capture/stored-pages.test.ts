import { writeFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { asRead, isSameValue, type PlainLot } from '../../scripts/reader/plain-lot.ts';
import { expectedPage, PAGES, pageNames, plainPage, readStoredPage } from '../../scripts/reader/stored-page.ts';
import { draftLotsSchema } from '../../src/capture/draft/draft-lot.ts';

const names = pageNames(PAGES);

test('there are at least thirty stored pages', () => {
  expect(names.length).toBeGreaterThanOrEqual(30);
});

describe('each stored page is read as a careful person reads it', () => {
  test.each(names)('%s', async (name) => {
    const expected = expectedPage(PAGES, name);
    const draft = await readStoredPage(PAGES, name, expected);
    expect(draftLotsSchema.safeParse(draft).error?.issues).toBeUndefined();
    const read = plainPage(draft);
    if (expected === null && process.env.UPDATE_FIXTURES === '1') {
      writeFileSync(path.join(PAGES, `${name}.expected.json`), `${JSON.stringify(read, null, 2)}\n`);
      return;
    }
    if (expected === null)
      throw new Error(`${name} has no expectation: write one, or run with UPDATE_FIXTURES=1 and check it`);
    const { now: _, context: __, late: ___, ...stated } = expected;
    const wanted = { ...stated, lots: stated.lots.map(asRead) };
    expect({ ...read, lots: read.lots.map((lot, at) => closeAs(lot, wanted.lots[at])) }).toEqual(wanted);
  });
});

/** Shows a close within the minute as the expected one, so that the comparison can be exact for all else. */
function closeAs(lot: PlainLot, wanted: PlainLot | undefined): PlainLot {
  const close = wanted?.close;
  return close !== undefined && lot.close !== undefined && isSameValue('close', close, lot.close)
    ? { ...lot, close }
    : lot;
}

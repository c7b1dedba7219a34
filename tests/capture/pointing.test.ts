import { expect, test } from 'vitest';
import { BLOCK_CASES } from '../fixtures/pointing/blocks.ts';
import type { PointingCase } from '../fixtures/pointing/case.ts';
import { CHANGE_CASES } from '../fixtures/pointing/changes.ts';
import { FIRST_TIME_CASES } from '../fixtures/pointing/first-time.ts';
import { LABEL_CASES } from '../fixtures/pointing/labels.ts';
import { TABLE_CASES } from '../fixtures/pointing/tables.ts';
import { comeOut } from './pointing-cases.ts';

/** Written by somebody who had not read the code, as a careful buyer would want it; measured in `src/capture/README.md`. */
const CASES = [...TABLE_CASES, ...LABEL_CASES, ...BLOCK_CASES, ...CHANGE_CASES, ...FIRST_TIME_CASES];

/** The same with labels that the reader does not know, so that nothing but the place can give the value. */
const unknown = (text: string): string =>
  text
    .replace(/standing at/gi, (label) => (label === 'STANDING AT' ? 'CHALKED UP' : 'Chalked up'))
    .replace(/Hammer falls/g, 'Curtain drops');

test.each(CASES)('$name', (one) => {
  expectAs(one);
});

const ALONE = [...TABLE_CASES.slice(0, 2), ...BLOCK_CASES.slice(0, 2), ...CHANGE_CASES.slice(0, 5)];

test.each(ALONE)('under a label that nobody knows: $name', (one) => {
  expectAs({ ...one, taught: unknown(one.taught), later: unknown(one.later ?? one.taught) });
});

function expectAs(one: PointingCase): void {
  const came = comeOut(one);
  const { expect: wanted } = one;
  if ('says' in wanted) expect(came).toMatchObject({ is: 'said', value: wanted.says });
  else if ('asked' in wanted) expect(came).toMatchObject({ is: 'asked', words: expect.stringMatching(wanted.asked) });
  else if ('refused' in wanted)
    expect(came).toMatchObject({ is: 'refused', words: expect.stringMatching(wanted.refused) });
  else expect(came).toMatchObject({ is: 'point-refused', words: expect.stringMatching(wanted.pointRefused) });
}

import { describe, expect, test } from 'vitest';
import { judgeTable, STRANGE_TABLES } from '../../scripts/number/strange-tables.ts';

describe('a table written by somebody else', () => {
  test.each(STRANGE_TABLES.map((one) => [one.name, one] as const))('%s', async (_, table) => {
    const judged = await judgeTable(table);
    const wanted = table.rows.map(({ quiet }) => (quiet ? 'quiet' : 'right'));
    expect(
      judged.map(({ verdict }) => verdict),
      judged.map(({ said }) => said).join('\n\n'),
    ).toEqual(wanted);
  });
});

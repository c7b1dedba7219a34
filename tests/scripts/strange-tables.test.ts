import { describe, expect, test } from 'vitest';
import { judgeTable, STRANGE_TABLES } from '../../scripts/number/strange-tables.ts';

describe('a table written by somebody else', () => {
  test.each(STRANGE_TABLES.map((one) => [one.name, one] as const))('%s', async (_, table) => {
    const judged = await judgeTable(table);
    expect(judged.filter(({ verdict }) => verdict !== 'right')).toEqual([]);
    expect(judged).toHaveLength(table.rows.length);
  });
});

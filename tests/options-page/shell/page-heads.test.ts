import { expect, test } from 'vitest';
import { pageHeads } from '../../../options-page/shell/page-heads.ts';

test('a store’s name can’t end the string that it is written into', () => {
  const css = pageHeads('Books · "Cottonwood" } Truck & \\ Van\n', 'Mon Nov 30, 2026');
  // By CSS Syntax Module Level 3, a backslash and the number of the character, ended by one blank.
  expect(css).toContain('content: "Books \\b7  \\22 Cottonwood\\22  \\7d  Truck \\26  \\5c  Van\\a "');
  expect(css).toContain('content: "Mon Nov 30\\2c  2026"');
  expect(css.match(/@top-left|@top-right|@bottom-right/g)).toHaveLength(3);
});

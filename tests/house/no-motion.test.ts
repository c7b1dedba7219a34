import { expect, test } from 'vitest';
import { sourceFiles } from './source-files.ts';

const MOVES =
  /\b(?:animation|transition|scroll-behavior|offset-path|@keyframes)\b|behavior: ?'smooth'|\.animate\(|<animate|<marquee/;

test('nothing moves by itself, so there is nothing that someone must switch off', () => {
  // Only the rule that would stop whatever a browser itself moves.
  const own = /@media \(prefers-reduced-motion: reduce\) \{\s*\* \{[^}]*\}\s*\}/;
  const moving = sourceFiles(['src', 'options-page'], ['.css', '.ts', '.tsx', '.html'])
    .map(({ path, text }) => ({ path, text: text.replace(own, '').replace(/\/\*[\s\S]*?\*\/|\/\/.*/g, '') }))
    .filter(({ text }) => MOVES.test(text));
  expect(moving.map(({ path }) => path)).toEqual([]);
  expect(MOVES.test('.a { transition: all 1s }')).toBe(true);
});

import { describe, expect, test } from 'vitest';
import { sourceFiles } from './source-files.ts';

/** Words of a page that the look and a page's own frame may both speak of. */
const PLAIN = new Set([':root', '*', 'html', 'body', 'main']);

const sheets = sourceFiles(['src', 'options-page'], ['.css']);

/** What each rule of a sheet begins with: the first class or id of each selector, or the selector itself. */
function firstNames(css: string): readonly string[] {
  const withoutRemarks = css.replace(/\/\*[\s\S]*?\*\//g, '');
  return [...withoutRemarks.matchAll(/([^{};]+)\{/g)]
    .map(([, selector = '']) => selector.trim())
    .filter((selector) => selector !== '' && !/^(?:@|from\b|to\b|\d+%)/.test(selector))
    .flatMap((selector) => selector.split(/,(?![^(]*\))/))
    .map((selector) => /[.#]-?[a-zA-Z_][\w-]*/.exec(selector)?.[0] ?? selector.trim());
}

describe('style sheets', () => {
  test('a class belongs to one sheet; another sheet speaks of it below a class of its own', () => {
    const homes = new Map<string, Set<string>>();
    for (const { path, text } of sheets) {
      for (const name of firstNames(text)) homes.set(name, (homes.get(name) ?? new Set()).add(path));
    }
    expect(homes.size).toBeGreaterThan(100);
    const shared = [...homes].filter(([name, { size }]) => size > 1 && !PLAIN.has(name));
    expect(shared.map(([name, paths]) => `${name}: ${[...paths].join(', ')}`)).toEqual([]);
  });

  test('what a rule begins with is found, whatever it is wrapped in', () => {
    expect(firstNames('/* .no {} */ @media print { .a .b, td.c > i { x: y } } #d:is(.e, .f) { .g { z: 1 } }')).toEqual([
      '.a',
      '.c',
      '#d',
      '.g',
    ]);
  });
});

// @vitest-environment jsdom
import { render } from 'preact';
import { act } from 'preact/test-utils';
import { afterEach, expect, test } from 'vitest';
import { SETUP_PARTS } from '../../../options-page/setup/setup-parts.ts';
import { WordsScreen } from '../../../options-page/words/words-screen.tsx';
import { TermLink } from '../../../src/ui/term-link.tsx';
import { GLOSSARY } from '../../../src/views/words/glossary.ts';
import { LEARN_TERMS } from '../../../src/views/words/learn-terms.ts';
import { MONEY_TERMS } from '../../../src/views/words/money-terms.ts';
import { PLAN_TERMS } from '../../../src/views/words/plan-terms.ts';
import { TERM_OF_LINE } from '../../../src/views/words/words-hash.ts';
import { sourceFiles } from '../../house/source-files.ts';

// jsdom has no layout, so there is nothing to scroll.
Element.prototype.scrollIntoView = () => undefined;
afterEach(() => act(() => render(null, document.body)));

const ids = GLOSSARY.flatMap(({ terms }) => Object.keys(terms));
const terms = GLOSSARY.flatMap((group) => Object.values(group.terms));

test('a label leads to the entry of its term, which has the focus', () => {
  act(() => render(<TermLink term="max-bid">Max bid</TermLink>, document.body));
  const hash = document.querySelector('a')?.hash ?? '';
  act(() => render(<WordsScreen term={hash.replace('#/words/', '')} />, document.body));
  expect(document.activeElement?.id).toBe('word-max-bid');
  expect(document.activeElement?.textContent).toContain('The most you can bid and still meet your rules');
});

test('without a term, or with one that is unknown, the page is read from its top', () => {
  for (const term of ['', 'no-such-term']) {
    act(() => render(<WordsScreen term={term} />, document.body));
    expect(document.querySelectorAll('.words-entry')).toHaveLength(ids.length);
    expect(document.activeElement).toBe(document.body);
  }
});

test('each term stands once, and is explained in whole sentences', () => {
  expect(new Set(ids).size).toBe(ids.length);
  expect(new Set(terms.map(({ term }) => term)).size).toBe(terms.length);
  for (const { term, meaning, from } of terms)
    for (const text of [meaning, from ?? '.']) expect(text, term).toMatch(/^(?:[A-Z“0-9].*)?\.$/);
});

test('a label of the plan, of what is owed, of what was learned or of a stamp leads to each of their entries', () => {
  const screens = sourceFiles(['options-page', 'src/ui'], ['.tsx', '.ts'])
    .map(({ text }) => text)
    .join('\n');
  // The purse is a word of its own, and no figure’s label.
  const led = Object.keys({ ...PLAN_TERMS, ...MONEY_TERMS, ...LEARN_TERMS }).filter((id) => id !== 'purse');
  expect(led.length).toBeGreaterThan(20);
  expect(led.filter((id) => !new RegExp(`term(?:=|: )["']${id}["']|'${id}'`).test(screens))).toEqual([]);
});

test('every line of the worksheet has an entry', () => {
  expect(Object.values(TERM_OF_LINE).filter((id) => !ids.includes(id))).toEqual([]);
});

test('where a figure can be changed is named as Setup names it, or is where corrections are switched', () => {
  const parts = new Map([
    ['#/learn/corrections', 'Learn › Corrections'],
    ...SETUP_PARTS.map(({ id, title }): [string, string] => [`#/setup/${id}`, `Setup › ${title}`]),
  ]);
  for (const { change } of terms) if (change) expect(change.label).toBe(parts.get(change.href));
});

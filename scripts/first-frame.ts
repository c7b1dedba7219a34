import { h } from 'preact';
import { renderToString } from 'preact-render-to-string';
import { FirstBooksFrame } from '../options-page/first/first-books-frame.tsx';
import { FirstFrame } from '../options-page/first/first-frame.tsx';

/** What is drawn first, by the templates of the page that it is written into. */
export const FIRST_FRAMES = {
  'first-wide': () => renderToString(h(FirstFrame, { narrow: false })),
  'first-narrow': () => renderToString(h(FirstFrame, { narrow: true })),
  'first-folders': () => renderToString(h(FirstBooksFrame, { part: '' })),
  'first-share': () => renderToString(h(FirstBooksFrame, { part: 'share' })),
} as const;

/** A first frame as markup, in which there is no style that the page's content security policy would refuse. */
export function firstFrame(name: keyof typeof FIRST_FRAMES): string {
  const markup = FIRST_FRAMES[name]();
  if (markup.includes('style='))
    throw new Error('The first frame has a style of its own; the page’s policy refuses it.');
  return markup;
}

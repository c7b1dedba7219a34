import { h } from 'preact';
import { renderToString } from 'preact-render-to-string';
import { FirstFrame } from '../options-page/first/first-frame.tsx';

/** The list's frame as markup, in which there is no style that the page's content security policy would refuse. */
export function firstFrame(narrow: boolean): string {
  const markup = renderToString(h(FirstFrame, { narrow }));
  if (markup.includes('style='))
    throw new Error('The first frame has a style of its own; the page’s policy refuses it.');
  return markup;
}

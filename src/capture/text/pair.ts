import type { PageNode } from '../dom/page-tree.ts';
import type { ReadFrom } from '../draft/draft-lot.ts';
import type { Meaning } from './labels.ts';

/** A value and the label that names it. */
export interface Pair {
  readonly meaning: Meaning;
  readonly label: string;
  readonly value: string;
  /** What follows the value on the same line, for a unit that stands apart: `<b>72,431</b> km`. */
  readonly after: string;
  /** The element or text that holds the value; null when it comes from a script. */
  readonly node: PageNode | null;
  /**
   * A cell beside or over its label, the rest of a line after a colon, or words that merely stand after (`run-on`) or
   * before (`trailing`) a label: the last two are easily misread, and only values of an unmistakable form are taken
   * from them.
   */
  readonly how: 'cell' | 'caption' | 'attribute' | 'colon' | 'run-on' | 'trailing';
  readonly prose: boolean;
  readonly from: ReadFrom;
}

/** What a pair is cited as. */
export function pairText(pair: Pair): string {
  return `${pair.label.replace(/\s*:$/, '')}: ${pair.value}${pair.after === '' ? '' : ` ${pair.after}`}`;
}

/** Whether the page sets label and value apart, so that even plain words can be trusted to be the value. */
export function isSetApart(pair: Pair): boolean {
  return pair.how !== 'run-on' && pair.how !== 'trailing' && !pair.prose;
}

/**
 * How much of a page is read. Every limit exists so that the largest or most hostile page costs a bounded amount of
 * work; an honest lot page stays far below all of them.
 */
export interface Budget {
  /** Elements visited, over all frames and shadow roots. */
  readonly elements: number;
  /** Depth of nesting; what lies deeper is not read. */
  readonly depth: number;
  /** Characters of text taken, in all. */
  readonly text: number;
  /** Characters of one text node or attribute. */
  readonly run: number;
  readonly attributes: number;
  readonly frames: number;
  /** Characters of one script that holds data, and how many such scripts. */
  readonly script: number;
  readonly scripts: number;
  /** Objects and depth in structured data. */
  readonly things: number;
  readonly thingDepth: number;
  /** Candidates kept for one field of one lot. */
  readonly candidates: number;
  readonly lots: number;
}

export const BUDGET: Budget = {
  elements: 120_000,
  depth: 400,
  text: 2_000_000,
  run: 20_000,
  attributes: 60,
  frames: 20,
  script: 1_000_000,
  scripts: 60,
  things: 20_000,
  thingDepth: 24,
  candidates: 40,
  lots: 300,
};

import { labelRoles } from '../roles/label-roles.ts';

/** The longest text that is taken for a label. */
export const LONGEST_LABEL = 48;
const MOST_WORDS = 6;

/** Whether a text can be the name of what stands beside it: short words without a figure, and no sentence. */
export function isLabelLike(text: string): boolean {
  if (text.length > LONGEST_LABEL || text.includes('\n') || !/\p{L}/u.test(text)) return false;
  if (/\d/.test(text.replace(/\([^)]*\)/g, '')) || /[,;]|:\s*\S/u.test(text)) return false;
  // A word cut short ends in a stop, and so does a sentence.
  if (/[!?]\s+\p{L}|\p{L}{5,}\.\s+\p{L}/u.test(text)) return false;
  // A state, and no name of what follows.
  if (/^no (?:bids?|offers?)\b/i.test(text)) return false;
  return text.split(' ').length <= MOST_WORDS;
}

/** How sure it is, 0 to 1, that a text names something that is looked for, or that is known not to be. */
export function labelStrength(text: string): number {
  if (!isLabelLike(text)) return 0;
  const { money, time, fact } = labelRoles(text);
  return Math.max(0, ...money.values(), ...time.values(), ...fact.values());
}

/** A text that is surely a label. */
export const isKnownLabel = (text: string): boolean => labelStrength(text) >= 0.8;

/** A text with a figure in it, or one that could not be a label for other reasons. */
export const isValueLike = (text: string): boolean => /\d/.test(text) || text.length > LONGEST_LABEL;

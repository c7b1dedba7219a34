import { meaningOf } from '../roles/label-list.ts';

const NOTHING =
  /^(?:n\/?a|none listed|not (?:available|listed|specified|provided|stated|given|known)|unknown|see (?:below|above|notes|photos|report)|tbd|tba|ask|call|[-–—.…?*]+|(?:select|choose)(?: (?:one|an?|the|your|all|from)\b.*|[-.… ]*)|loading\.*|private|hidden)$/i;

/** Whether words can be the value of a label: not the middle of a sentence, not a button, not a label of their own. */
export function isPlainValue(value: string, longest: number): boolean {
  if (value === '' || value.length > longest || !/[\p{L}\p{N}]/u.test(value)) return false;
  if (/^(?:(?:log|sign) ?in|login|register|click|contact|upgrade|subscribe|view|show|more)\b/i.test(value))
    return false;
  if (/^(?:is|are|was|were|will|has|have|of|to|and|or|by|if|may|must|can)\b/.test(value)) return false;
  return !NOTHING.test(value) && meaningOf(value) === undefined;
}

import { canonicalJson } from '../journal/canonical-json.ts';

/** Whether two values of a field are the same, member by member; absent is only the same as absent. */
export function isSameFact(a: unknown, b: unknown): boolean {
  if (a === b) return true;
  // Numbers and text settle it at once, and there can be a million of them.
  if (typeof a !== 'object' || typeof b !== 'object') return false;
  return canonicalJson(a) === canonicalJson(b);
}

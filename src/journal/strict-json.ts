import { type Outcome, ok, refuse } from '../domain/outcome.ts';

/** Nothing that Headroom writes is nested deeper; what is could not be hashed. */
const DEEPEST = 100;

/**
 * The value of a line of a pack or a backup. Only the very text that the program writes is taken: with a name twice, a
 * number spelled otherwise or a blank between, two readers could see two things in one line.
 */
export function valueOfLine(text: string): Outcome<unknown> {
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    return refuse('not-json', 'it is not JSON');
  }
  if (isDeep(value)) return refuse('too-deep', 'nested too deep');
  if (JSON.stringify(value) !== text) return refuse('respelled', 'it is not spelled as Headroom writes it');
  return ok(value);
}

/** Also true for a name that objects treat in a way of their own: what it holds could be hashed and yet not be seen. */
function isDeep(value: unknown): boolean {
  let level: unknown[] = [value];
  for (let depth = 0; level.length > 0; depth++) {
    if (depth > DEEPEST) return true;
    const next: unknown[] = [];
    for (const one of level) {
      if (typeof one !== 'object' || one === null) continue;
      if (Object.hasOwn(one, '__proto__')) return true;
      for (const part of Object.values(one)) if (typeof part === 'object') next.push(part);
    }
    level = next;
  }
  return false;
}

import type { PlanChoice } from '../../src/domain/plan/plan-lot.ts';

const KEYS: Readonly<Record<string, PlanChoice>> = { p: 'pinned', s: 'skipped', i: 'plan-ignored' };

/** What a letter says of the lot whose row has the focus; the same letter again takes it back. Undefined for another key. */
export function choiceOfKey(key: string, now: PlanChoice | null): PlanChoice | null | undefined {
  const choice = KEYS[key.toLowerCase()];
  return choice === undefined ? undefined : choice === now ? null : choice;
}

/** Up and down to the same button of the next row. Returns whether the key meant that. */
export function moveFocus(row: Element, { key, target }: KeyboardEvent): boolean {
  if (key !== 'ArrowDown' && key !== 'ArrowUp') return false;
  const other = key === 'ArrowDown' ? row.nextElementSibling : row.previousElementSibling;
  const at = [...row.querySelectorAll('a, button')].indexOf(target as Element);
  const there = other === null ? [] : [...other.querySelectorAll<HTMLElement>('a, button')];
  (there[at] ?? there.at(-1))?.focus();
  return true;
}

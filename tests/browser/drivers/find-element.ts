import type { Target } from './browser.ts';

/**
 * Runs in a page: puts `mark` on the visible element that `target` means, so that the driver can act on it by
 * `[data-test-mark="…"]`. False while there is none. An element that says exactly the words goes before one that
 * contains them.
 */
export function markElement(target: Target, mark: string): boolean {
  const single = (text: string | null | undefined) => (text ?? '').replace(/\s+/g, ' ').trim();
  const byIds = (ids: string | null) =>
    single(
      (ids ?? '')
        .split(/\s+/)
        .map((id) => document.getElementById(id)?.textContent)
        .join(' '),
    );
  const name = (element: Element): string => {
    const labels = 'labels' in element ? [...((element as HTMLInputElement).labels ?? [])] : [];
    return (
      byIds(element.getAttribute('aria-labelledby')) ||
      single(element.getAttribute('aria-label')) ||
      single(labels.map((label) => label.textContent).join(' ')) ||
      single(element.textContent) ||
      single(element.getAttribute('title'))
    );
  };
  const kinds = {
    button: 'button, summary, [role="button"], [role="tab"], [role="menuitem"], input[type="submit"]',
    link: 'a[href]',
    field: 'input, select, textarea, [role="textbox"], [role="switch"], [role="combobox"]',
    text: 'body *',
  };
  const pick = (): Element | undefined => {
    const visible = (element: Element) => element.checkVisibility({ visibilityProperty: true });
    if (typeof target === 'string') return [...document.querySelectorAll(target)].find(visible);
    const [kind, words] = Object.entries(target)[0] as [keyof typeof kinds, string];
    const candidates = [...document.querySelectorAll(kinds[kind])].filter(visible);
    const holding = candidates.filter((element) => name(element).includes(words));
    // Of nested elements with the same words the innermost is meant.
    const innermost = holding.filter(
      (element) => !holding.some((other) => other !== element && element.contains(other)),
    );
    return innermost.find((element) => name(element) === words) ?? innermost[0];
  };
  const element = pick();
  element?.setAttribute('data-test-mark', mark);
  return element !== undefined;
}

/** Runs in a page: the text of a marked element as a user reads it. */
export function readMarked(mark: string): string {
  const element = document.querySelector<HTMLElement>(`[data-test-mark="${mark}"]`);
  // biome-ignore lint/performance/useDomNodeTextContent: only what a user can read counts
  return (element?.innerText ?? '').replace(/\s+/g, ' ').trim();
}

/** Runs in a page: chooses the option that reads `label` in a marked list; false when there is no such option. */
export function chooseMarked(mark: string, label: string): boolean {
  const list = document.querySelector<HTMLSelectElement>(`[data-test-mark="${mark}"]`);
  const option = [...(list?.options ?? [])].find((one) => one.text.replace(/\s+/g, ' ').trim() === label);
  if (list === null || option === undefined) return false;
  list.focus();
  list.value = option.value;
  list.dispatchEvent(new Event('input', { bubbles: true }));
  list.dispatchEvent(new Event('change', { bubbles: true }));
  return true;
}

/** Runs in a page: whether it shows `words` anywhere. */
export function showsWords(words: string): boolean {
  // biome-ignore lint/performance/useDomNodeTextContent: only what a user can read counts
  return document.body.innerText.replace(/\s+/g, ' ').includes(words);
}

/** Runs in a page: how many visible elements match. */
export function countVisible(css: string): number {
  return [...document.querySelectorAll(css)].filter((element) => element.checkVisibility()).length;
}

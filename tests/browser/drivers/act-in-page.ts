/** Runs in a page that can't be reached with mouse and keyboard: clicks, once the answer to us is on its way. */
export function clickInside(css: string): boolean {
  const element = document.querySelector<HTMLElement>(css);
  // The click may close the page, and then no answer would come any more.
  setTimeout(() => element?.click(), 0);
  return element !== null;
}

/** Runs in a page that can't be reached with mouse and keyboard: replaces what a field holds. */
export function fillInside(css: string, text: string): boolean {
  const field = document.querySelector<HTMLInputElement>(css);
  if (field === null) return false;
  field.focus();
  field.value = text;
  field.dispatchEvent(new Event('input', { bubbles: true }));
  field.dispatchEvent(new Event('change', { bubbles: true }));
  return true;
}

/** Runs in a page: where the middle of an element is in the window. */
export function middleOf(css: string): { readonly x: number; readonly y: number } {
  const element = document.querySelector(css);
  if (element === null) throw new Error(`the page has no ${css}`);
  element.scrollIntoView({ block: 'center' });
  const { left, top, width, height } = element.getBoundingClientRect();
  return { x: left + width / 2, y: top + height / 2 };
}

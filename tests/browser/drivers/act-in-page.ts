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

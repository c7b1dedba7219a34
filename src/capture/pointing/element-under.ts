/** The innermost element of the page at a point of the window, through open shadow roots and frames of the same site. */
export function elementUnder(document: Document, x: number, y: number, not: Element): Element | null {
  let found = document.elementsFromPoint(x, y).find((element) => element !== not) ?? null;
  for (let depth = 0; found !== null && depth < 40; depth++) {
    const deeper: Element | null = insideShadow(found, x, y) ?? insideFrame(found, x, y, not);
    if (deeper === null || deeper === found) return found;
    found = deeper;
  }
  return found;
}

function insideShadow(element: Element, x: number, y: number): Element | null {
  return (
    element.shadowRoot?.elementsFromPoint(x, y).find((inner) => inner.getRootNode() === element.shadowRoot) ?? null
  );
}

function insideFrame(element: Element, x: number, y: number, not: Element): Element | null {
  if (element.localName !== 'iframe') return null;
  const document = (element as HTMLIFrameElement).contentDocument;
  if (document === null) return null;
  const box = element.getBoundingClientRect();
  return elementUnder(document, x - box.left - element.clientLeft, y - box.top - element.clientTop, not);
}

/** Where an element is in the outermost window, for drawing a frame round it. */
export function boxOf(element: Element): { left: number; top: number; width: number; height: number } {
  const { left, top, width, height } = element.getBoundingClientRect();
  const outer = element.ownerDocument.defaultView?.frameElement ?? null;
  if (outer === null) return { left, top, width, height };
  const around = boxOf(outer);
  return { left: left + around.left + outer.clientLeft, top: top + around.top + outer.clientTop, width, height };
}

/** The closest element around that holds more text. */
export function widen(element: Element): Element {
  const text = (element.textContent ?? '').trim();
  for (let up = element.parentElement; up !== null && up.localName !== 'body'; up = up.parentElement) {
    if ((up.textContent ?? '').trim() !== text) return up;
  }
  return element;
}

/** The first element within that holds any text. */
export function narrow(element: Element): Element {
  return [...element.children].find((child) => (child.textContent ?? '').trim() !== '') ?? element;
}

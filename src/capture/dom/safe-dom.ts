/**
 * Reads a page's nodes through the getters of the DOM's own prototypes. A page can shadow `parentNode` or
 * `querySelector` of a form or of the document with a named input or image; the prototypes it can't touch, because a
 * content script has its own.
 */
export interface SafeDom {
  readonly root: (document: Document) => Element | null;
  readonly view: (document: Document) => (Window & typeof globalThis) | null;
  readonly firstChild: (node: Node) => Node | null;
  readonly nextSibling: (node: Node) => Node | null;
  readonly parent: (node: Node) => Node | null;
  readonly type: (node: Node) => number;
  readonly value: (node: Node) => string;
  readonly tag: (element: Element) => string;
  readonly attribute: (element: Element, name: string) => string | null;
  readonly attributeNames: (element: Element) => readonly string[];
  readonly shadow: (element: Element) => ShadowRoot | null;
  readonly frame: (element: Element) => Document | null;
  /** What an input or choice shows now, as against what its markup said. */
  readonly shownValue: (element: Element) => string;
  /** The words of what is chosen in a choice. */
  readonly chosen: (choice: Element) => string;
}

export const ELEMENT_NODE = 1;
export const TEXT_NODE = 3;

export function safeDom(document: Document): SafeDom {
  const root = get(document, 'documentElement');
  const element = (root ?? document) as object;
  // The signatures are those of the DOM standard; the lookups are dynamic because the objects may be shadowed.
  const read = <Value>(owner: object, name: string) => {
    const getter = getterOf(owner, name);
    return (of: object): Value => getter.call(of) as Value;
  };
  const attribute = methodOf(element, 'getAttribute');
  const names = methodOf(element, 'getAttributeNames');
  const nodeValue = read<string | null>(element, 'nodeValue');
  const localName = read<string>(element, 'localName');
  const shadowRoot = read<ShadowRoot | null>(element, 'shadowRoot');
  return {
    root: (of) => get(of, 'documentElement') as Element | null,
    view: (of) => get(of, 'defaultView') as (Window & typeof globalThis) | null,
    firstChild: read<Node | null>(element, 'firstChild'),
    nextSibling: read<Node | null>(element, 'nextSibling'),
    parent: read<Node | null>(element, 'parentNode'),
    type: read<number>(element, 'nodeType'),
    value: (node) => nodeValue(node) ?? '',
    tag: (of) => localName(of).toLowerCase(),
    attribute: (of, name) => attribute.call(of, name) as string | null,
    attributeNames: (of) => names.call(of) as string[],
    shadow: shadowRoot,
    frame: frameDocument,
    chosen: (of) => {
      const options = get(of, 'selectedOptions') as HTMLCollection | undefined;
      return options?.[0]?.textContent ?? '';
    },
    shownValue: (of) => {
      const value = get(of, 'value');
      return typeof value === 'string' ? value : '';
    },
  };
}

/** The document inside a frame of the same origin; null for any other, which the browser guards. */
function frameDocument(frame: Element): Document | null {
  try {
    return (get(frame, 'contentDocument') as Document | null) ?? null;
  } catch {
    // Another origin's frame: some engines throw instead of answering null.
    return null;
  }
}

/** A property as the DOM defines it, whatever an own or named property of the object says. */
function get(of: object, name: string): unknown {
  return descriptorOf(of, name)?.get?.call(of);
}

function getterOf(of: object, name: string): () => unknown {
  const getter = descriptorOf(of, name)?.get;
  if (getter === undefined) throw new TypeError(`this document's nodes have no ${name}`);
  return getter;
}

function methodOf(of: object, name: string): (...input: unknown[]) => unknown {
  const method: unknown = descriptorOf(of, name)?.value;
  if (typeof method !== 'function') throw new TypeError(`this document's nodes have no ${name}()`);
  return method as (...input: unknown[]) => unknown;
}

function descriptorOf(of: object, name: string): PropertyDescriptor | undefined {
  for (let proto: unknown = Object.getPrototypeOf(of); proto !== null; proto = Object.getPrototypeOf(proto)) {
    const descriptor = Object.getOwnPropertyDescriptor(proto, name);
    if (descriptor !== undefined) return descriptor;
  }
  return undefined;
}

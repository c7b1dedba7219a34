/** An aggregate of an OFX file: its own values, by their names in capitals, and the aggregates within it. */
export interface OfxAggregate {
  readonly name: string;
  readonly values: Map<string, string>;
  readonly parts: OfxAggregate[];
}

/** The aggregates that a statement is read from. Every other element is a value, or is passed over. */
const AGGREGATES = new Set([
  'OFX',
  'STMTTRNRS',
  'STMTRS',
  'CCSTMTTRNRS',
  'CCSTMTRS',
  'BANKACCTFROM',
  'CCACCTFROM',
  'BANKTRANLIST',
  'STMTTRN',
  'PAYEE',
  'BANKACCTTO',
  'CCACCTTO',
  'CURRENCY',
  'ORIGCURRENCY',
  'LEDGERBAL',
  'AVAILBAL',
  'STATUS',
  'FI',
]);

const TAG = /<(\/?)([A-Za-z][A-Za-z0-9_.-]*)([^<>]*)>/y;
const COMMENT = { start: '<!--', end: '-->' } as const;
const CDATA = { start: '<![CDATA[', end: ']]>' } as const;

/**
 * The elements of an OFX file of either kind: 1.x, where values have no end tag (OFX 1.0.2, 2.3.2), and 2.x, which is XML.
 * An aggregate that is not closed ends where the one around it does. Entities that a file declares itself are not read.
 */
export function ofxElements(text: string): OfxAggregate {
  const root: OfxAggregate = { name: '', values: new Map(), parts: [] };
  const stack: OfxAggregate[] = [root];
  let element: string | null = null;
  let value = '';
  const close = () => {
    const words = value.trim();
    if (element !== null && words !== '') stack.at(-1)?.values.set(element, words);
    element = null;
    value = '';
  };
  for (let at = 0; at < text.length; ) {
    const next = text.indexOf('<', at);
    const mark = next < 0 ? text.length : next;
    if (element !== null) value += decoded(text.slice(at, mark));
    at = mark;
    const block = [COMMENT, CDATA].find(({ start }) => text.startsWith(start, mark));
    if (block !== undefined) {
      const found = text.indexOf(block.end, mark + block.start.length);
      const last = found < 0 ? text.length : found;
      if (block === CDATA && element !== null) value += text.slice(mark + block.start.length, last);
      at = last + block.end.length;
      continue;
    }
    TAG.lastIndex = mark;
    const [whole, slash, tag = '', rest = ''] = TAG.exec(text) ?? [];
    at += whole?.length ?? 1;
    if (whole === undefined) continue;
    const name = tag.toUpperCase();
    close();
    if (slash === '/') end(stack, name);
    else if (AGGREGATES.has(name)) begin(stack, name);
    else if (!rest.endsWith('/')) element = name;
  }
  close();
  return root;
}

function begin(stack: OfxAggregate[], name: string): void {
  // None of them stands within its own kind, so the one before was not closed.
  end(stack, name);
  const aggregate: OfxAggregate = { name, values: new Map(), parts: [] };
  stack.at(-1)?.parts.push(aggregate);
  stack.push(aggregate);
}

function end(stack: OfxAggregate[], name: string): void {
  const at = stack.findLastIndex((one) => one.name === name);
  if (at > 0) stack.length = at;
}

const ENTITIES: Readonly<Record<string, string>> = { lt: '<', gt: '>', amp: '&', quot: '"', apos: "'", nbsp: ' ' };

const decoded = (text: string): string =>
  text.replace(/&(?:#(\d{1,7})|#x([0-9a-f]{1,6})|([a-z]{2,6}));/gi, (whole, decimal, hex, name) => {
    if (name !== undefined) return ENTITIES[String(name).toLowerCase()] ?? whole;
    const code = Number.parseInt(decimal ?? hex, decimal === undefined ? 16 : 10);
    return code > 0 && code <= 0x10ffff ? String.fromCodePoint(code) : whole;
  });

/** Every aggregate of a name, wherever it is. */
export function aggregatesOf(root: OfxAggregate, ...names: readonly string[]): OfxAggregate[] {
  return root.parts.flatMap((part) => (names.includes(part.name) ? [part] : aggregatesOf(part, ...names)));
}

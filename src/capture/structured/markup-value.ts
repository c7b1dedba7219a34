import { cleanLine } from '../dom/clean-text.ts';
import { attributeOf, type PageElement, textOf } from '../dom/page-tree.ts';

const ADDRESS_IN: Readonly<Record<string, string>> = {
  a: 'href',
  area: 'href',
  link: 'href',
  img: 'src',
  object: 'data',
};
const VALUE_IN: Readonly<Record<string, string>> = { meta: 'content', data: 'value', meter: 'value', time: 'datetime' };

/**
 * The value of a marked-up property. `content` counts on every element, as schema.org's examples use it; a link whose
 * address is a fragment or a schema.org name stands for what it names, any other link for its text.
 */
export function markupValue(element: PageElement): string {
  const content = element.attributes.get('content');
  if (content !== undefined) return content.trim();
  const valueIn = VALUE_IN[element.tag];
  const value = valueIn === undefined ? undefined : element.attributes.get(valueIn);
  if (value !== undefined) return value.trim();
  const addressIn = ADDRESS_IN[element.tag];
  const address = addressIn === undefined ? '' : attributeOf(element, addressIn).trim();
  const text = cleanLine(textOf(element, { veiled: true }));
  if (element.tag === 'a' || element.tag === 'area') return text === '' ? address : text;
  return address === '' ? text : address;
}

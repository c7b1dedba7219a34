import { cleanLine } from '../dom/clean-text.ts';
import { attributeOf, type PageElement } from '../dom/page-tree.ts';
import type { CellTexts } from './cell-texts.ts';
import { isKnownLabel, isLabelLike } from './label-like.ts';
import type { Pair } from './pair.ts';

const LABEL_ATTRIBUTES = [
  'data-label',
  'data-title',
  'data-th',
  'data-column',
  'data-header',
  'data-name',
  'data-field',
];

/** Labels that stand in attributes: of narrow tables, of icons, of fields of a form; and whole facts that only they tell. */
export function attributePairs(
  element: PageElement,
  texts: CellTexts,
  byId: ReadonlyMap<string, PageElement>,
  labelFor: ReadonlyMap<string, PageElement>,
): readonly Pair[] {
  if (element.attributes.size === 0) return [];
  const pair = (label: string, value: string): Pair => ({
    label,
    value,
    after: '',
    node: element,
    how: 'attribute',
    prose: false,
    from: 'page-text',
  });
  const found: Pair[] = [];
  const shown = texts.shown(element);
  for (const name of LABEL_ATTRIBUTES) {
    const label = cleanLine(attributeOf(element, name));
    if (label !== '' && isLabelLike(label) && shown !== '' && shown !== label) found.push(pair(label, shown));
  }
  // A key of the page's own, made for its style sheet.
  if (found.length === 0 && shown !== '') {
    for (const [name, value] of element.attributes) {
      const label = name.startsWith('data-') && !LABEL_ATTRIBUTES.includes(name) ? cleanLine(value) : '';
      if (
        label !== '' &&
        !shown.toLowerCase().startsWith(label.toLowerCase()) &&
        isKnownLabel(label) &&
        /^\p{Lu}/u.test(label)
      )
        found.push(pair(label, shown));
    }
  }
  const spoken = cleanLine(attributeOf(element, 'aria-label'));
  const title = cleanLine(attributeOf(element, 'title'));
  const named = namedBy(element, texts, byId, labelFor);
  if (spoken !== '') {
    const told = /^([^:]{2,40}): ?(.{1,200})$/.exec(spoken);
    if (told?.[1] !== undefined && told[2] !== undefined && isLabelLike(told[1])) found.push(pair(told[1], told[2]));
    else if (isKnownLabel(spoken) && shown !== '' && shown.toLowerCase() !== spoken.toLowerCase())
      found.push(pair(spoken, shown));
  }
  // An icon's name stands in its title.
  if (
    title !== '' &&
    isKnownLabel(title) &&
    shown !== '' &&
    shown.length <= 120 &&
    shown.toLowerCase() !== title.toLowerCase()
  )
    found.push(pair(title, shown));
  if (
    element.tag === 'input' &&
    /\bbid\b|offer|mise|puja|oferta|gebot/i.test(`${named} ${attributeOf(element, 'name')} ${spoken}`)
  ) {
    const [least, step] = [attributeOf(element, 'min'), attributeOf(element, 'step')];
    if (/^[1-9]\d{1,6}(?:\.\d\d)?$/.test(least)) found.push(pair('Next bid', `$${least}`));
    if (/^[1-9]\d{1,4}(?:\.\d\d)?$/.test(step)) found.push(pair('Bid increment', `$${step}`));
  }
  if (named !== '') {
    // What is exact stands in the title where the text is short for it.
    if (/\d/.test(title) && title !== shown) found.push(pair(named, title));
    else if (shown !== '') found.push(pair(named, shown));
  }
  return found;
}

function namedBy(
  element: PageElement,
  texts: CellTexts,
  byId: ReadonlyMap<string, PageElement>,
  labelFor: ReadonlyMap<string, PageElement>,
): string {
  const ids = attributeOf(element, 'aria-labelledby').split(/\s+/).slice(0, 4);
  const spoken = ids
    .flatMap((id) => byId.get(id) ?? [])
    .map((one) => texts.label(one))
    .filter((text) => text !== '');
  const whole = cleanLine(spoken.join(' ')).replace(/\s*:$/, '');
  if (whole !== '' && isLabelLike(whole) && whole !== texts.shown(element)) return whole;
  const label = labelFor.get(attributeOf(element, 'id'));
  const text = label === undefined ? '' : cleanLine(texts.label(label)).replace(/\s*:$/, '');
  return isLabelLike(text) ? text : '';
}

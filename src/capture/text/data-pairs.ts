import type { PageElement } from '../dom/page-tree.ts';
import { labelStrength } from './label-like.ts';
import type { Pair } from './pair.ts';

const NOT_FACTS =
  /^data-(?:v-|react|ng|testid|test|qa|track|ga|gtm|analytics|toggle|target|bs-|id$|index|key|src|srcset|lazy|role|theme|action|act$|controller|url|href)/;
/** Keys that name something else than a label of the same word would. */
const OTHER_KEYS =
  /start|open|reserve|min|max|fee|count|total|label|format|type|class|state|status|sold|final|estimate|retail/;

/**
 * Facts in an element's `data-` attributes, for a page's own programs: `data-odo="97655"` beside `data-odo-unit="mi"`,
 * `data-bid-cents="1335000"`. Only such as name what is looked for.
 */
export function dataPairs(element: PageElement): readonly Pair[] {
  const pairs: Pair[] = [];
  for (const [name, value] of element.attributes) {
    if (!name.startsWith('data-') || value === '' || value.length > 120 || NOT_FACTS.test(name)) continue;
    const key = name.slice(5).replaceAll('-', ' ');
    const inCents = /\b(?:cents|minor)\b/.test(key);
    const label = key
      .replace(/\b(?:cents|minor|value|text|usd|number|no)\b/g, ' ')
      .replace(/\s+/g, ' ')
      .trim();
    if (OTHER_KEYS.test(label) || /\b(?:unit|uom|currency|zone|tz)$/.test(label) || labelStrength(label) < 0.8)
      continue;
    if (inCents && !/^\d{3,11}$/.test(value)) continue;
    const unit = element.attributes.get(`${name}-unit`) ?? element.attributes.get(`${name}-uom`) ?? '';
    const shown = inCents ? `$${(Number(value) / 100).toFixed(2)}` : unit === '' ? value : `${value} ${unit}`;
    pairs.push({ label, value: shown, after: '', node: element, how: 'data', prose: false, from: 'structured-data' });
  }
  return pairs;
}

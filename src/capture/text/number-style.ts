import type { DecimalMark } from '../../domain/money/written-number.ts';
import type { Line } from './lines.ts';

const POINT_DECIMALS = /(?<!\d)\d{1,3}(?:[,'’]\d{3})+(?:\.\d{1,2})?(?![\d,])/;
const COMMA_DECIMALS = /(?<!\d)(?:\d{1,3}(?:\.\d{3})+,\d{1,2}|\d{1,3}(?:\.\d{3}){2,})(?![\d.])/;
// No odometer shows thousandths: here the point can only set off thousands.
const POINT_IN_DISTANCE = /(?<![\d.,])[1-9]\d{0,2}\.\d{3} ?(?:km|kms|mi|miles|millas)\b/i;
// Languages of places that write 1.234,56; Switzerland and the Spanish of North America don't.
const COMMA_LANGUAGES = /^(?:de|es|it|pt|nl|tr|id|da|nb|no|el|hr|sl|ro)\b/i;

/**
 * How the page writes numbers, from those that can be read in only one way; else from its language. Undefined when
 * it is not known, and then a figure that could mean two amounts is refused.
 */
export function numberStyle(lines: readonly Line[], language: string): DecimalMark | undefined {
  const point = lines.some((line) => POINT_DECIMALS.test(line.text));
  const comma = lines.some((line) => COMMA_DECIMALS.test(line.text) || POINT_IN_DISTANCE.test(line.text));
  if (point !== comma) return point ? '.' : ',';
  if (point && comma) return undefined;
  return COMMA_LANGUAGES.test(language) && !/-(?:US|MX|PR|CH|LI)$/i.test(language) ? ',' : undefined;
}

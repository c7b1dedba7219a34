import { cleanLine } from '../dom/clean-text.ts';
import { canNameFact, labelRoles } from '../roles/label-roles.ts';
import type { FieldReader } from './field-reader.ts';
import { isPlainValue } from './plain-value.ts';

const LONGEST = 1900;
const PLAINLY =
  /^(?:overall |vehicle |known |primary |secondary )?(?:condition|damages?|état|condición|zustand|cond)\b/i;

/** Remarks that tell of money, of another car or to a program are about something else than how the car is. */
const OF_OTHER_THINGS = /\$ ?\d|[<>{}]|(?<![\p{L}\d])[A-HJ-NPR-Z0-9]{17}(?![\p{L}\d])/iu;

/** Everything that the page says under condition, damage, announcements and the like, each under its own label. */
export const readCondition: FieldReader = ({ pairs }, into) => {
  const parts: { label: string; value: string; plainly: boolean }[] = [];
  for (const pair of pairs) {
    const { fact } = labelRoles(pair.label);
    const weight = fact.get('condition') ?? 0;
    if (weight === 0 || !canNameFact(pair.label, pair.value) || (pair.prose && pair.how !== 'colon')) continue;
    const value = cleanLine(pair.value);
    if (!isPlainValue(value, LONGEST)) continue;
    const label = pair.label.replace(/\s*:$/, '');
    const plainly = PLAINLY.test(label);
    if (!plainly && OF_OTHER_THINGS.test(value)) continue;
    parts.push({ label, value, plainly });
  }
  // What is announced stands in for a statement of condition only where there is none.
  const plainly = parts.filter((part) => part.plainly);
  const all = plainly.length > 0 ? plainly : parts;
  const told = all.filter(
    (part, at) =>
      !all.some((other, place) => other.value.includes(part.value) && (place < at || other.value !== part.value)),
  );
  const [first, ...more] = told;
  if (first === undefined) return;
  const value = more.length === 0 ? first.value : told.map((part) => `${part.label}: ${part.value}`).join('\n');
  const text = told.map((part) => `${part.label}: ${part.value}`).join(' ');
  // What is announced or remarked need not be all there is to say of its state.
  const score = told.every((part) => part.plainly) ? 0.88 : 0.5;
  into.add('condition', { value: value.slice(0, 2000), from: 'page-text', text, score });
};

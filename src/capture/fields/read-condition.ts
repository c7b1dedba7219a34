import { cleanLine } from '../dom/clean-text.ts';
import { canNameFact, labelRoles } from '../roles/label-roles.ts';
import type { FieldReader } from './field-reader.ts';
import { isPlainValue } from './plain-value.ts';

const LONGEST = 1900;
const PLAINLY =
  /^(?:overall |vehicle |known |primary |secondary )?(?:condition|damages?|état|condición|zustand|cond)\b/i;

/** Everything that the page says under condition, damage, announcements and the like, each under its own label. */
export const readCondition: FieldReader = ({ pairs }, into) => {
  const parts: { label: string; value: string; plainly: boolean }[] = [];
  for (const pair of pairs) {
    const { fact } = labelRoles(pair.label);
    const weight = fact.get('condition') ?? 0;
    if (weight === 0 || !canNameFact(pair.label, pair.value) || (pair.prose && pair.how !== 'colon')) continue;
    const value = cleanLine(pair.value);
    if (!isPlainValue(value, LONGEST) || parts.some((part) => part.value.includes(value))) continue;
    const label = pair.label.replace(/\s*:$/, '');
    parts.push({ label, value, plainly: PLAINLY.test(label) });
  }
  // What is announced stands in for a statement of condition only where there is none.
  const plainly = parts.filter((part) => part.plainly);
  const told = plainly.length > 0 ? plainly : parts;
  const [first, ...more] = told;
  if (first === undefined) return;
  const value = more.length === 0 ? first.value : told.map((part) => `${part.label}: ${part.value}`).join('\n');
  const text = told.map((part) => `${part.label}: ${part.value}`).join(' ');
  // What is announced or remarked need not be all there is to say of its state.
  const score = told.every((part) => part.plainly) ? 0.88 : 0.5;
  into.add('condition', { value: value.slice(0, 2000), from: 'page-text', text, score });
};

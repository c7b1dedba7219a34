import type * as z from 'zod/mini';
import { type BrokenRule, brokenRule } from './broken-rule.ts';
import { fieldWords } from './field-words.ts';
import { placeInWords, valueAt } from './setup-words.ts';
import { valueInWords } from './value-words.ts';

/** One thing that is wrong with a setup, where it is, and what to do about it. */
export interface SetupFault {
  /** Where, as keys and positions; narrowed to the very row where a rule about a whole list is broken. */
  readonly path: readonly PropertyKey[];
  /** The same in words: "Buy fees › Riverbend › first table › band 3". Empty for the file as a whole. */
  readonly place: string;
  /** A full sentence. */
  readonly message: string;
}

type Issue = z.core.$ZodIssue;

/**
 * Puts what zod found into words.
 * @param issues as `safeParse` reports them, with paths that start at a section of the setup
 * @param root the value that was checked, from which names are taken
 */
export function setupFaults(issues: readonly Issue[], root: unknown): readonly SetupFault[] {
  return withoutRepeats(issues.flatMap((issue) => faultsOf(issue, root)));
}

function faultsOf(issue: Issue, root: unknown): readonly SetupFault[] {
  if (issue.code === 'unrecognized_keys') {
    return issue.keys.map((key) =>
      faultAt([...issue.path, key], root, 'This field is not known. Check its spelling, or remove it.'),
    );
  }
  const broken: BrokenRule | undefined = issue.code === 'custom' ? brokenRule(issue.path, root) : undefined;
  if (broken !== undefined) return [faultAt(broken.path, root, broken.message)];
  return [faultAt(issue.path, root, messageOf(issue, root))];
}

/** Two rules can be broken by the same row and say the same of it. */
function withoutRepeats(faults: readonly SetupFault[]): readonly SetupFault[] {
  return [...new Map(faults.map((fault) => [JSON.stringify([fault.path, fault.message]), fault])).values()];
}

/** "Buy fees › Riverbend › first table › band 3: starts at $900, which is not above …" */
export function faultSentence(fault: SetupFault): string {
  if (fault.place === '') return fault.message;
  return `${fault.place}: ${fault.message.charAt(0).toLowerCase()}${fault.message.slice(1)}`;
}

function faultAt(path: readonly PropertyKey[], root: unknown, message: string): SetupFault {
  return { path, place: placeInWords(path, root), message };
}

function messageOf(issue: Issue, root: unknown): string {
  const key = String(issue.path.at(-1) ?? '');
  const value = issue.path.reduce<unknown>(valueAt, root);
  if (value === undefined && issue.code !== 'custom') return 'This is missing. Add it.';
  switch (issue.code) {
    case 'invalid_type':
      return `Must be ${typeWords(issue.expected, key)}.`;
    case 'too_small':
    case 'too_big':
      return sizeMessage(issue, unitKey(issue.path));
    case 'invalid_value':
      return `Must be ${oneOf(issue.values)}.`;
    case 'invalid_union':
      return `Must be ${oneOf('options' in issue ? (issue.options ?? []) : [])}.`;
    case 'invalid_format':
      if (issue.format === 'date') return 'Must be a date such as 2026-03-01.';
      if (key === 'from' || key === 'to' || key === 'cutOff')
        return 'Must be a time of day on a 24-hour clock, such as 09:30.';
      return `${quoted(value)} is not in the form that is needed.`;
    case 'custom':
      if (key === 'zone') return `${quoted(value)} is not a time zone known here. Write one such as America/Denver.`;
      return sentence(issue.message);
    default:
      return `The ${fieldWords(key)} can’t be read.`;
  }
}

/** The key that carries the unit: of an element of a plain list, the list's. */
const unitKey = (path: readonly PropertyKey[]) => String(path.findLast((key) => typeof key === 'string') ?? '');

function typeWords(expected: string, key: string): string {
  if (expected === 'int' || expected === 'number') {
    if (/Cents|^cents|^(low|likely|high)$/.test(key)) return 'a whole number of cents, such as 12345 for $123.45';
    if (key.endsWith('Ppm') || key === 'chance') return 'a whole number of parts per million, such as 80000 for 8%';
    return 'a whole number';
  }
  if (expected === 'boolean') return 'true or false';
  if (expected === 'string') return 'text in quotes';
  if (expected === 'array') return 'a list in square brackets';
  if (expected === 'object') return 'a group of fields in braces';
  return `of the kind “${expected}”`;
}

function sizeMessage(issue: z.core.$ZodIssueTooSmall | z.core.$ZodIssueTooBig, key: string): string {
  const small = issue.code === 'too_small';
  const limit = Number(small ? issue.minimum : issue.maximum);
  if (issue.origin === 'string') {
    return small ? 'This is required.' : `At most ${limit} characters. Shorten it.`;
  }
  if (issue.origin === 'array' || issue.origin === 'set') {
    return small ? 'Add at least one.' : `At most ${limit}. Remove some.`;
  }
  return `Must be ${small ? 'at least' : 'at most'} ${valueInWords(key, limit)}.`;
}

function oneOf(values: readonly unknown[]): string {
  const words = values.map(quoted);
  return words.length < 2
    ? (words[0] ?? 'one of the known kinds')
    : `${words.slice(0, -1).join(', ')} or ${words.at(-1)}`;
}

function quoted(value: unknown): string {
  const text = typeof value === 'string' ? value : (JSON.stringify(value) ?? 'nothing');
  return `“${text.length > 60 ? `${text.slice(0, 60)}…` : text}”`;
}

const sentence = (message: string) =>
  `${message.charAt(0).toUpperCase()}${message.slice(1)}${/[.!?]$/.test(message) ? '' : '.'}`;

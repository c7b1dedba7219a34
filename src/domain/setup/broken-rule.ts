import { PPM } from '../money/rate.ts';
import { valueAt } from './setup-words.ts';
import { percentInWords, valueInWords } from './value-words.ts';

/** The very row that breaks a rule about a list or a group, and what to do about it. */
export interface BrokenRule {
  readonly path: readonly PropertyKey[];
  readonly message: string;
}

/**
 * Finds the row behind a broken rule. zod reports such a rule on the list as a whole; whoever mends it wants the row.
 * @returns undefined for a rule that is not known here; its own message then stands
 */
export function brokenRule(path: readonly PropertyKey[], root: unknown): BrokenRule | undefined {
  const value = path.reduce<unknown>(valueAt, root);
  const key = path.at(-1);
  if (Array.isArray(value)) {
    if (key === 'bands' || key === 'increments')
      return bandOutOfOrder(path, value, key === 'bands' ? 'fee' : 'bid increment');
    if (/leadMinutes$/i.test(String(key))) return leadOutOfOrder(path, value);
    if (key === 'curtailments') return curtailmentFault(path, value);
    return twice(path, value);
  }
  if (typeof valueAt(value, 'from') === 'string' && typeof valueAt(value, 'to') === 'string') {
    return {
      path,
      message: `Ends at ${valueAt(value, 'to')}, which is not after ${valueAt(value, 'from')}. Make the end later; hours past midnight go on the next day.`,
    };
  }
  if (valueAt(value, 'validTo') !== undefined) {
    return {
      path,
      message: `Ends on ${valueAt(value, 'validTo')}, before it starts on ${valueAt(value, 'validFrom')}. Move one of the two dates.`,
    };
  }
  if (valueAt(value, 'minimumCents') !== undefined) {
    return {
      path,
      message: `The minimum of ${valueInWords('cents', valueAt(value, 'minimumCents'))} is above the maximum of ${valueInWords('cents', valueAt(value, 'maximumCents'))}. Lower the one or raise the other.`,
    };
  }
  return undefined;
}

function bandOutOfOrder(
  path: readonly PropertyKey[],
  bands: readonly unknown[],
  of: 'fee' | 'bid increment',
): BrokenRule | undefined {
  const band = of === 'fee' ? 'band' : of;
  const starts = bands.map((band) => Number(valueAt(band, 'fromCents')));
  if (starts[0] !== 0) {
    return {
      path: [...path, 0],
      message: `Starts at ${valueInWords('cents', starts[0])}. The first ${band} must start at $0, or no ${of} is known below it.`,
    };
  }
  const at = starts.findIndex((start, i) => i > 0 && start <= Number(starts[i - 1]));
  if (at < 0) return undefined;
  const before = valueInWords('cents', starts[at - 1]);
  return {
    path: [...path, at],
    message:
      starts[at] === starts[at - 1]
        ? `Starts at ${before}, like the ${band} before it. Give one of them another start, or remove it.`
        : `Starts at ${valueInWords('cents', starts[at])}, below the ${before} of the ${band} before it. Raise it, or put the ${band}s in order.`,
  };
}

function leadOutOfOrder(path: readonly PropertyKey[], leads: readonly unknown[]): BrokenRule | undefined {
  const at = leads.findIndex((lead, i) => i > 0 && Number(lead) >= Number(leads[i - 1]));
  if (at < 0) return undefined;
  return {
    path: [...path, at],
    message: `${leads[at]} minutes before the close is not later than ${leads[at - 1]} minutes before it. Put the reminders in order, from the earliest to the last.`,
  };
}

function curtailmentFault(path: readonly PropertyKey[], list: readonly unknown[]): BrokenRule | undefined {
  const days = list.map((row) => Number(valueAt(row, 'day')));
  const at = days.findIndex((day, i) => i > 0 && day <= Number(days[i - 1]));
  if (at >= 0) {
    return {
      path: [...path, at],
      message: `Day ${days[at]} does not come after day ${days[at - 1]} of the one before it. Put the days in order.`,
    };
  }
  let total = 0;
  const over = list.findIndex((row) => {
    total += Number(valueAt(row, 'sharePpm'));
    return total > PPM;
  });
  if (over < 0) return undefined;
  return {
    path: [...path, over],
    message: `With this one, ${percentInWords(total)} of the advance is paid back, which is more than all of it. Lower a share.`,
  };
}

function twice(path: readonly PropertyKey[], list: readonly unknown[]): BrokenRule | undefined {
  const ids = list.map((entry) => valueAt(entry, 'id'));
  const at = ids.findIndex((id, i) => typeof id === 'string' && ids.indexOf(id) < i);
  if (at < 0) return undefined;
  return {
    path: [...path, at],
    message: `Another entry already has the id “${ids[at]}”. Give this one its own id.`,
  };
}

import { describe, expect, test } from 'vitest';
import { callExample } from '../../../options-page/setup/alerts/call-example.ts';
import { readLeads } from '../../../options-page/setup/alerts/read-leads.ts';
import { alertRulesSchema } from '../../../src/domain/setup/alert-rules.ts';

const read = (text: string) => {
  const outcome = readLeads(text);
  return outcome.ok ? outcome.value : outcome.message;
};

describe('minutes before a close', () => {
  test('are read in any order and kept from the earliest call to the last, each once', () => {
    expect(read('5, 60, 15')).toEqual([60, 15, 5]);
    expect(read('10 1h, 30 and 10')).toEqual([60, 30, 10]);
    expect(read('90 minutes; 5min')).toEqual([90, 5]);
  });

  test('that are none, or too far away, or too many are refused with what to write', () => {
    expect(read('soon')).toMatch(/“soon” is not a number of minutes/);
    expect(read('0')).toMatch(/Between 1 minute and a day/);
    expect(read('25h')).toMatch(/Between 1 minute and a day/);
    expect(read('1 2 3 4 5 6 7 8 9 10 11')).toMatch(/At most 10/);
  });

  test('that are read always pass the rules of the setup', () => {
    const leadMinutes = read('3 1440 1 7');
    expect(alertRulesSchema.safeParse({ leadMinutes }).success).toBe(true);
  });
});

test('the example tells the calls as times of day', () => {
  const rules = alertRulesSchema.parse({ leadMinutes: [60, 15], placedLeadMinutes: [], afterCloseMinutes: null });
  expect(callExample(rules)).toBe(
    'A lot closes at 2:05 PM. Reminders at 1:05 PM, 1:50 PM, the first one quiet; with the proxy placed: none. Nothing is asked afterwards.',
  );
  expect(callExample({ ...rules, leadMinutes: [1440], afterCloseMinutes: 5 })).toMatch(
    /2:05 PM the day before.*At 2:10 PM, or when the busy hours are over, you are asked/,
  );
});

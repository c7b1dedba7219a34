import type { Tried } from './checker.ts';

const COLUMNS = ['refused', 'found', 'told', 'own account', 'passes', 'not findable', 'more than expected', 'MISSED'];

/** What a checker made of the table, in numbers, and why what it could not find can't be found. */
export function tableOf(checker: string, tried: readonly Tried[]): string {
  const counts = new Map<string, number>();
  const reasons = new Map<string, number>();
  const add = (map: Map<string, number>, key: string) => map.set(key, (map.get(key) ?? 0) + 1);
  for (const { id, sides } of tried)
    for (const { name, expectation, outcome, verdict } of sides) {
      const unfindable = verdict === 'ok' && expectation.startsWith('not findable');
      add(counts, `${kindOf(id)}, ${name}|${unfindable ? 'not findable' : verdict === 'ok' ? outcome : verdict}`);
      if (unfindable) add(reasons, expectation.slice('not findable: '.length));
    }
  const rows = [...new Set([...counts.keys()].map((key) => key.split('|')[0] ?? ''))];
  const line = (row: string) =>
    `${row.padEnd(24)}${COLUMNS.map((column) => String(counts.get(`${row}|${column}`) ?? 0).padStart(column.length + 2)).join('')}`;
  return [
    `${checker.padEnd(24)}${COLUMNS.map((column) => `  ${column}`).join('')}`,
    ...rows.map(line),
    ...[...reasons].map(([why, n]) => `${String(n).padStart(5)} not findable: ${why}`),
  ].join('\n');
}

const KINDS: Readonly<Record<string, string>> = {
  C: 'honest',
  P: 'packs',
  B: 'backups',
  S: 'signatures and stamps',
  M: 'row of a batch',
  V: 'given out as older',
};

const kindOf = (id: string): string => KINDS[id.charAt(0)] ?? id;

import { readFileSync } from 'node:fs';
import { type DeviceId, deviceIdSchema } from '../../src/journal/ids.ts';
import { subjectOf } from '../../src/team/message/subjects.ts';
import type { Wire } from '../../src/team/wire/wire.ts';
import { value } from '../store/open-test-store.ts';
import { TEAM } from '../team/invented-team.ts';
import { realServer } from '../team-server/real-server.ts';
import { atMost, type BenchRow } from './run-bench.ts';

const DEVICES = Number(process.env.TEAM_DEVICES ?? 500);
const EACH = 10;
/** A sealed message of one entry. */
const DATA = 'x'.repeat(900);
const MOST = 3;
/** Milliseconds: all of them ask at once, and a busy machine answers the last one late. */
const PATIENCE = 120_000;

/** All devices of a group publishing at once through one server, against one device publishing as many one after the other. */
export async function run(): Promise<BenchRow[]> {
  const devices = Array.from({ length: DEVICES }, (_, i) => deviceIdSchema.parse(`D${`${i}`.padStart(9, '0')}`));
  const server = await realServer(devices);
  try {
    const wires: [DeviceId, Wire][] = [];
    // Not all at once: a server takes new connections one after the other anyway.
    for (const device of devices) wires.push([device, await server.connect(device, undefined, PATIENCE)]);
    const pid = server.process(0);
    console.log(`  ${DEVICES} devices connected: ${sayProcess(pid)}`);
    const [first] = wires;
    if (first === undefined) throw new Error('no device');
    const before = processOf(pid).seconds;
    const alone = await timed(() => publish(first, DEVICES * EACH));
    const middle = processOf(pid).seconds;
    const together = await timed(() => Promise.all(wires.slice(1).map((one) => publish(one, EACH))));
    const count = DEVICES * EACH;
    for (const [who, ms, cpu] of [
      ['one device', alone, middle - before],
      [`${DEVICES} devices`, together, processOf(pid).seconds - middle],
    ] as const)
      console.log(
        `  ${who}: ${count} messages of 900 bytes, ${Math.round((count / ms) * 1000)} a second, ${cpu.toFixed(1)} s of the server's processor time`,
      );
    console.log(`  at the end: ${sayProcess(pid)}`);
    const what = `${DEVICES} devices publishing ${EACH} messages each, against one publishing ${count}`;
    await Promise.all(wires.map(([, wire]) => wire.close()));
    return [atMost(MOST, what, together, alone)];
  } finally {
    server.stop();
  }
}

async function publish([device, wire]: readonly [DeviceId, Wire], count: number): Promise<void> {
  let after = 0;
  for (let i = 0; i < count; i++)
    after = value(await wire.publish({ subject: subjectOf(TEAM, device), data: DATA, after }));
}

async function timed(work: () => Promise<unknown>): Promise<number> {
  const started = performance.now();
  await work();
  return performance.now() - started;
}

/** Of Linux alone: processor time in seconds (proc(5): utime and stime in hundredths) and memory in MB. */
function processOf(pid: number): { readonly seconds: number; readonly megabytes: number } {
  const fields = readFileSync(`/proc/${pid}/stat`, 'utf8').split(') ')[1]?.split(' ') ?? [];
  const pages = Number(readFileSync(`/proc/${pid}/statm`, 'utf8').split(' ')[1]);
  return { seconds: (Number(fields[11]) + Number(fields[12])) / 100, megabytes: (pages * 4096) / 1e6 };
}

function sayProcess(pid: number): string {
  const { seconds, megabytes } = processOf(pid);
  return `the server has used ${seconds.toFixed(1)} s of processor time and has ${megabytes.toFixed(0)} MB`;
}

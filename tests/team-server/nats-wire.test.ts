import { jetstreamManager } from '@nats-io/jetstream';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { everySubject, streamOf, subjectOf } from '../../src/team/message/subjects.ts';
import type { Wire } from '../../src/team/wire/wire.ts';
import { value } from '../store/open-test-store.ts';
import { TEAM } from '../team/invented-team.ts';
import { testDevice } from '../team/test-device.ts';
import { type RealServer, realServer } from './real-server.ts';

const [ONE, TWO] = [testDevice(1), testDevice(2)];
const [ON_ONE, ON_TWO] = [subjectOf(TEAM, ONE), subjectOf(TEAM, TWO)];
let server: RealServer;
let one: Wire;
let two: Wire;

beforeAll(async () => {
  server = await realServer([ONE, TWO]);
  [one, two] = [await server.connect(ONE), await server.connect(TWO)];
});
afterAll(async () => {
  await one?.close();
  await two?.close();
  server?.stop();
});

describe('a real server', () => {
  test('stores messages of two devices and hands them out in one order, a page at a time', async () => {
    expect(await one.publish({ subject: ON_ONE, data: 'a', after: 0 })).toEqual({ ok: true, value: 1 });
    expect(await two.publish({ subject: ON_TWO, data: 'b', after: 0 })).toEqual({ ok: true, value: 2 });
    expect(await one.publish({ subject: ON_ONE, data: 'c “”', after: 1 })).toEqual({ ok: true, value: 3 });
    const data = async (place: number, subject: string, most: number) =>
      value(await two.from(place, subject, most)).map((message) => [message.place, message.data]);
    expect(await data(1, everySubject(TEAM), 2)).toEqual([
      [1, 'a'],
      [2, 'b'],
    ]);
    expect(await data(3, everySubject(TEAM), 2)).toEqual([[3, 'c “”']]);
    expect(await data(2, ON_ONE, 9)).toEqual([[3, 'c “”']]);
    expect(await data(4, everySubject(TEAM), 2)).toEqual([]);
  });

  test('tells the last message of a device and the one at a place, with the server’s time', async () => {
    const last = value(await two.lastOn(ON_ONE));
    expect(last).toMatchObject({ place: 3, data: 'c “”', subject: ON_ONE });
    expect(Math.abs((last?.at ?? 0) - Date.now())).toBeLessThan(60_000);
    expect(value(await one.at(2))?.data).toBe('b');
    expect([value(await one.at(99)), value(await one.lastOn(subjectOf(TEAM, testDevice(9))))]).toEqual([null, null]);
  });

  test('refuses a second message for the same place in a device’s chain', async () => {
    expect(await one.publish({ subject: ON_ONE, data: 'fork', after: 1 })).toMatchObject({ reason: 'not-last' });
    expect(await one.publish({ subject: ON_ONE, data: 'fork', after: 0 })).toMatchObject({ reason: 'not-last' });
    expect(value(await one.lastOn(ON_ONE))?.data).toBe('c “”');
  });

  test('refuses a message on another device’s subject', async () => {
    expect(await two.publish({ subject: ON_ONE, data: 'forged', after: 3 })).toMatchObject({ reason: 'not-allowed' });
    expect(value(await one.lastOn(ON_ONE))?.data).toBe('c “”');
  });

  test('takes a message of 2 MB and refuses one that is too large, with what to do', async () => {
    expect((await two.publish({ subject: ON_TWO, data: 'x'.repeat(2_000_000), after: 2 })).ok).toBe(true);
    const large = await two.publish({ subject: ON_TWO, data: 'x'.repeat(9_000_000), after: 4 });
    expect(large).toMatchObject({ reason: 'too-large', message: expect.stringMatching(/max_payload/) });
  });

  test('lets nobody delete a message or empty the stream, not even whoever runs it', async () => {
    const connection = await server.keeper();
    const { streams } = await jetstreamManager(connection);
    await expect(streams.deleteMessage(streamOf(TEAM), 1)).rejects.toThrow(/delete/);
    await expect(streams.purge(streamOf(TEAM))).rejects.toThrow(/purge/);
    await expect(streams.update(streamOf(TEAM), { deny_purge: false })).rejects.toThrow();
    expect(value(await one.at(1))?.data).toBe('a');
    await connection.close();
  });
});

import { type ChildProcess, spawn } from 'node:child_process';
import { readFileSync, statSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { createUser } from '@nats-io/nkeys';
import { Agent, setGlobalDispatcher } from 'undici';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { ensureTeamServer } from '../../scripts/ensure-team-server.ts';
import { teamServerCommand } from '../../scripts/team-server/team-server-command.ts';
import { removeFolder, temporaryFolder } from '../../scripts/temporary-folder.ts';
import { subjectOf } from '../../src/team/message/subjects.ts';
import { teamIdSchema } from '../../src/team/message/team-id.ts';
import { connectToServer } from '../../src/team/wire/nats-wire.ts';
import { value } from '../store/open-test-store.ts';
import { freePorts, patiently, testDevice, untilOpen } from './real-server.ts';

let folder: string;
let running: ChildProcess | undefined;
beforeEach(() => {
  folder = temporaryFolder();
});
afterEach(() => {
  running?.kill('SIGKILL');
  removeFolder(folder);
});

const command = (...flags: string[]) => teamServerCommand([folder, ...flags], '/');

test('a written server runs over TLS, takes the computers that were let in, and one that was put out no more', async () => {
  const [port = 0] = await freePorts(1);
  const [one, two] = [createUser(), createUser()];
  const letIn = [`${testDevice(1)}=${one.getPublicKey()}`, `${testDevice(2)}=${two.getPublicKey()}`];
  const told = value(
    await command('--host', 'localhost', '--port', `${port}`, ...letIn.flatMap((text) => ['--let-in', text])),
  );
  expect(told).toContain(`nats-server -c ${path.join(folder, 'server-1.conf')}`);
  expect(await command('--ready')).toMatchObject({ ok: false, reason: 'no-server' });

  // The port for other programs is fixed; another server of this computer may have it.
  const conf = path.join(folder, 'server-1.conf');
  const withFreePort = async () =>
    writeFileSync(conf, readFileSync(conf, 'utf8').replace(/127\.0\.0\.1:4222/, '127.0.0.1:-1'));
  await withFreePort();
  running = spawn(ensureTeamServer(), ['-c', conf], { stdio: 'ignore' });
  await untilOpen(port);
  expect(value(await command('--ready'))).toMatch(/stream was made/);
  expect(value(await command('--ready'))).toMatch(/stream is there/);
  await withFreePort();

  // As a browser that was told to trust the authority.
  setGlobalDispatcher(new Agent({ connect: { ca: readFileSync(path.join(folder, 'tls', 'authority.pem'), 'utf8') } }));
  const team = teamIdSchema.parse(JSON.parse(readFileSync(path.join(folder, 'team.json'), 'utf8')).team);
  const connected = (device: typeof one, digit: number) =>
    connectToServer({
      addresses: [`wss://localhost:${port}`],
      team,
      device: testDevice(digit),
      seed: device.getSeed(),
      patience: 2_000,
    });
  const wire = value(await connected(one, 1));
  const subject = subjectOf(team, testDevice(1));
  expect(await wire.publish({ subject, data: 'a', after: 0 })).toEqual({ ok: true, value: 1 });

  value(await command('--put-out', testDevice(1)));
  await withFreePort();
  running.kill('SIGHUP');
  await patiently(async () => {
    // Until the server has read the new file, it answers only that another message is the last.
    expect(await wire.publish({ subject, data: 'b', after: 99 })).toMatchObject({ reason: 'no-connection' });
  });
  expect((await connected(one, 1)).ok).toBe(false);
  const other = value(await connected(two, 2));
  expect(value(await other.from(1, subject, 10)).map(({ data }) => data)).toEqual(['a']);
  await other.close();
});

test('three servers get a file each, that the server itself finds good, and passwords nobody else can read', async () => {
  value(await command('--host', 'a.example,b.example,c.example'));
  for (const n of [1, 2, 3]) {
    const file = path.join(folder, `server-${n}.conf`);
    expect(statSync(file).mode & 0o077).toBe(0);
    const check = spawn(ensureTeamServer(), ['-t', '-c', file], { stdio: 'ignore' });
    expect(await new Promise((done) => check.once('exit', done))).toBe(0);
  }
});

test('a certificate is made anew for other hosts only, and one that was given is remembered', async () => {
  const own = () => readFileSync(path.join(folder, 'tls', 'server.pem'), 'utf8');
  value(await command('--host', 'a.example'));
  const first = own();
  value(await command('--port', '9443'));
  expect(own()).toBe(first);
  value(await command('--host', 'b.example'));
  expect(own()).not.toBe(first);
  value(await command('--certificate', 'given.pem', '--key', 'given.key'));
  value(await command('--port', '8443'));
  expect(readFileSync(path.join(folder, 'server-1.conf'), 'utf8')).toContain('cert_file: "/given.pem"');
});

test('what was typed wrong is refused with what to do, and nothing is written', async () => {
  for (const [flags, reason] of [
    [['--host', 'wss://team.example'], 'bad-host'],
    [['--host', 'a.example,b.example'], 'bad-host'],
    [['--port', '0'], 'bad-port'],
    [['--let-in', 'DEV0000001'], 'bad-device'],
    [['--put-out', 'DEV0000001'], 'no-such-device'],
    [['--host', 'a.example', '--certificate', 'x.pem'], 'usage'],
    [['--nothing'], 'usage'],
    [['--ready'], 'no-team'],
  ] as const)
    expect(await command(...flags), flags.join(' ')).toMatchObject({ ok: false, reason });
  writeFileSync(path.join(folder, 'team.json'), '{"team":');
  expect(await command()).toMatchObject({ ok: false, reason: 'damaged' });
});

import { type ChildProcess, spawn } from 'node:child_process';
import { readFileSync, statSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { Agent, setGlobalDispatcher } from 'undici';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { ensureTeamServer } from '../../scripts/ensure-team-server.ts';
import { teamServerCommand } from '../../scripts/team-server/team-server-command.ts';
import { removeFolder, temporaryFolder } from '../../scripts/temporary-folder.ts';
import { readServerKeys } from '../../src/team/access/server-keys.ts';
import { newTeam, startTeam } from '../../src/team/joining/start-team.ts';
import { connectToServer } from '../../src/team/wire/nats-wire.ts';
import { value } from '../store/open-test-store.ts';
import { testDevice } from '../team/test-device.ts';
import { freePorts, untilOpen } from './real-server.ts';

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
const startText = (told: string): string => /^headroom-server\.\S+$/m.exec(told)?.[0] ?? '';

test('a written server runs over TLS, and a team is started on it once, with the text that was printed', async () => {
  const [port = 0] = await freePorts(1);
  const told = value(await command('--host', 'localhost', '--port', `${port}`));
  const conf = path.join(folder, 'server-1.conf');
  expect(told).toContain(`nats-server -c ${conf}`);
  // The port for other programs is fixed; another server of this computer may have it.
  writeFileSync(conf, readFileSync(conf, 'utf8').replace(/127\.0\.0\.1:4222/, '127.0.0.1:-1'));
  running = spawn(ensureTeamServer(), ['-c', conf], { stdio: 'ignore' });
  await untilOpen(port);

  // As a browser that was told to trust the authority.
  setGlobalDispatcher(new Agent({ connect: { ca: readFileSync(path.join(folder, 'tls', 'authority.pem'), 'utf8') } }));
  const server = value(readServerKeys(`  ${startText(told)}\n`));
  expect(server.addresses).toEqual([`wss://localhost:${port}`]);
  const start = async (digit: number) => {
    const state = await newTeam(server, 'Cottonwood', { device: testDevice(digit), name: 'owner', signKey: null });
    const { team, credentials, addresses, device: name } = state;
    const wire = value(await connectToServer({ addresses, team, name, credentials, patience: 2_000 }));
    const started = [await startTeam(state, wire), await startTeam(state, wire)];
    await wire.close();
    return started;
  };
  expect(await start(1)).toEqual([
    { ok: true, value: null },
    { ok: true, value: null },
  ]);
  expect((await start(2))[0]).toMatchObject({ reason: 'started-before' });
});

test('three servers get a file each, that the server itself finds good, and keys nobody else can read', async () => {
  value(await command('--host', 'a.example,b.example,c.example'));
  for (const n of [1, 2, 3]) {
    const file = path.join(folder, `server-${n}.conf`);
    expect(statSync(file).mode & 0o077).toBe(0);
    const check = spawn(ensureTeamServer(), ['-t', '-c', file], { stdio: 'ignore' });
    expect(await new Promise((done) => check.once('exit', done))).toBe(0);
  }
});

test('a certificate is made anew for other hosts only, one that was given is remembered, and the keys stay', async () => {
  const own = () => readFileSync(path.join(folder, 'tls', 'server.pem'), 'utf8');
  const before = value(readServerKeys(startText(value(await command('--host', 'a.example')))));
  const first = own();
  value(await command('--port', '9443'));
  expect(own()).toBe(first);
  value(await command('--host', 'b.example'));
  expect(own()).not.toBe(first);
  value(await command('--certificate', 'given.pem', '--key', 'given.key'));
  const after = value(readServerKeys(startText(value(await command('--port', '8443')))));
  expect(readFileSync(path.join(folder, 'server-1.conf'), 'utf8')).toContain('cert_file: "/given.pem"');
  expect(after).toEqual({ ...before, addresses: ['wss://b.example:8443'] });
});

test('what was typed wrong is refused with what to do, and nothing is written', async () => {
  for (const [flags, reason] of [
    [['--host', 'wss://team.example'], 'bad-host'],
    [['--host', 'a.example,b.example'], 'bad-host'],
    [['--port', '0'], 'bad-port'],
    [['--host', 'a.example', '--certificate', 'x.pem'], 'usage'],
    [['--nothing'], 'usage'],
  ] as const)
    expect(await command(...flags), flags.join(' ')).toMatchObject({ ok: false, reason });
  writeFileSync(path.join(folder, 'team.json'), '{"team":');
  expect(await command()).toMatchObject({ ok: false, reason: 'damaged' });
});

test('a text that is not whole starts nothing', async () => {
  const text = startText(value(await command()));
  for (const bad of [text.slice(0, -1), text.slice(1), '', 'headroom-server.', text.replace('server', 'invitation')])
    expect(readServerKeys(bad)).toMatchObject({ reason: 'not-a-start' });
});

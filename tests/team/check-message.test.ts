import { beforeEach, describe, expect, test } from 'vitest';
import type { Envelope } from '../../src/journal/read-entry.ts';
import { checkMessage } from '../../src/team/incoming/check-message.ts';
import type { Membership } from '../../src/team/incoming/membership.ts';
import { keyOfSeed, makeSeed } from '../../src/team/keys/user-key.ts';
import { readMessage, writeMessage } from '../../src/team/message/entries-message.ts';
import { proofOf } from '../../src/team/message/proof.ts';
import { subjectOf } from '../../src/team/message/subjects.ts';
import { teamIdSchema } from '../../src/team/message/team-id.ts';
import { makeTeamKey, seal, type TeamKey, unseal } from '../../src/team/seal/seal.ts';
import type { Delivered } from '../../src/team/wire/wire.ts';
import { at } from '../folds/journal-arbitrary.ts';
import { value } from '../store/open-test-store.ts';
import { threeStores } from '../store/store-acts.ts';
import { inventedServer } from './invented-server.ts';
import { type Computer, inventedTeam, TEAM } from './invented-team.ts';

let key: TeamKey;
let messages: readonly Delivered[];
let buyer: Computer;
let manager: Computer;

/** The buyer has sent three messages of an entry each; the manager has none of them. */
beforeEach(async () => {
  key = await makeTeamKey(1);
  const names = ['buyer', 'manager'];
  const stores = await threeStores(names);
  const computers = await inventedTeam(names, key);
  [buyer, manager] = [at(computers, 0), at(computers, 1)];
  const server = inventedServer();
  for (const notes of ['one', 'two', 'three']) {
    value(await at(stores, 0).addLots('typed', [{ facts: { notes } }]));
    await buyer.send(server.wire);
  }
  messages = server.messages;
});

/** What the manager's computer makes of a message; the reason, or how many entries are new. */
async function seen(message: Delivered, membership: Membership = manager.membership): Promise<string | number> {
  const checked = await checkMessage(message, membership, manager.journal);
  if (!checked.ok) expect(checked.message).toMatch(/^Message \d+ .*\.$/);
  return checked.ok ? checked.value.fresh.length : checked.reason;
}

const entriesOf = async (message: Delivered): Promise<readonly Envelope[]> =>
  value(readMessage(value(await unseal(message.data, () => key.key)).text)).entries as Envelope[];

/** The first message with other entries in it, sealed and signed by the buyer's computer. */
async function rewritten(entries: readonly Envelope[]): Promise<Delivered> {
  const head = await buyer.journal.signedEnd(at(entries, entries.length - 1));
  return { ...at(messages, 0), data: await seal(writeMessage({ team: TEAM, entries, head }), key) };
}

async function take(message: Delivered): Promise<void> {
  const { fresh, head, stored, sighting } = value(await checkMessage(message, manager.membership, manager.journal));
  value(await manager.journal.takeIn([{ entries: fresh, head, stored, sighting }]));
}

describe('a message of the team', () => {
  test('is taken when all is right, and brings nothing new when it comes again', async () => {
    expect(await seen(at(messages, 0))).toBe(1);
    await take(at(messages, 0));
    expect(await seen({ ...at(messages, 0), place: 9 })).toBe(0);
  });

  test('waits when the one before it was held back, or comes later', async () => {
    expect(await seen(at(messages, 1))).toBe('missing');
    await take(at(messages, 0));
    expect(await seen(at(messages, 2))).toBe('missing');
  });

  test('is refused when a letter of it was altered', async () => {
    const { data, ...rest } = at(messages, 0);
    expect(await seen({ ...rest, data: `${data.slice(0, -2)}${data.endsWith('AA') ? 'BB' : 'AA'}` })).toBe('altered');
  });

  test('is refused when it stands under another device, another team or nobody', async () => {
    const message = at(messages, 0);
    const other = teamIdSchema.parse('TEAM000000000002');
    expect(await seen({ ...message, subject: subjectOf(TEAM, manager.device) })).toBe('moved');
    expect(await seen({ ...message, subject: subjectOf(other, buyer.device) })).toBe('other-team');
    expect(await seen({ ...message, subject: 'headroom' })).toBe('other-team');
  });

  test('waits when its key is not here', async () => {
    expect(await seen(at(messages, 0), { ...manager.membership, keys: new Map() })).toBe('no-key');
  });

  test('is refused from a device that nobody let in, and what one wrote after it was put out', async () => {
    const { membership } = manager;
    expect(await seen(at(messages, 0), { ...membership, members: new Map() })).toBe('stranger');
    const members = new Map([...membership.members].map(([device, member]) => [device, { ...member, ends: 1 }]));
    expect(await seen(at(messages, 0), { ...membership, members })).toBe(1);
    expect(await seen(at(messages, 1), { ...membership, members })).toBe('put-out');
  });

  test('is proven by the key that the server knows where a browser can’t sign', async () => {
    const [{ membership }, entries] = [manager, await entriesOf(at(messages, 0))];
    const { signed: _, ...head } = await buyer.journal.signedEnd(at(entries, 0));
    const [seed, other] = [makeSeed(), makeSeed()];
    const member = { publicKey: null, userKey: keyOfSeed(seed).getPublicKey(), ends: null };
    const members = new Map([[buyer.device, member]]);
    const proven = async (proof?: string) =>
      seen(
        { ...at(messages, 0), data: await seal(writeMessage({ team: TEAM, entries, head, proof }), key) },
        { ...membership, members },
      );
    expect([await proven(proofOf(head, seed)), await proven(proofOf(head, other)), await proven()]).toEqual([
      1,
      'unsigned',
      'unsigned',
    ]);
  });

  test('is refused when an entry in it is none, was changed, or is of another device', async () => {
    const [entry] = await entriesOf(at(messages, 0));
    if (entry === undefined) throw new Error('no entry');
    expect(await seen(await rewritten([{ ...entry, author: '' }]))).toBe('bad-entry');
    expect(await seen(await rewritten([{ ...entry, author: 'somebody' }]))).toBe('changed');
    const head = await buyer.journal.signedEnd(entry);
    const data = await seal(writeMessage({ team: TEAM, entries: [{ ...entry, device: manager.device }], head }), key);
    expect(await seen({ ...at(messages, 0), data })).toBe('other-device');
  });

  test('is refused when it writes a place in the chain anew', async () => {
    await take(at(messages, 0));
    const [entry] = await entriesOf(at(messages, 0));
    if (entry === undefined) throw new Error('no entry');
    expect(await seen(await rewritten([{ ...entry, author: 'somebody' }]))).toBe('forked');
  });

  test('is refused when another member of the team sealed it in the device’s name', async () => {
    const entries = await entriesOf(at(messages, 0));
    const last = at(entries, 0);
    const { signed, ...unsigned } = await manager.journal.signedEnd(last);
    const as = async (head: typeof unsigned) => ({
      ...at(messages, 0),
      data: await seal(writeMessage({ team: TEAM, entries, head }), key),
    });
    expect(await seen(await as(unsigned))).toBe('unsigned');
    expect(await seen(await as({ ...unsigned, ...(signed && { signed }) }))).toBe('other-signer');
    const own = (await buyer.journal.signedEnd(last)).signed;
    if (own === undefined) throw new Error('this Node can’t sign');
    const bad = { ...own, signature: signed?.signature ?? '' };
    expect(await seen(await as({ ...unsigned, ...{ signed: bad } }))).toBe('bad-signature');
  });

  test('waits for the update when a newer Headroom wrote it', async () => {
    const text = value(await unseal(at(messages, 0).data, () => key.key)).text;
    const newer = text.replace('"version":1', '"version":2');
    expect(await seen({ ...at(messages, 0), data: await seal(newer, key) })).toBe('newer');
    expect(await seen({ ...at(messages, 0), data: await seal('{}', key) })).toBe('not-a-message');
  });
});

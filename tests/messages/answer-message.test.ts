import { describe, expect, test, vi } from 'vitest';
import { answerMessage, type From, type Handlers } from '../../src/messages/answer-message.ts';
import { askBackground } from '../../src/messages/ask-background.ts';
import { PROTOCOL } from '../../src/messages/protocol.ts';

const handlers = (): Handlers => ({
  'plan-again': vi.fn(async () => ({ planned: 3 })),
  'try-notice': vi.fn(async () => ({ taken: true })),
  'pointing-done': vi.fn(async () => ({})),
});
const OWN: From = { sender: 'own-page', tab: undefined };
const PAGE: From = { sender: 'web-page', tab: 7 };

describe('the table of messages', () => {
  test('lets the reader in a web page say that something was pointed at, and nothing else', async () => {
    const all = handlers();
    const heard = Object.keys(PROTOCOL).filter(
      (name) => answerMessage({ headroom: name, request: {} }, PAGE, all) !== null,
    );
    expect(heard).toEqual(['pointing-done']);
    expect(all['pointing-done']).toHaveBeenCalledWith({}, PAGE);
    expect(all['plan-again']).not.toHaveBeenCalled();
    expect(all['try-notice']).not.toHaveBeenCalled();
  });

  test('lets that one message carry nothing at all', async () => {
    for (const request of [{ place: 'forged' }, { bid: 9000 }, 'read', null, [], { __proto__: { tab: 3 }, tab: 3 }]) {
      const all = handlers();
      const answer = await answerMessage({ headroom: 'pointing-done', request }, PAGE, all);
      expect(answer).toMatchObject({ ok: false, name: 'BadRequest' });
      expect(all['pointing-done']).not.toHaveBeenCalled();
    }
  });

  test('leaves what is not ours to other listeners, at once', () => {
    for (const stray of [
      null,
      'hello',
      { other: 1 },
      { headroom: 'constructor', request: {} },
      { headroom: 'nothing', request: {} },
    ]) {
      expect(answerMessage(stray, OWN, handlers())).toBeNull();
    }
  });

  test('refuses a request that does not fit, without calling the handler', async () => {
    const all = handlers();
    const answer = await answerMessage({ headroom: 'plan-again', request: { extra: 1 } }, OWN, all);
    expect(answer).toMatchObject({ ok: false, name: 'BadRequest' });
    expect(all['plan-again']).not.toHaveBeenCalled();
  });

  test('carries a reply there and back, and an error as an error with its cause', async () => {
    const working = (message: unknown) => answerMessage(message, OWN, handlers()) ?? Promise.resolve(undefined);
    expect(await askBackground(working, 'plan-again', {})).toEqual({ planned: 3 });
    const failing: Handlers = { ...handlers(), 'try-notice': () => Promise.reject(new TypeError('no screen')) };
    const broken = (message: unknown) => answerMessage(message, OWN, failing) ?? Promise.resolve(undefined);
    await expect(askBackground(broken, 'try-notice', {})).rejects.toMatchObject({
      message: 'no screen',
      cause: { name: 'TypeError' },
    });
  });

  test('says so when nobody answers', async () => {
    await expect(askBackground(async () => undefined, 'plan-again', {})).rejects.toThrow(
      'nobody answered "plan-again"',
    );
  });
});

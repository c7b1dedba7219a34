import { describe, expect, test, vi } from 'vitest';
import { answerMessage, type Handlers } from '../../src/messages/answer-message.ts';
import { askBackground } from '../../src/messages/ask-background.ts';
import { PROTOCOL } from '../../src/messages/protocol.ts';

const handlers = (): Handlers => ({
  'plan-again': vi.fn(async () => ({ planned: 3 })),
  'try-notice': vi.fn(async () => ({ shown: true })),
});

describe('the table of messages', () => {
  test('lets no web page send any of them', () => {
    for (const name of Object.keys(PROTOCOL)) {
      const all = handlers();
      expect(answerMessage({ headroom: name, request: {} }, 'web-page', all)).toBeNull();
      for (const handler of Object.values(all)) expect(handler).not.toHaveBeenCalled();
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
      expect(answerMessage(stray, 'own-page', handlers())).toBeNull();
    }
  });

  test('refuses a request that does not fit, without calling the handler', async () => {
    const all = handlers();
    const answer = await answerMessage({ headroom: 'plan-again', request: { extra: 1 } }, 'own-page', all);
    expect(answer).toMatchObject({ ok: false, name: 'BadRequest' });
    expect(all['plan-again']).not.toHaveBeenCalled();
  });

  test('carries a reply there and back, and an error as an error with its cause', async () => {
    const working = (message: unknown) => answerMessage(message, 'own-page', handlers()) ?? Promise.resolve(undefined);
    expect(await askBackground(working, 'plan-again', {})).toEqual({ planned: 3 });
    const failing: Handlers = { ...handlers(), 'try-notice': () => Promise.reject(new TypeError('no screen')) };
    const broken = (message: unknown) => answerMessage(message, 'own-page', failing) ?? Promise.resolve(undefined);
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

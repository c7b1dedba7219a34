import type { CDPSession } from 'playwright-core';
import { clickInside, fillInside } from './act-in-page.ts';
import type { Popup } from './browser.ts';
import { DrivenSurface } from './driven-surface.ts';

interface Evaluated {
  readonly result?: { readonly result: { readonly value?: unknown }; readonly exceptionDetails?: { text: string } };
  readonly error?: { readonly message: string };
}

/** The popup is no tab, so it is spoken to by the browser's protocol, in messages wrapped into messages. */
export class ChromiumPopup extends DrivenSurface implements Popup {
  readonly #protocol: CDPSession;
  readonly #targetId: string;
  readonly #sessionId: string;
  #lastId = 0;

  private constructor(protocol: CDPSession, targetId: string, sessionId: string) {
    super();
    this.#protocol = protocol;
    this.#targetId = targetId;
    this.#sessionId = sessionId;
  }

  static async attach(protocol: CDPSession, targetId: string): Promise<ChromiumPopup> {
    const { sessionId } = await protocol.send('Target.attachToTarget', { targetId, flatten: false });
    return new ChromiumPopup(protocol, targetId, sessionId);
  }

  async run<Args extends readonly unknown[], Result>(
    task: (...args: Args) => Result | Promise<Result>,
    ...args: Args
  ): Promise<Result> {
    const answer = await this.#send('Runtime.evaluate', {
      expression: `(async () => (${task})(...${JSON.stringify(args)}))()`,
      awaitPromise: true,
      returnByValue: true,
    });
    const failure = answer.error?.message ?? answer.result?.exceptionDetails?.text;
    if (failure !== undefined) throw new Error(failure);
    return answer.result?.result.value as Result;
  }

  async isOpen(): Promise<boolean> {
    const { targetInfos } = await this.#protocol.send('Target.getTargets');
    return targetInfos.some((target) => target.targetId === this.#targetId);
  }

  async close(): Promise<void> {
    await this.#protocol.send('Target.closeTarget', { targetId: this.#targetId });
  }

  protected async clickCss(css: string): Promise<void> {
    await this.run(clickInside, css);
  }

  protected async fillCss(css: string, text: string): Promise<void> {
    await this.run(fillInside, css, text);
  }

  #send(method: string, params: object): Promise<Evaluated> {
    const id = ++this.#lastId;
    const protocol = this.#protocol;
    return new Promise((resolve, reject) => {
      const settle = () => {
        protocol.off('Target.receivedMessageFromTarget', take);
        protocol.off('Target.detachedFromTarget', fail);
      };
      const take = ({ sessionId, message }: { sessionId: string; message: string }) => {
        const answer: Evaluated & { id?: number } = JSON.parse(message);
        if (sessionId !== this.#sessionId || answer.id !== id) return;
        settle();
        resolve(answer);
      };
      const fail = ({ sessionId }: { sessionId: string }) => {
        if (sessionId !== this.#sessionId) return;
        settle();
        reject(new Error('the popup has closed'));
      };
      protocol.on('Target.receivedMessageFromTarget', take);
      protocol.on('Target.detachedFromTarget', fail);
      const message = JSON.stringify({ id, method, params });
      protocol.send('Target.sendMessageToTarget', { sessionId: this.#sessionId, message }).catch((error: unknown) => {
        settle();
        reject(error);
      });
    });
  }
}

import { connect, type Socket } from 'node:net';

type Json = null | boolean | number | string | readonly Json[] | { readonly [key: string]: Json | undefined };
type Parameters = Readonly<Record<string, unknown>>;

interface Waiting {
  readonly resolve: (result: Json) => void;
  readonly reject: (error: Error) => void;
}

const COLON = ':'.charCodeAt(0);

/**
 * Firefox's own remote control, for which no package is needed: JSON over TCP, each message preceded by its length in
 * bytes and a colon. A command is `[0, id, name, parameters]`, its answer `[1, id, error, result]`.
 */
export class Marionette {
  readonly #socket: Socket;
  readonly #waiting = new Map<number, Waiting>();
  #received: Buffer = Buffer.alloc(0);
  #lastId = 0;
  #queue: Promise<unknown> = Promise.resolve();
  #greeted: () => void = () => undefined;

  private constructor(socket: Socket) {
    this.#socket = socket;
    socket.on('data', (bytes) => this.#take(bytes));
    socket.on('close', () => this.#failAll());
    socket.on('error', () => this.#failAll());
  }

  /** Connects, waits for the greeting and opens a session. Rejects when nobody listens on `port`. */
  static async connect(port: number): Promise<Marionette> {
    const socket = await new Promise<Socket>((resolve, reject) => {
      const one = connect(port, '127.0.0.1', () => resolve(one));
      one.once('error', reject);
    });
    const marionette = new Marionette(socket);
    await new Promise<void>((resolve) => {
      marionette.#greeted = resolve;
    });
    await marionette.send('WebDriver:NewSession', { strictFileInteractability: false });
    await marionette.send('WebDriver:SetTimeouts', { script: 60_000, pageLoad: 60_000, implicit: 0 });
    return marionette;
  }

  /** Sends one command; the answer may be anything, so the caller says what it expects. */
  send<Result extends Json>(name: string, parameters: Parameters = {}): Promise<Result> {
    const id = ++this.#lastId;
    return new Promise((resolve, reject) => {
      this.#waiting.set(id, { resolve: (result) => resolve(result as Result), reject });
      const text = JSON.stringify([0, id, name, parameters]);
      this.#socket.write(`${Buffer.byteLength(text)}:${text}`);
    });
  }

  /** Runs `work` while nobody else does: which tab commands go to is a state of the connection. */
  alone<Result>(work: () => Promise<Result>): Promise<Result> {
    const mine = this.#queue.then(work);
    this.#queue = mine.catch(() => undefined);
    return mine;
  }

  /**
   * Runs a function in the tab that is in use, or with `privileged` in the browser's own window. It travels as text; its
   * arguments and its result travel as JSON.
   */
  async run<Result>(task: string, args: readonly unknown[], privileged = false): Promise<Result> {
    // The script runs in a sandbox of its own, to which the page's extension interface is handed.
    const script = `
      const done = arguments[arguments.length - 1];
      const chrome = window.chrome, browser = window.browser;
      (async () => (${task})(...arguments[0]))().then(
        (value) => done({ value }),
        (error) => done({ failure: String(error) + "\\n" + (error?.stack ?? "") }));`;
    const command = () =>
      this.send<{ value: { value?: Json; failure?: string } }>('WebDriver:ExecuteAsyncScript', {
        script,
        args: [args],
        newSandbox: true,
      });
    const { value } = privileged ? await this.#privileged(command) : await command();
    if (value.failure !== undefined) throw new Error(value.failure);
    return value.value as Result;
  }

  close(): void {
    this.#socket.destroy();
  }

  async #privileged<Result>(command: () => Promise<Result>): Promise<Result> {
    await this.send('Marionette:SetContext', { value: 'chrome' });
    try {
      return await command();
    } finally {
      await this.send('Marionette:SetContext', { value: 'content' });
    }
  }

  #take(bytes: Buffer): void {
    this.#received = Buffer.concat([this.#received, bytes]);
    for (;;) {
      const colon = this.#received.indexOf(COLON);
      if (colon < 0) return;
      const end = colon + 1 + Number(this.#received.subarray(0, colon));
      if (this.#received.length < end) return;
      const message: unknown = JSON.parse(this.#received.subarray(colon + 1, end).toString());
      this.#received = this.#received.subarray(end);
      this.#answer(message);
    }
  }

  #answer(message: unknown): void {
    if (!Array.isArray(message)) {
      this.#greeted();
      return;
    }
    const [, id, error, result] = message as [number, number, { error: string; message: string } | null, Json];
    const waiting = this.#waiting.get(id);
    this.#waiting.delete(id);
    if (error) waiting?.reject(new Error(`${error.error}: ${error.message}`));
    else waiting?.resolve(result);
  }

  #failAll(): void {
    for (const { reject } of this.#waiting.values()) reject(new Error('Firefox has closed the connection'));
    this.#waiting.clear();
  }
}

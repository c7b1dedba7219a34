import { ok, refuse } from '../../src/domain/outcome.ts';
import { instant } from '../../src/domain/time/instant.ts';
import type { Delivered, Wire } from '../../src/team/wire/wire.ts';

/** A server in memory that keeps the rules of a real one; tests lay hands on `messages`. */
export interface InventedServer {
  messages: Delivered[];
  /** Letters of a message that it takes at most. */
  most: number;
  /** Answers that are still given before the connection is cut. */
  answersLeft: number;
  /** Whether anybody answers. */
  isUp: boolean;
  readonly wire: Wire;
}

const DOWN = refuse('no-connection', 'The team’s server did not answer.');
const START = Date.UTC(2026, 3, 11, 12);

/** @param start when it stores its first message, in milliseconds since 1970 */
export function inventedServer(start = START): InventedServer {
  const lastOn = (subject: string) => server.messages.filter((one) => one.subject === subject).at(-1) ?? null;
  const server: InventedServer = {
    messages: [],
    most: Number.POSITIVE_INFINITY,
    answersLeft: Number.POSITIVE_INFINITY,
    isUp: true,
    wire: {
      async publish({ subject, data, after }) {
        if (!server.isUp || server.answersLeft === 0) return DOWN;
        if (data.length > server.most) return refuse('too-large', 'The server takes no message of this size.');
        server.answersLeft -= 1;
        if ((lastOn(subject)?.place ?? 0) !== after) return refuse('not-last', 'Another message is the last.');
        const place = (server.messages.at(-1)?.place ?? 0) + 1;
        server.messages.push({ subject, data, place, at: instant(start + place) });
        return ok(place);
      },
      last: async () => (server.isUp ? ok(server.messages.at(-1)?.place ?? 0) : DOWN),
      lastOn: async (subject) => (server.isUp ? ok(lastOn(subject)) : DOWN),
      at: async (place) => (server.isUp ? ok(server.messages.find((one) => one.place === place) ?? null) : DOWN),
      async from(place, subject, most) {
        if (!server.isUp || server.answersLeft === 0) return DOWN;
        server.answersLeft -= 1;
        const isOn = (one: string) =>
          subject.endsWith('*')
            ? one.lastIndexOf('.') === subject.length - 2 && one.startsWith(subject.slice(0, -1))
            : one === subject;
        return ok(server.messages.filter((one) => one.place >= place && isOn(one.subject)).slice(0, most));
      },
      makeStream: async () => (server.isUp ? ok(null) : DOWN),
      close: async () => undefined,
    },
  };
  return server;
}

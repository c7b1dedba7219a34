import {
  type Answer,
  envelopeSchema,
  type MessageName,
  PROTOCOL,
  type ReplyOf,
  type RequestOf,
  type Sender,
} from './protocol.ts';

/** Who said it, and in which tab if it was in one. */
export interface From {
  readonly sender: Sender;
  readonly tab: number | undefined;
}

export type Handlers = { [Name in MessageName]: (request: RequestOf<Name>, from: From) => Promise<ReplyOf<Name>> };

/**
 * Answers one raw message, or returns null at once when it is not ours to answer: another listener's, or from a sender
 * who may not say it. Errors come back as data.
 */
export function answerMessage(raw: unknown, from: From, handlers: Handlers): Promise<Answer> | null {
  const envelope = envelopeSchema.safeParse(raw);
  if (!envelope.success || !isMessageName(envelope.data.headroom)) return null;
  const name = envelope.data.headroom;
  const senders: readonly Sender[] = PROTOCOL[name].from;
  if (!senders.includes(from.sender)) return null;
  return answer(name, envelope.data.request, from, handlers);
}

async function answer<Name extends MessageName>(
  name: Name,
  raw: unknown,
  from: From,
  handlers: Handlers,
): Promise<Answer> {
  const request = PROTOCOL[name].request.safeParse(raw);
  if (!request.success)
    return { ok: false, name: 'BadRequest', message: `"${name}" came with a request it can't read` };
  try {
    return { ok: true, value: await handlers[name](request.data as RequestOf<Name>, from) };
  } catch (error) {
    return error instanceof Error
      ? { ok: false, name: error.name, message: error.message }
      : { ok: false, name: 'Error', message: String(error) };
  }
}

function isMessageName(name: string): name is MessageName {
  return Object.hasOwn(PROTOCOL, name);
}

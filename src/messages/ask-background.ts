import { type Answer, type MessageName, PROTOCOL, type ReplyOf, type RequestOf } from './protocol.ts';

/**
 * Asks the background and gives back its reply, checked. An error over there is thrown here with the original as cause.
 * @param send how a raw message travels; `sendToBackground` in the extension
 */
export async function askBackground<Name extends MessageName>(
  send: (message: unknown) => Promise<unknown>,
  name: Name,
  request: RequestOf<Name>,
): Promise<ReplyOf<Name>> {
  const answer = (await send({ headroom: name, request })) as Answer | undefined;
  if (answer === undefined) throw new Error(`nobody answered "${name}"`);
  if (!answer.ok) throw new Error(answer.message, { cause: answer });
  return PROTOCOL[name].reply.parse(answer.value) as ReplyOf<Name>;
}

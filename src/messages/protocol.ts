import * as z from 'zod/mini';

/** Who may send a message: one of our own pages (popup, companion page), or the reader running inside a web page. */
export type Sender = 'own-page' | 'web-page';

interface MessageRule {
  readonly request: z.ZodMiniType;
  readonly reply: z.ZodMiniType;
  readonly from: readonly Sender[];
}

/**
 * Every message there is. The reader inside a web page may send one of them, and that one says nothing: whatever a page
 * could make it say, there is nothing in it to be believed.
 */
export const PROTOCOL = {
  /** Something changed in the store: work the alerts out again, and the plan; of the demo, the plan alone. */
  'plan-again': {
    request: z.strictObject({ demo: z.optional(z.literal(true)) }),
    reply: z.strictObject({ planned: z.int() }),
    from: ['own-page'],
  },
  /** Show a notice now, so that the user sees whether and how this browser shows them; `taken` when it is on its list. */
  'try-notice': { request: z.strictObject({}), reply: z.strictObject({ taken: z.boolean() }), from: ['own-page'] },
  /** The user has pointed at something on the page: open the popup there, which fetches it. */
  'pointing-done': { request: z.strictObject({}), reply: z.strictObject({}), from: ['web-page'] },
} as const satisfies Record<string, MessageRule>;

export type MessageName = keyof typeof PROTOCOL;
export type RequestOf<Name extends MessageName> = z.infer<(typeof PROTOCOL)[Name]['request']>;
export type ReplyOf<Name extends MessageName> = z.infer<(typeof PROTOCOL)[Name]['reply']>;

/** What crosses the boundary: a name and its request out, a value or an error back. */
export const envelopeSchema = z.strictObject({ headroom: z.string(), request: z.unknown() });
export type Answer = { ok: true; value: unknown } | { ok: false; name: string; message: string };

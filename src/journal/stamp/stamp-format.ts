import * as z from 'zod/mini';
import { type ChainHead, chainHeadSchema, writeHead } from '../chain-head.ts';

/** Bytes: many times what an authority's answer takes with its certificates. */
export const LONGEST_ANSWER = 48_000;
/** The same in base 64. */
const LONGEST = 64_000;

/**
 * The word of an outside authority that a head was there before a time: an RFC 3161 time-stamp token, in base 64. What it is
 * over is the head as it is noted down, so that anyone can check it with common tools.
 */
export const stampSchema = z.strictObject({
  ...chainHeadSchema.shape,
  token: z.string().check(z.minLength(1), z.maxLength(LONGEST)),
});
export type Stamp = z.infer<typeof stampSchema>;

export const stampsSchema = z.array(stampSchema).check(z.maxLength(1000));

/** SHA-256 of the text that a stamp is over. */
export async function imprintOf({ device, sequence, hash }: ChainHead): Promise<ArrayBuffer> {
  return crypto.subtle.digest('SHA-256', new TextEncoder().encode(writeHead({ device, sequence, hash })));
}

/** Names of algorithms by their object identifiers (RFC 5754, RFC 5758): those that a stamp may use. */
export const DIGESTS: ReadonlyMap<string, 'SHA-256' | 'SHA-384' | 'SHA-512'> = new Map([
  ['2.16.840.1.101.3.4.2.1', 'SHA-256'],
  ['2.16.840.1.101.3.4.2.2', 'SHA-384'],
  ['2.16.840.1.101.3.4.2.3', 'SHA-512'],
]);
export const SHA_256 = '2.16.840.1.101.3.4.2.1';

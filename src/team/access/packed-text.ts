import { base64url } from 'jose';
import * as z from 'zod/mini';

/** A value as one word that survives being mailed: a name, a dot, base64url (RFC 4648, section 5). */
export function writePacked(name: string, value: unknown): string {
  return `${name}.${base64url.encode(JSON.stringify(value))}`;
}

/** Reads it, with or without the spaces and line breaks that a mail put in; null when it is not of that kind, or not whole. */
export function readPacked<Schema extends z.core.$ZodType>(
  name: string,
  text: string,
  schema: Schema,
): z.infer<Schema> | null {
  const bare = text.replace(/\s+/g, '');
  if (!bare.startsWith(`${name}.`)) return null;
  try {
    const json: unknown = JSON.parse(new TextDecoder().decode(base64url.decode(bare.slice(name.length + 1))));
    const read = z.safeParse(schema, json);
    return read.success ? read.data : null;
  } catch {
    // Cut off, or a letter of it changed.
    return null;
  }
}

import { firstIssue } from '../read-entry.ts';
import { valueOfLine } from '../strict-json.ts';
import { type PackLine, packLineSchema } from './pack-format.ts';

/** The lines between head and seal that can be read, in their order, and a sentence for each that can't. */
export function readPackLines(texts: readonly (string | null)[]): {
  readonly lines: readonly PackLine[];
  readonly findings: readonly string[];
} {
  const lines: PackLine[] = [];
  const findings: string[] = [];
  let inFiles = false;
  for (const [i, text] of texts.entries()) {
    // The head is line 1.
    const name = `Line ${i + 2} of the data`;
    const value = text === null ? null : valueOfLine(text);
    if (value === null) findings.push(`${name} can’t be read: it is empty, or not written as Headroom writes it.`);
    else if (!value.ok) findings.push(`${name} can’t be read: ${value.message}.`);
    else {
      const line = packLineSchema.safeParse(value.value);
      if (!line.success) findings.push(`${name} is of no known kind, or damaged (${firstIssue(line.error)}).`);
      // A schema could fill in or leave out; what is hashed is the line as it stands.
      else lines.push(value.value as PackLine);
      const isFile = line.success && 'file' in line.data;
      if (inFiles && !isFile) findings.push(`${name} stands behind the files, where no entry belongs.`);
      inFiles ||= isFile;
    }
  }
  return { lines, findings };
}

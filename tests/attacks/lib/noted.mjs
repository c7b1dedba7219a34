/**
 * The text of a fingerprint as somebody noted it, `DEVICE:NUMBER:HASH`.
 * @param head a name in `noted` of about.json, or `head of the header` for files that nobody noted a head of
 * @param how how it differs from what was noted; `as noted` when left out
 */
export function notedText({ about, head, how = 'as noted', sampleText, other }) {
  const [device, sequence, hash] = trueHead(about, head, sampleText).split(':');
  const write = (d, s, h) => `${d}:${s}:${h}`;
  const whole = write(device, sequence, hash);
  const lie = `${hash.slice(0, -1)}${hash.endsWith('0') ? '1' : '0'}`;
  switch (how) {
    case 'as noted':
      return whole;
    case 'other hash':
      return write(device, sequence, lie);
    case 'later number':
      return write(device, Number(sequence) + 3, lie);
    case 'unknown device':
      return write('ZZZZZZZZZZ', sequence, hash);
    case 'of another journal':
      return write(device, sequence, JSON.parse(other('backup-old.jsonl').split('\n')[0]).heads[0].hash);
    case 'empty':
      return '';
    case 'garbage':
      return 'see the mail of Thursday';
    case 'cut':
      return whole.slice(0, -6);
    case 'two in one':
      return `${whole}\n${write(device, sequence, lie)}`;
    case 'with words around':
      return `Noted on Monday. Device ${device}, entry ${sequence}, fingerprint ${hash}. Keep this.`;
    case 'capital letters':
      return whole.toUpperCase();
    case 'line broken':
      return `${whole.slice(0, 60)}\n${whole.slice(60)}`;
    case 'before the pack begins': {
      const first = other('backup-files.jsonl')
        .split('\n')
        .map((line) => (line.startsWith('{"id"') ? JSON.parse(line) : null))
        .find((entry) => entry?.device === device && entry.sequence === 1);
      return write(device, 1, first.hash);
    }
    default:
      throw new Error(`unknown way to note a head: ${how}`);
  }
}

function trueHead(about, head, sampleText) {
  if (head !== 'head of the header' && about.noted[head] !== undefined) return about.noted[head];
  const [first] = JSON.parse(sampleText.split('\n')[0]).heads;
  return `${first.device}:${first.sequence}:${first.hash}`;
}

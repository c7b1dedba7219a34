import { describe, expect, it } from 'vitest';
import { decodeText } from '../../src/intake/csv/decode-text.ts';
import { openFile } from '../../src/intake/open-file.ts';
import { openTable } from '../../src/intake/open-table.ts';

const open = (text: string) => {
  const table = openTable(text);
  if (!table.ok) return table.reason;
  const { headings, firstRow, above, sample } = table.value;
  return { headings, firstRow, above, sample };
};

describe('a table in a text', () => {
  it('has its headings in the first row that names fields, below whatever stands above', () => {
    expect(open('Run list for Saturday\n\nLot,VIN\n1,x\n')).toEqual({
      headings: ['Lot', 'VIN'],
      firstRow: 4,
      above: [['Run list for Saturday']],
      sample: [['1', 'x']],
    });
  });

  it('needs no headings', () => {
    expect(open('1ZL3H4C21M0104471\t2021\tLarkspur\n')).toMatchObject({ headings: null, firstRow: 1 });
  });

  it('has headings in another language when words stand over figures', () => {
    expect(open('Farbe;Preis\nrot;9500\nblau;8000')).toMatchObject({ headings: ['Farbe', 'Preis'], firstRow: 2 });
    expect(open('rot;Larkspur\nblau;Larkspur')).toMatchObject({ headings: null });
  });

  it('can be a single column of VINs, with a heading or without', () => {
    expect(open('VIN\n1ZL3H4C21M0104471')).toMatchObject({ headings: ['VIN'], sample: [['1ZL3H4C21M0104471']] });
    expect(open('1ZL3H4C21M0104471\n1ZL3H4C23M0104472')).toMatchObject({ headings: null });
  });

  it.each([
    ['', 'empty'],
    [' \r\n\r\n', 'empty'],
    ['VIN,Year,Make\r\n', 'headings-only'],
    ['<!doctype html><table><tr><td>VIN', 'web-page'],
    ['\ufeff<html>', 'web-page'],
  ])('%j is refused: %s', (text, reason) => expect(open(text)).toBe(reason));
});

describe('the bytes of a file', () => {
  const decoded = (bytes: Uint8Array) => {
    const text = decodeText(bytes);
    return text.ok ? [text.value.encoding, text.value.text] : text.reason;
  };
  const utf16 = (text: string, bigEndian: boolean) => {
    const bytes = Buffer.from(text, 'utf16le');
    return new Uint8Array(bigEndian ? bytes.swap16() : bytes);
  };

  it.each([
    ['UTF-8', Buffer.from('VIN,Né'), 'utf-8'],
    ['UTF-8 with a mark', Buffer.from('\ufeffVIN,Né'), 'utf-8'],
    ['UTF-16, little end first', utf16('\ufeffVIN,Né', false), 'utf-16le'],
    ['UTF-16, big end first', utf16('\ufeffVIN,Né', true), 'utf-16be'],
    ['UTF-16 without a mark', utf16('VIN,Né', false), 'utf-16le'],
    ['UTF-16 without a mark, big end first', utf16('VIN,Né', true), 'utf-16be'],
    ['Latin-1', Buffer.from('VIN,Né', 'latin1'), 'windows-1252'],
  ])('are read as %s', (_, bytes, encoding) => expect(decoded(new Uint8Array(bytes))).toEqual([encoding, 'VIN,Né']));

  it('with stray zeros are still UTF-8', () => {
    expect(decoded(new Uint8Array(Buffer.from('VIN,a\0b\nx,y')))).toEqual(['utf-8', 'VIN,a\0b\nx,y']);
  });

  it.each([
    ['a workbook', Buffer.from('PK\u0003\u0004xxxx', 'latin1')],
    ['a PDF', Buffer.from('%PDF-1.7')],
    ['a picture', Buffer.from([0x89, 0x50, 0x4e, 0x47])],
  ])('of %s are refused with what to do', (_, bytes) => expect(decoded(new Uint8Array(bytes))).toBe('not-text'));

  it('that are none are an empty file', async () => {
    expect(await openFile(new Blob([]))).toMatchObject({ reason: 'empty' });
  });

  it('open as a table', async () => {
    const table = await openFile(new Blob([utf16('\ufeffVIN\tYear\r\nx\t2021', false)]));
    expect(table).toMatchObject({ ok: true, value: { headings: ['VIN', 'Year'], sample: [['x', '2021']] } });
  });

  it('that the browser can’t read are a failure with a sentence, not an error', async () => {
    const gone = Object.assign(new Blob(['x']), { arrayBuffer: () => Promise.reject(new Error('moved')) });
    expect(await openFile(gone)).toMatchObject({ ok: false, message: expect.stringContaining('moved') });
  });
});

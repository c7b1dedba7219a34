import { readdirSync, readFileSync } from 'node:fs';
import { JSDOM, VirtualConsole } from 'jsdom';
import { draftLotsSchema } from '../../src/capture/draft/draft-lot.ts';
import { readPage } from '../../src/capture/read-page.ts';
import { readFeeTable } from '../../src/domain/fees/read-fee-table.ts';
import { lotFactsSchema } from '../../src/domain/lot/lot.ts';
import { readSetupFile } from '../../src/domain/setup/setup-file.ts';
import { localDateSchema } from '../../src/domain/time/local-date.ts';
import { zone } from '../../src/domain/time/zone.ts';
import { openStatement } from '../../src/intake/bank/open-statement.ts';
import { readBankTable } from '../../src/intake/bank/read-bank-table.ts';
import { guessColumns } from '../../src/intake/columns/guess-columns.ts';
import { readPastedComps } from '../../src/intake/comps/read-pasted-comps.ts';
import { mapInvoice } from '../../src/intake/invoices/map-invoice.ts';
import { openInvoice } from '../../src/intake/invoices/open-invoice.ts';
import { readInvoice } from '../../src/intake/invoices/read-invoice.ts';
import { openTable } from '../../src/intake/open-table.ts';
import { readInChunks } from '../../src/intake/read-in-chunks.ts';
import { readPastedStock } from '../../src/intake/stock/read-pasted-stock.ts';
import { readNoted } from '../../src/journal/noted.ts';
import { verifyPack } from '../../src/journal/pack/verify-pack.ts';
import { imprintIn } from '../../src/journal/stamp/check-stamp.ts';
import { tokenOfAnswer } from '../../src/journal/stamp/read-answer.ts';
import { readBackup } from '../../src/store/backup/read-backup.ts';
import { CONTEXT, NOW } from '../intake/intake-context.ts';

/** Something that takes a text from outside. */
export interface Reader {
  readonly name: string;
  /** What it reads well. */
  readonly honest: () => readonly string[];
  /** Reads a text. Whatever it throws is a crash: what can't be read is an answer. */
  readonly read: (text: string) => unknown;
  /** What the browser does with the text before it is read, which is no work of ours. */
  readonly open?: (text: string) => { readonly read: () => unknown; readonly close: () => void };
}

const TODAY = localDateSchema.parse('2026-11-26');
const file = (name: string) => readFileSync(`tests/fixtures/${name}`, 'utf8');
const filesIn = (folder: string, end: string) =>
  readdirSync(`tests/fixtures/${folder}`)
    .filter((name) => name.endsWith(end))
    .map((name) => file(`${folder}/${name}`));
const meant = (facts: unknown) => {
  const checked = lotFactsSchema.safeParse(facts);
  if (!checked.success) throw new Error(`what was read is not meant: ${checked.error.message}`);
};

const BILL = [
  'Invoice,Date,VIN,Lot,Description,Amount,Total',
  'S-118,11/24/2026,1LX4P7C59N0000001,427,Hammer price,"$11,250.00",',
  'S-118,11/24/2026,1LX4P7C59N0000001,427,Buy fee,$450.00,',
  ',,,,Total,"11,700.00","11,700.00"',
].join('\n');
const STATEMENTS = ['6-ofx-sgml.ofx', '8-ofx-xml.ofx', '1-signed-with-balance.csv', '5-money-in-money-out.tsv'];
const STATEMENT = 'Date,Description,Debit,Credit\n11/24/2026,CHECK 1042,450.00,\n11/25/2026,DEPOSIT,,"1,250.00"';
const FEES = '$0 - $999.99\t$150\n$1,000 to 4,999  $250\n5,000 and up: 4.5%, at least $275, at most $700';
const COMPS =
  'Price\tSold or asking\tMiles\tYear\tFrom\n14,900\tsold\t98,000\t2018\tOur own\n$15,2k\tasking\t71k\t2019\t';
const STOCK = 'Stock no,In,Out,Price\nA1,09/01/2026,10/12/2026,$14,900\nA2,2026-10-05,,';

const PAGE = 'https://sale.example/lot/1';
function readDocument(document: Document): void {
  const checked = draftLotsSchema.safeParse(readPage(document, PAGE, NOW, { storeZone: zone('America/Boise') }));
  if (!checked.success) throw new Error(`what was read is not meant: ${checked.error.message}`);
}

/** Every reader of text from outside. Invitations of a team are none yet. */
export const READERS: readonly Reader[] = [
  {
    name: 'page',
    honest: () => filesIn('pages', '.html'),
    open(html) {
      const { window } = new JSDOM(html, { url: PAGE, virtualConsole: new VirtualConsole() });
      // Working out a style is the browser's work, and in jsdom it takes longer than all of ours.
      Object.assign(window, { getComputedStyle: (element: HTMLElement) => element.style });
      return { read: () => readDocument(window.document), close: () => window.close() };
    },
    read: (html) => readDocument(new JSDOM(html, { url: PAGE }).window.document),
  },
  {
    name: 'csv',
    honest: () => [file('csv/run-list.csv'), file('lots-example.csv')],
    async read(text) {
      const table = openTable(text);
      if (!table.ok) return;
      const columns = guessColumns(table.value.headings, table.value.sample, CONTEXT);
      for await (const chunk of readInChunks(table.value, columns, CONTEXT))
        for (const { facts } of chunk) meant(facts);
    },
  },
  {
    name: 'invoice',
    honest: () => [BILL, BILL.replaceAll(',', ';'), BILL.replaceAll(',', '\t')],
    read(text) {
      const table = openInvoice(openTable(text));
      if (table.ok) readInvoice(table.value, mapInvoice(table.value, undefined), TODAY);
    },
  },
  {
    name: 'statement',
    honest: () => [...STATEMENTS.map((name) => file(`bank/${name}`)), STATEMENT],
    read(text) {
      const opened = openStatement(text);
      if (!opened.ok || opened.value.as === 'ofx') return;
      const { table } = opened.value;
      readBankTable(table, { account: 'Bank', roles: table.roles, order: 'month-first', plain: 'in' }, TODAY);
    },
  },
  { name: 'fees', honest: () => [FEES, 'flat $300', '0 and up 5% min 200'], read: readFeeTable },
  { name: 'comps', honest: () => [COMPS], read: (text) => readPastedComps(text, TODAY) },
  { name: 'stock', honest: () => [STOCK], read: (text) => readPastedStock(text, TODAY) },
  { name: 'setup', honest: () => [file('setup-example.json')], read: readSetupFile },
  { name: 'backup', honest: () => filesIn('backups', '.jsonl'), read: (text) => readBackup(new Blob([text])) },
  { name: 'pack', honest: () => filesIn('packs', '.html'), read: (text) => verifyPack(text) },
  {
    name: 'noted',
    honest: () => [`QG4B4WNYRZ:30:${'ab'.repeat(32)}\nQG4B4WNYRZ key ${'cd'.repeat(32)}`],
    read: readNoted,
  },
  {
    name: 'stamp',
    honest: () => [Buffer.from(file('stamps/answer.tsr.base64'), 'base64').toString('latin1')],
    read(text) {
      const token = tokenOfAnswer(new Uint8Array(Buffer.from(text, 'latin1')));
      if (token.ok) imprintIn(token.value);
    },
  },
];

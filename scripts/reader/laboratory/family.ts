import type { Dice } from '../dice.ts';
import type { Fact, ToldLot } from './facts.ts';
import type { Stock } from './invented-lot.ts';
import type { Voice } from './voice.ts';

/** What else a page is built from. */
export interface PageFrame {
  readonly house: string;
  readonly sale: string;
  readonly host: string;
  readonly language: string;
}

/** Markup of one lot: its heading and its facts. */
export type LotLayout = (told: ToldLot) => string;
/** Markup of several lots, each with a link to its own page. */
export type ListLayout = (lots: readonly ToldLot[], link: (told: ToldLot) => string, vehicle: string) => string;
/** What stands around: the head of the page and its foot, with the house and the sale in them. */
export type Around = (body: string, frame: PageFrame) => string;
/** What could be taken for the lot, or for a figure of it. */
export type Distractor = (stranger: ToldLot, own: ToldLot, dice: Dice) => string;
/** Markup as a framework writes it. */
export type Framework = (markup: string, dice: Dice) => string;

/** One part of the families: the learned ones or those held out. */
export interface Families {
  readonly stock: Stock;
  readonly voices: readonly Voice[];
  readonly layouts: Readonly<Record<string, LotLayout>>;
  readonly lists: Readonly<Record<string, ListLayout>>;
  readonly arounds: readonly Around[];
  readonly distractors: Readonly<Record<string, Distractor>>;
  readonly frameworks: Readonly<Record<string, Framework>>;
}

export const each = (facts: readonly Fact[], row: (fact: Fact, at: number) => string): string =>
  facts.map(row).join('\n');
export const factOf = ({ facts }: ToldLot, field: Fact['field']): string =>
  facts.find((fact) => fact.field === field)?.value ?? '';

import { isSamePage } from '../../folds/same-sale.ts';
import { type SafeDom, safeDom } from '../dom/safe-dom.ts';
import { FormerTexts } from './former-texts.ts';
import { GoneTexts } from './gone-texts.ts';

/** What the watch needs to know of the page it is in. */
export interface WatchedPage {
  /** The address of the page as it is now. */
  readonly address: () => string;
  /** The address that the document was loaded from. */
  readonly loadedFrom: string;
  /** Whether it was loaded only just now, so that nobody can have gone on from it yet. */
  readonly justLoaded: boolean;
}

/**
 * Notes when each part of a page was last made or changed, so that a figure which was there before the page came to be
 * about this car can be told from one that came with it. It counts in rounds: what changes in one go is of one round, and
 * what was there before it began is of round 0.
 */
export class PageWatch {
  private readonly page: WatchedPage;
  private readonly dom: SafeDom;
  private readonly observer: MutationObserver | null;
  private readonly changed = new WeakMap<Node, number>();
  private readonly gone: GoneTexts;
  private readonly before: FormerTexts;
  private round = 0;
  private address: string;
  /** The round from which on the page has had the address that it has now. */
  private addressSince: number;

  constructor(document: Document, page: WatchedPage) {
    this.page = page;
    this.dom = safeDom(document);
    this.gone = new GoneTexts(this.dom);
    this.before = new FormerTexts(this.dom);
    this.address = page.address();
    this.addressSince = page.justLoaded && isSamePage(this.address, page.loadedFrom) ? 0 : 1;
    const Observer = document.defaultView?.MutationObserver;
    this.observer = Observer === undefined ? null : new Observer((changes) => this.note(changes));
    this.observer?.observe(document, {
      subtree: true,
      childList: true,
      characterData: true,
      characterDataOldValue: true,
    });
  }

  /**
   * Whether a figure is sure to have been put on the page for the car whose VIN stands in `vins`. A page that is still what
   * was loaded, and neither showed another VIN nor hides one, has nothing left over. On any other the page must have put
   * both there in one go, and the figure must not have stood there before that.
   * @param hidden VINs that are on the page and can't be seen
   * @param names the texts by which the page names the lot beside its VIN: its number, its heading. Where one of them took the
   * place of another, the page went from one lot to the next, though it never showed the other's VIN
   */
  cameWith(
    figure: readonly Node[],
    vins: readonly Node[],
    vin: string,
    hidden: ReadonlySet<string>,
    names: readonly Node[],
  ): boolean {
    this.catchUp();
    if (figure.length === 0 || vins.length === 0) return false;
    const hidesOthers = [...hidden].some((one) => one !== vin);
    const isAsLoaded = this.addressSince === 0 && !this.gone.hasOtherVin(vin) && !this.before.hadOthers(names);
    if (isAsLoaded && !hidesOthers) return true;
    const rounds = new Set([...figure, ...vins].map((node) => this.changedAt(node)));
    return rounds.size === 1 && !rounds.has(0) && !figure.some((node) => this.gone.has(this.dom.value(node)));
  }

  /**
   * Whether the page has gone from one thing to another without being loaded anew: under this watch's eyes (`seen`), or
   * before it began (`before`), so that nobody knows what is left over.
   */
  movedOn(): 'seen' | 'before' | 'no' {
    this.catchUp();
    if (this.addressSince > 1 || this.gone.hasOtherVin('')) return 'seen';
    return isSamePage(this.address, this.page.loadedFrom) ? 'no' : 'before';
  }

  /** Whether one of these texts took the place of another: the page named another lot there before. */
  namedAnother(names: readonly Node[]): boolean {
    this.catchUp();
    return this.before.hadOthers(names);
  }

  private catchUp(): void {
    this.note(this.observer?.takeRecords() ?? []);
  }

  private note(changes: readonly MutationRecord[]): void {
    const address = this.page.address();
    const isAnother = address !== this.address && !isSamePage(address, this.address);
    if (changes.length > 0 || isAnother) this.round++;
    if (isAnother) {
      this.address = address;
      this.addressSince = this.round;
    }
    for (const change of changes) {
      if (change.type === 'characterData') {
        this.changed.set(change.target, this.round);
        this.gone.add(change.oldValue ?? '');
        this.before.add(this.dom.parent(change.target), change.oldValue ?? '');
      }
      for (const node of change.addedNodes) this.changed.set(node, this.round);
      for (const node of change.removedNodes) {
        this.gone.addWithin(node);
        this.before.addNode(change.target, node);
      }
    }
  }

  /** The last round in which a node, or anything it is in, was made or changed. */
  private changedAt(node: Node): number {
    let last = 0;
    for (let at: Node | null = node; at !== null; at = this.dom.parent(at)) {
      last = Math.max(last, this.changed.get(at) ?? 0);
    }
    return last;
  }
}

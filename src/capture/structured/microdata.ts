import type { Budget } from '../budget.ts';
import { attributeOf, elementsWithin, isWithin, type PageElement, type PageTree } from '../dom/page-tree.ts';
import { markupValue } from './markup-value.ts';
import { addValue, schemaName, type Thing } from './thing.ts';

/** Every microdata item of the page (HTML Standard, section Microdata), with `itemref`. */
export function readMicrodata(tree: PageTree, budget: Budget): readonly Thing[] {
  const all = elementsWithin(tree.root);
  const scopes = all.filter((element) => element.attributes.has('itemscope')).slice(0, budget.things);
  if (scopes.length === 0) return [];
  const things = new Map<PageElement, Thing>();
  for (const scope of scopes) things.set(scope, thingOf(scope));
  const byId = new Map<string, PageElement>();
  for (const element of all) {
    const id = attributeOf(element, 'id');
    if (id !== '' && !byId.has(id)) byId.set(id, element);
  }
  for (const [scope, thing] of things) {
    for (const child of scope.children) if (child.kind === 'element') collect(child, thing, things);
    for (const id of attributeOf(scope, 'itemref').split(/\s+/).slice(0, 40)) {
      const referred = byId.get(id);
      // An item that refers to what contains it would contain itself.
      if (referred !== undefined && !isWithin(scope, referred)) collect(referred, thing, things);
    }
  }
  return [...things.values()];
}

function thingOf(scope: PageElement): Thing {
  return {
    types: attributeOf(scope, 'itemtype')
      .split(/\s+/)
      .map(schemaName)
      .filter((type) => type !== ''),
    id: attributeOf(scope, 'itemid'),
    properties: new Map(),
    syntax: 'microdata',
    element: scope,
  };
}

function collect(from: PageElement, thing: Thing, things: ReadonlyMap<PageElement, Thing>): void {
  for (const element of elementsWithin(from, (inner) => isInsideAnother(inner, from))) {
    const inner = things.get(element);
    for (const name of attributeOf(element, 'itemprop').split(/\s+/).slice(0, 20)) {
      const property = schemaName(name);
      if (property !== '' && inner !== thing) addValue(thing, property, inner ?? markupValue(element));
    }
  }
}

/** Whether an item begins between `from` and `element`, so that `element` belongs to that one. */
function isInsideAnother(element: PageElement, from: PageElement): boolean {
  return element !== from && (element.parent?.attributes.has('itemscope') ?? false);
}

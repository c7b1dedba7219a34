import type { Budget } from '../budget.ts';
import { attributeOf, elementsWithin, type PageElement, type PageTree } from '../dom/page-tree.ts';
import { markupValue } from './markup-value.ts';
import { addValue, schemaName, type Thing } from './thing.ts';

/** The things marked up in RDFa Lite 1.1: `vocab`, `typeof`, `property`, `resource`, `prefix`. */
export function readRdfa(tree: PageTree, budget: Budget): readonly Thing[] {
  const things: Thing[] = [];
  const subjectAt = new Map<PageElement, Thing>();
  const schemaIn = new Map<PageElement, boolean>();
  for (const element of elementsWithin(tree.root)) {
    const outer = element.parent;
    const vocab = element.attributes.get('vocab');
    const isSchema =
      vocab === undefined
        ? ((outer && schemaIn.get(outer)) ?? false)
        : /^https?:\/\/schema\.org\/?$/.test(vocab.trim());
    schemaIn.set(element, isSchema);
    const subject = outer === null ? undefined : subjectAt.get(outer);
    const types = names(attributeOf(element, 'typeof'), isSchema);
    const properties = names(attributeOf(element, 'property'), isSchema);
    let here = subject;
    if (element.attributes.has('typeof') && things.length < budget.things) {
      here = { types, id: idOf(element), properties: new Map(), syntax: 'rdfa', element };
      things.push(here);
    }
    if (subject !== undefined) {
      const value = here !== undefined && here !== subject ? here : valueIn(element);
      for (const property of properties) addValue(subject, property, value);
    }
    if (here !== undefined) subjectAt.set(element, here);
  }
  return things;
}

const idOf = (element: PageElement): string => attributeOf(element, 'resource') || attributeOf(element, 'about');

function valueIn(element: PageElement): string {
  const resource = attributeOf(element, 'resource');
  return resource !== '' && !element.attributes.has('content') ? resource : markupValue(element);
}

function names(attribute: string, isSchema: boolean): readonly string[] {
  return attribute
    .split(/\s+/)
    .slice(0, 20)
    .filter((name) => isSchema || name.startsWith('schema:') || /^https?:\/\/schema\.org\//.test(name))
    .map(schemaName)
    .filter((name) => name !== '');
}

import { attributeOf, elementsWithin, type PageElement } from '../dom/page-tree.ts';

/** Ids and values that a program makes anew for each page carry long numbers or odd marks. */
export const isMadeByHand = (name: string): boolean =>
  /^[A-Za-z][\w-]{0,59}$/.test(name) && !/\d{3}|[A-Za-z]\d{1,9}[A-Za-z]\d/.test(name);

/** The element's id if it looks made by a person; else empty. */
export function stableId(element: PageElement): string {
  const id = attributeOf(element, 'id');
  return isMadeByHand(id) ? id : '';
}

/** `#details>dl:1>dd:3`: tags with their position among their like, from the closest ancestor with a stable id or the root. */
export function pathOf(element: PageElement): string {
  const steps: string[] = [];
  for (let at: PageElement | null = element; at !== null; at = at.parent) {
    const id = at === element ? '' : stableId(at);
    if (id !== '') {
      steps.push(`#${id}`);
      break;
    }
    steps.push(`${at.tag}:${positionOf(at)}`);
  }
  return steps.toReversed().join('>');
}

/** The elements that a path leads to; several when its id is not the only one of its name. */
export function atPath(root: PageElement, path: string): readonly PageElement[] {
  const [start = '', ...steps] = path.split('>');
  let here: readonly PageElement[] = start.startsWith('#')
    ? elementsWithin(root).filter((element) => attributeOf(element, 'id') === start.slice(1))
    : [root];
  for (const step of steps) {
    const [tag, position] = step.split(':');
    here = here.flatMap((element) => {
      const same = element.children.filter((one): one is PageElement => one.kind === 'element' && one.tag === tag);
      return same.slice(Number(position) - 1, Number(position));
    });
  }
  return here;
}

function positionOf(element: PageElement): number {
  const siblings = element.parent?.children ?? [element];
  return siblings.filter((one) => one.kind === 'element' && one.tag === element.tag).indexOf(element) + 1;
}

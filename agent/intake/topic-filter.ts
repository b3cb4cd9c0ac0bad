/**
 * MQTT wildcard filters over topics (MQTT 3.1.1 clause 4.7): which filters a topic meets,
 * and the instance its levels name. A site file has `+` only (rules/plan/topic.ts), so has this.
 */

import { isInstance } from '#rules/plan/binding.ts';

interface Node<Item> {
  readonly children: Map<string, Node<Item>>;
  plus: Node<Item> | null;
  /** Items whose filter ends here. */
  readonly here: Item[];
}

const newNode = <Item>(): Node<Item> => ({ children: new Map(), plus: null, here: [] });

export const hasWildcard = (filter: string): boolean => filter.includes('+');

export function fitsFilter(filter: string, topic: string): boolean {
  const tree = new FilterTree<null>();
  tree.add(filter, null);
  return tree.match(topic).length > 0;
}

/** A tree of filters; each topic level is looked at once a branch. Filters are taken as valid. */
export class FilterTree<Item> {
  readonly #root = newNode<Item>();

  add(filter: string, item: Item): void {
    let node = this.#root;
    for (const level of filter.split('/')) {
      node = level === '+' ? plusOf(node) : childOf(node, level);
    }
    node.here.push(item);
  }

  /** Every item whose filter the topic meets. */
  match(topic: string): Item[] {
    const found: Item[] = [];
    collect(this.#root, topic.split('/'), 0, found);
    return found;
  }
}

function plusOf<Item>(node: Node<Item>): Node<Item> {
  node.plus ??= newNode();
  return node.plus;
}

function childOf<Item>(node: Node<Item>, level: string): Node<Item> {
  let child = node.children.get(level);
  if (child === undefined) {
    child = newNode();
    node.children.set(level, child);
  }
  return child;
}

function collect<Item>(
  node: Node<Item>,
  levels: readonly string[],
  depth: number,
  found: Item[],
): void {
  if (depth === levels.length) {
    found.push(...node.here);
    return;
  }
  const child = node.children.get(levels[depth]!);
  if (child !== undefined) collect(child, levels, depth + 1, found);
  // [MQTT-4.7.2-1]: a filter beginning with a wildcard does not meet a topic beginning with $.
  const plusMeets = depth > 0 || !levels[0]!.startsWith('$');
  if (plusMeets && node.plus !== null) collect(node.plus, levels, depth + 1, found);
}

const slugOf = (text: string): string =>
  text
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '');

/**
 * The instance a topic names at these levels: each in lower case with every run of other
 * characters as one hyphen, joined by two, so that different levels never run together. null
 * where a level holds no letter or digit, or is too long for a name.
 */
export function instanceNamed(topic: string, levels: readonly number[]): string | null {
  const topicLevels = topic.split('/');
  const instance = levels.map((level) => slugOf(topicLevels[level] ?? '')).join('--');
  return isInstance(instance, levels.length) ? instance : null;
}

/**
 * YAML to plain data, and back from a path in the data to a line and column.
 *
 * Bounded before it is built: size, depth, aliases. No tags, no merge keys, no second document,
 * no key twice, no `__proto__`. What it cannot read is a problem with its place, never a throw.
 */
import {
  Composer,
  CST,
  type Document,
  isAlias,
  isMap,
  isNode,
  isScalar,
  isSeq,
  LineCounter,
  type Node,
  type Pair,
  Parser,
  type YAMLMap,
} from 'yaml';
import type { PlacedProblem, SiteProblem } from '#rules/site/problem.ts';
import { limits } from '../limits.ts';
import { bareUnitAt, hide, unhide } from './bare-units.ts';
import { yamlWords } from './yaml-words.ts';

export interface YamlText {
  /** Plain data: own properties only, keys are text. null where nothing could be read. */
  readonly value: unknown;
  readonly problems: readonly PlacedProblem[];
  /** How it is put together cannot be read: of what it says nothing can be told. */
  readonly broken: boolean;
  /** A problem at a path of the data, with the line and column of its nearest written part. */
  place(problem: SiteProblem): PlacedProblem;
}

type Report = (offset: number, problem: string, fix: string) => void;

/** Complaints of the parser after which it is still known what stands where. */
const intact: ReadonlySet<string> = new Set([
  'DUPLICATE_KEY',
  'TAG_RESOLVE_FAILED',
  'NON_STRING_KEY',
]);

/** `text` is one whole file; longer than `siteFileBytesMax` is refused unread. */
export function readYaml(text: string, file: string): YamlText {
  const lines = new LineCounter();
  const problems: PlacedProblem[] = [];
  const report: Report = (offset, problem, fix) => {
    problems.push({ path: [], problem, fix, file, ...positionOf(lines, offset) });
  };
  const document = compose(text, lines, report);
  const broken = document?.errors.some(({ code }) => !intact.has(code)) ?? true;
  const root = document?.contents ?? null;
  const value = document === null || root === null ? null : new Plain(document, report).of(root, 0);
  const place = (problem: SiteProblem): PlacedProblem => ({
    ...problem,
    file,
    ...positionOf(lines, offsetAt(document, root, problem)),
  });
  return { value, problems, broken, place };
}

function positionOf(lines: LineCounter, offset: number): { line: number; column: number } {
  const { line, col } = lines.linePos(offset);
  return { line: Math.max(1, line), column: Math.max(1, col) };
}

function compose(text: string, lines: LineCounter, report: Report): Document | null {
  if (Buffer.byteLength(text) > limits.siteFileBytesMax) {
    report(0, `the file is over ${limits.siteFileBytesMax} bytes`, 'Split the site in two.');
    return null;
  }
  const tokens = [...new Parser(lines.addNewLine).parse(text)];
  const deep = tooDeep(tokens);
  if (deep !== null) {
    report(
      deep,
      `blocks lie more than ${limits.siteFileDepthMax} deep`,
      'A site file needs no more than ten; look for a bracket or dash too many.',
    );
    return null;
  }
  const documents = documentsOf(text, tokens, report);
  const document = documents[0];
  if (document === undefined) {
    report(0, 'the file is empty', 'Begin with site: and timezone:; see docs/site-file.md.');
    return null;
  }
  for (const fault of firstOfEachRun([...document.errors, ...document.warnings]))
    report(
      fault.pos[0],
      ...yamlWords(fault.code, fault.message, text.slice(fault.pos[0], fault.pos[0] + 80)),
    );
  const second = documents[1];
  if (second !== undefined)
    report(
      second.range[0],
      'a second document begins here',
      'Take the --- out; one file, one site.',
    );
  return document;
}

const options = { version: '1.2', merge: false, uniqueKeys: true, strict: true } as const;

/** A unit in brackets that lacks its quotes is told, and then read as if it had them. */
function documentsOf(text: string, tokens: CST.Token[], report: Report): Document.Parsed[] {
  let documents: Document.Parsed[] = [...new Composer(options).compose(tokens)];
  let seen = text;
  for (let told = 0; told < limits.siteFileProblemsMax; told += 1) {
    const fault = documents[0]?.errors[0];
    const unit = fault === undefined ? null : bareUnitAt(seen, fault.pos[0]);
    if (unit === null) break;
    report(unit.from, `${unit.text} lacks its quotes`, `Write "${unit.text}".`);
    seen = seen.slice(0, unit.from) + hide(unit.text) + seen.slice(unit.to);
    documents = [...new Composer(options).compose(new Parser().parse(seen))];
  }
  return documents;
}

/** What does not belong where it stands takes all behind it along: the first of a run says it. */
const firstOfEachRun = <F extends { readonly code: string }>(faults: readonly F[]): F[] =>
  faults.filter(
    ({ code }, i) => code !== 'UNEXPECTED_TOKEN' || faults[i - 1]?.code !== 'UNEXPECTED_TOKEN',
  );

/** Where the file goes deeper than it may; null where it does not. Never recurses itself. */
function tooDeep(tokens: readonly CST.Token[]): number | null {
  const waiting: { token: CST.Token; depth: number }[] = tokens.map((token) => ({
    token,
    depth: 0,
  }));
  for (let next = waiting.pop(); next !== undefined; next = waiting.pop()) {
    const { token, depth } = next;
    if (depth > limits.siteFileDepthMax) return token.offset;
    if (token.type === 'document') {
      if (token.value !== undefined) waiting.push({ token: token.value, depth });
      continue;
    }
    if (!CST.isCollection(token)) continue;
    for (const item of token.items)
      for (const part of [item.key, item.value])
        if (part !== undefined && part !== null) waiting.push({ token: part, depth: depth + 1 });
  }
  return null;
}

/** Composed nodes to plain data, within the bounds on aliases and on values. */
class Plain {
  private values = 0;
  private aliases = 0;
  private readonly document: Document;
  private readonly report: Report;
  private readonly open = new Set<Node>();

  constructor(document: Document, report: Report) {
    this.document = document;
    this.report = report;
  }

  of(node: unknown, depth: number): unknown {
    if (!isNode(node)) return null;
    this.values += 1;
    if (this.values === limits.siteFileValuesMax + 1)
      this.report(startOf(node), 'too much once aliases are filled in', 'Write fewer aliases.');
    if (this.values > limits.siteFileValuesMax || depth > 2 * limits.siteFileDepthMax) return null;
    if (isAlias(node)) return this.ofAlias(node, depth);
    if (isScalar(node))
      return typeof node.value === 'string' ? unhide(node.value) : plainScalar(node.value);
    if (this.open.has(node)) {
      this.report(startOf(node), 'an alias leads back into itself', 'Write the value out.');
      return null;
    }
    this.open.add(node);
    const made = isSeq(node)
      ? node.items.map((item) => this.of(item, depth + 1))
      : isMap(node)
        ? this.ofMap(node, depth)
        : null;
    this.open.delete(node);
    return made;
  }

  private ofAlias(node: Node & { source: string }, depth: number): unknown {
    this.aliases += 1;
    if (this.aliases === limits.siteFileAliasesMax + 1)
      this.report(
        startOf(node),
        `more than ${limits.siteFileAliasesMax} aliases`,
        'Write the values out.',
      );
    if (this.aliases > limits.siteFileAliasesMax) return null;
    const target = isAlias(node) ? node.resolve(this.document) : undefined;
    if (target !== undefined) return this.of(target, depth + 1);
    this.report(startOf(node), `no anchor is called "${node.source}"`, 'Write the value out.');
    return null;
  }

  private ofMap(map: YAMLMap, depth: number): unknown {
    const made: Record<string, unknown> = {};
    for (const pair of map.items) {
      const key = keyOf(pair);
      if (key === null)
        this.report(startOf(pair.key), 'a key must be a word', 'Write a name before the colon.');
      else if (key === '__proto__' || key === '<<')
        this.report(
          startOf(pair.key),
          `"${key}" may not be a key`,
          key === '<<' ? 'Write the values out; blocks are not merged.' : 'Choose another name.',
        );
      else made[key] = this.of(pair.value, depth + 1);
    }
    return made;
  }
}

/** A key as text; null for one that is a block or nothing. */
function keyOf(pair: Pair): string | null {
  const key = isScalar(pair.key) ? pair.key.value : pair.key;
  return typeof key === 'string' || typeof key === 'number' || typeof key === 'boolean'
    ? String(key)
    : null;
}

const plainScalar = (value: unknown): unknown =>
  typeof value === 'bigint' ? Number(value) : value === undefined ? null : value;

const startOf = (node: unknown): number => (isNode(node) ? (node.range?.[0] ?? 0) : 0);

function offsetAt(document: Document | null, root: unknown, problem: SiteProblem): number {
  let node = resolved(document, root);
  let offset = startOf(root);
  for (const [i, key] of problem.path.entries()) {
    const last = i === problem.path.length - 1;
    if (isSeq(node)) {
      const item: unknown = node.items[Number(key)];
      if (item === undefined) break;
      offset = startOf(item);
      node = resolved(document, item);
    } else if (isMap(node)) {
      const pair = node.items.find((candidate) => keyOf(candidate) === String(key));
      if (pair === undefined) break;
      const value = isNode(pair.value) && !isEmpty(pair.value) ? pair.value : pair.key;
      // A block is named by its key: the block itself may begin on a later line.
      const atKey = !last || problem.atKey === true || !isScalar(value);
      offset = startOf(atKey ? pair.key : value);
      node = resolved(document, pair.value);
    } else break;
  }
  return offset;
}

const isEmpty = (node: Node): boolean => isScalar(node) && node.value === null;

const resolved = (document: Document | null, node: unknown): unknown =>
  isAlias(node) && document !== null ? node.resolve(document) : node;

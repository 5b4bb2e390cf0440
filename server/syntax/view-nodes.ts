// The nodes of the `yaml` package -> the narrow view. Follows aliases within limits, keeps equal keys and notes them,
// and remembers which quotes and braces were never closed.

import { isAlias, isCollection, isMap, isPair, isScalar, type Scalar } from 'yaml';
import type { Key } from '../../schema/place.ts';
import { limits } from './limits.ts';
import type { SyntaxNote } from './note.ts';
import { ownReasons } from './reasons.ts';
import { isOpenQuote } from './tokens.ts';
import type { PairTree, Range, ScalarStyle, ScalarTree, Tree } from './tree.ts';

export interface View {
  readonly tree: Tree;
  readonly notes: readonly SyntaxNote[];
  /** Where quotes, braces and brackets that are never closed begin, with what to say of each. */
  readonly unclosed: readonly Unclosed[];
}

export interface Unclosed {
  readonly at: number;
  readonly reason: string;
}

/** Views the contents of a document that was read from `text`. */
export function viewNodes(contents: unknown, text: string): View {
  const notes: SyntaxNote[] = [];
  const unclosed: Unclosed[] = [];
  const anchors = new Map<string, { readonly tree: Tree; readonly size: number } | 'open'>();
  const path: Key[] = [];
  let size = 0;
  let refused = false;
  return { tree: view(contents, 0), notes, unclosed };

  function view(node: unknown, after: number): Tree {
    size++;
    if (isScalar(node)) return viewScalar(node, after);
    if (isAlias(node)) return viewAlias(node.source, rangeOfNode(node.range, after));
    if (!isCollection(node)) return { kind: 'empty', range: { from: after, to: after } };
    const range = rangeOfNode(node.range, after);
    if (path.length >= limits.depth) {
      if (!refused) invalid(ownReasons.tooDeep, { from: range.from, to: range.from + 1 });
      refused = true;
      return { kind: 'empty', range };
    }
    const flow = node.flow === true;
    if (flow) noteUnclosed(range, isMap(node));
    const { anchor } = node;
    const before = size;
    if (anchor !== undefined) anchors.set(anchor, 'open');
    const tree = isMap(node) ? viewPairs(node.items, range, flow) : viewItems(node.items, range, flow);
    if (anchor !== undefined) anchors.set(anchor, { tree, size: size - before + 1 });
    return tree;
  }

  function viewPairs(nodes: readonly unknown[], range: Range, flow: boolean): Tree {
    const pairs: PairTree[] = [];
    const seen = new Map<string, number>();
    for (const node of nodes) {
      if (!isPair(node)) continue;
      const key = viewKey(node.key, pairs.at(-1)?.value.range.to ?? range.from);
      path.push(key.text);
      const nth = seen.get(key.text) ?? 0;
      seen.set(key.text, nth + 1);
      if (nth > 0 && key.range.to > key.range.from) {
        notes.push({ code: 'name-duplicate', params: { name: key.text }, range: key.range, path: [...path], nth });
      }
      pairs.push({ key, value: view(node.value, key.range.to) });
      path.pop();
    }
    return { kind: 'map', flow, pairs, range: flow ? range : spanOf(range, pairs[0]?.key, pairs.at(-1)) };
  }

  function viewItems(nodes: readonly unknown[], range: Range, flow: boolean): Tree {
    const items: Tree[] = [];
    for (const node of nodes) {
      path.push(items.length);
      const single = isPair(node);
      const after = items.at(-1)?.range.to ?? range.from;
      items.push(single ? viewPairs([node], rangeOfNode(undefined, after), false) : view(node, after));
      path.pop();
    }
    return {
      kind: 'list',
      flow,
      items,
      range: flow ? range : { from: range.from, to: Math.max(range.from, items.at(-1)?.range.to ?? 0) },
    };
  }

  function viewKey(node: unknown, after: number): ScalarTree {
    const tree = view(node, after);
    if (tree.kind === 'scalar') return tree;
    const { range } = tree;
    if (tree.kind !== 'empty') invalid(ownReasons.keyIsNotText, range);
    const written = text.slice(range.from, range.to);
    return { kind: 'scalar', value: tree.kind === 'empty' ? null : written, text: written, style: 'plain', range };
  }

  function viewScalar(node: Scalar, after: number): Tree {
    const range = trimmed(rangeOfNode(node.range ?? undefined, after), text);
    const { value, anchor } = node;
    if (value === null && range.from === range.to && node.type !== 'QUOTE_DOUBLE' && node.type !== 'QUOTE_SINGLE') {
      return named(anchor, { kind: 'empty', range });
    }
    const style = styleOf(node.type);
    if (isOpenQuote(text.slice(range.from, range.to)))
      unclosed.push({ at: range.from, reason: ownReasons.unclosedQuote });
    const said = typeof value === 'string' ? value : (node.source ?? String(value));
    const known =
      typeof value === 'string' || typeof value === 'number' || typeof value === 'boolean' || value === null;
    return named(anchor, { kind: 'scalar', value: known ? value : said, text: said, style, range });
  }

  function named(anchor: string | undefined, tree: Tree): Tree {
    if (anchor !== undefined) anchors.set(anchor, { tree, size: 1 });
    return tree;
  }

  function viewAlias(name: string, range: Range): Tree {
    const target = anchors.get(name);
    if (target === 'open') invalid(ownReasons.selfContaining, range);
    if (target === undefined) invalid(ownReasons.unknownAlias, range);
    if (target === undefined || target === 'open') return { kind: 'empty', range };
    size += target.size;
    if (size <= limits.valuesThroughAliases) return { ...target.tree, range };
    if (!refused) {
      notes.push({ code: 'alias-limit', params: { limit: limits.valuesThroughAliases }, range });
    }
    refused = true;
    return { kind: 'empty', range };
  }

  function invalid(reason: string, range: Range): void {
    notes.push({ code: 'yaml-invalid', params: { reason }, range });
  }

  function noteUnclosed(range: Range, map: boolean): void {
    const sign = map ? '}' : ']';
    if (range.to - range.from > 1 && text[range.to - 1] === sign) return;
    unclosed.push({ at: range.from, reason: map ? ownReasons.unclosedMap : ownReasons.unclosedList });
  }
}

function rangeOfNode(range: readonly [number, number, number] | null | undefined, after: number): Range {
  return range == null ? { from: after, to: after } : { from: range[0], to: Math.max(range[0], range[1]) };
}

/** A block text ends with its last line, not behind the line feeds after it. */
function trimmed(range: Range, text: string): Range {
  let { to } = range;
  while (to > range.from && (text[to - 1] === '\n' || text[to - 1] === '\r')) to--;
  return { from: range.from, to };
}

function spanOf(range: Range, first: ScalarTree | undefined, last: PairTree | undefined): Range {
  if (first === undefined || last === undefined) return range;
  return { from: Math.min(range.from, first.range.from), to: Math.max(last.key.range.to, last.value.range.to) };
}

function styleOf(type: string | undefined): ScalarStyle {
  switch (type) {
    case 'QUOTE_DOUBLE':
      return 'double';
    case 'QUOTE_SINGLE':
      return 'single';
    case 'BLOCK_LITERAL':
    case 'BLOCK_FOLDED':
      return 'block';
    default:
      return 'plain';
  }
}

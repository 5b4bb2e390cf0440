// One number of a recipe walked back to its sources: which number a path means, and its tree for programs.

import type { ExplainJson, ExplainNode } from '../../schema/explain-json.ts';
import { nearest } from '../../schema/nearest.ts';
import { cautionsFor } from '../words/cautions.ts';
import type { Snapshot } from '../workspace/snapshot.ts';
import type { ExplainedNumber } from './explain/explained-number.ts';
import { numbersOf } from './explain/numbers.ts';
import { treeOf } from './explain/tree.ts';
import { type NameFile, placesIn } from './plan-json/gaps.ts';

export type ExplainedPath =
  | { readonly kind: 'number'; readonly number: ExplainedNumber }
  /** Nothing has that path; the paths that are nearest to it, or that lie below it. */
  | { readonly kind: 'none'; readonly near: readonly string[] };

/** The number that a path means; its parts stand between `/`, and letter case does not count. */
export function numberAt(snapshot: Snapshot, asked: string): ExplainedPath {
  const numbers = numbersOf(snapshot);
  const path = asked.replace(/^\/+|\/+$/gu, '');
  const same = (one: string): boolean => one === path;
  const alike = (one: string): boolean => one.toLowerCase() === path.toLowerCase();
  const number =
    numbers.find(({ path: own }) => same(own)) ??
    numbers.find(({ also }) => also.some(same)) ??
    numbers.find(({ path: own, also }) => [own, ...also].some(alike));
  return number === undefined ? { kind: 'none', near: nearTo(path, numbers) } : { kind: 'number', number };
}

/** Every path but those of single days, in the order of the plan. */
export function listNumbers(snapshot: Snapshot): readonly string[] {
  return numbersOf(snapshot).flatMap(({ path, isOneOfMany }) => (isOneOfMany ? [] : [path]));
}

/** So many are proposed. */
const most = 8;

/** What begins with the path; else what is spelled alike, and what shares the longest way with it. */
function nearTo(path: string, numbers: readonly ExplainedNumber[]): readonly string[] {
  const all = numbers.flatMap(({ path: own, also, isOneOfMany }) =>
    isOneOfMany ? [] : [{ own, ways: [own, ...also] }],
  );
  const beginning = (start: string) => all.filter(({ ways }) => ways.some(way => way.startsWith(start)));
  const below = path === '' ? [] : beginning(`${path}/`);
  const begun = below.length > 0 || path === '' ? below : beginning(path);
  if (begun.length > 0) return begun.slice(0, most).map(({ own }) => own);
  const spelled = nearest(
    path,
    all.flatMap(({ ways }) => ways),
  );
  const parts = path.split('/');
  const shared = (way: string): number => {
    const cut = way.split('/').findIndex((part, index) => part !== parts[index]);
    return cut === -1 ? parts.length : cut;
  };
  const depths = all.map(({ own, ways }) => ({ own, depth: Math.max(...ways.map(shared)) }));
  const deepest = Math.max(0, ...depths.map(({ depth }) => depth));
  const beside = depths.filter(({ depth }) => 0 < depth && depth === deepest).map(({ own }) => own);
  return [...new Set([...(spelled === undefined ? [] : [spelled]), ...beside])].slice(0, most);
}

export function explainJson(snapshot: Snapshot, number: ExplainedNumber, nameFile: NameFile): ExplainJson {
  const tree = treeOf(number.figure(), snapshot.recipe.show, placesIn(snapshot, nameFile));
  const cautions = number.adjuster === undefined ? undefined : cautionsFor(number.adjuster.value);
  return {
    formatVersion: 1,
    file: nameFile(snapshot.uri),
    path: number.path,
    number: tree,
    sources: [...new Set(sourcesIn(tree))],
    cautions: cautions === undefined ? [] : [...cautions.hazards.map(({ says }) => says), ...cautions.sentences],
  };
}

function sourcesIn(node: ExplainNode): readonly string[] {
  if (node.kind === 'assumed') return [node.source];
  return node.kind === 'computed' ? [node.source, ...node.inputs.flatMap(sourcesIn)] : [];
}

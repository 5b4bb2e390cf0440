// The text of one entry -> its tree and what is wrong with it. The only file that reads with the `yaml` package; its
// nodes become the narrow view of tree.ts here and are not kept, because they weigh several times the text.

import { Composer, Document, Parser } from 'yaml';
import { isConflictMarker } from './line.ts';
import type { SyntaxNote } from './note.ts';
import { noteErrors } from './read-errors.ts';
import { ownReasons } from './reasons.ts';
import { firstTooDeep } from './too-deep.ts';
import type { Tree } from './tree.ts';
import { viewNodes } from './view-nodes.ts';

export interface Reading {
  readonly tree: Tree;
  readonly notes: readonly SyntaxNote[];
}

// Keys are compared by viewNodes, in a set: the package compares each with all before it.
const options = {
  version: '1.2',
  uniqueKeys: false,
  prettyErrors: false,
  logLevel: 'silent',
  resolveKnownTags: false,
} as const;

// One schema for all entries: making one costs more than reading a short entry.
const shared = { ...options, schema: new Document(null, { ...options, schema: 'core' }).schema };

/** Reads one entry, or a whole file; of several documents the first. Never throws, whatever the text. */
export function readYaml(text: string): Reading {
  const notes: SyntaxNote[] = [];
  const clean = withoutMarkers(text, notes);
  const nothing: Tree = { kind: 'empty', range: { from: 0, to: 0 } };
  const deep = firstTooDeep(clean);
  if (deep !== undefined) {
    notes.push({ code: 'yaml-invalid', params: { reason: ownReasons.tooDeep }, range: { from: deep, to: deep + 1 } });
    return { tree: nothing, notes };
  }
  try {
    const composer = new Composer(shared);
    const documents = composer.compose(new Parser().parse(clean));
    const next = documents.next();
    if (next.done === true)
      return { tree: nothing, notes: [...notes, ...noteErrors(clean, composer.streamInfo(), [])] };
    const view = viewNodes(next.value.contents, clean);
    notes.push(...view.notes, ...noteErrors(clean, next.value, view.unclosed));
    if (documents.next().done !== true) {
      const from = secondDocument(clean, next.value.range[1]);
      notes.push({ code: 'second-document', params: {}, range: { from, to: Math.min(from + 3, clean.length) } });
    }
    return { tree: loneText(view.tree, notes), notes };
  } catch (error) {
    // The package recurses: a text can be deeper than the stack although no limit of ours saw it.
    if (!(error instanceof Error)) throw error;
    const reason = error instanceof RangeError ? ownReasons.tooDeep : 'this cannot be read';
    notes.push({ code: 'yaml-invalid', params: { reason }, range: { from: 0, to: Math.min(1, clean.length) } });
    return { tree: nothing, notes };
  }
}

/** Turns merge-conflict markers into comments of the same length, so that what stands between them is read. */
function withoutMarkers(text: string, notes: SyntaxNote[]): string {
  if (!/<{7}|={7}|>{7}|\|{7}/.test(text)) return text;
  let clean = '';
  for (let at = 0; at < text.length; ) {
    const feed = text.indexOf('\n', at);
    const next = feed === -1 ? text.length : feed + 1;
    const end = feed === -1 ? text.length : feed;
    if (isConflictMarker(text, at, end)) {
      const to = text[end - 1] === '\r' ? end - 1 : end;
      notes.push({ code: 'conflict-marker', params: { marker: text.slice(at, at + 7) }, range: { from: at, to } });
      clean += `#${text.slice(at + 1, next)}`;
    } else clean += text.slice(at, next);
    at = next;
  }
  return clean;
}

function secondDocument(text: string, from: number): number {
  const found = /(?:^|\n)(---)(?=\s|$)/g;
  found.lastIndex = Math.max(0, from - 1);
  const match = found.exec(text);
  return match === null ? from : match.index + match[0].length - 3;
}

/** A text alone is half a key: it is noted, and nothing is read from it. */
function loneText(tree: Tree, notes: SyntaxNote[]): Tree {
  if (tree.kind !== 'scalar') return tree;
  if (notes.length === 0)
    notes.push({ code: 'yaml-invalid', params: { reason: ownReasons.missingColon }, range: tree.range });
  return { kind: 'empty', range: tree.range };
}

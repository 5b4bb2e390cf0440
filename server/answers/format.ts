// A recipe with its spaces in order, as changes or as a text. What the file says, its comments, quotes and numbers stay.

import { equal } from '../recipe/equal.ts';
import { notesOf } from '../syntax/address.ts';
import { type Document, type TextChange, textOf } from '../syntax/document.ts';
import { withChanges } from '../syntax/edit.ts';
import { spaceChanges } from '../syntax/edit-spaces.ts';
import { readText } from '../syntax/read-text.ts';
import { plainValue, type Range } from '../syntax/tree.ts';

export type Formatted =
  | { readonly kind: 'formatted'; readonly changes: readonly TextChange[]; readonly text: string }
  /** What is broken is not moved about: it could come to mean something else. */
  | { readonly kind: 'broken'; readonly offset: number };

export function format(document: Document): Formatted {
  const broken = notesOf(document).find(({ code }) => code !== 'name-duplicate');
  if (broken !== undefined) return { kind: 'broken', offset: broken.range.from };
  const text = textOf(document);
  // Lines in order can let others come in order; a text that does not come to rest is not understood, and left as it is.
  let after = text;
  for (let pass = 0; pass < passes; pass++) {
    const next = onePass(after);
    if (next === after) return { kind: 'formatted', changes: spacesBetween(text, after), text: after };
    after = next;
  }
  return { kind: 'formatted', changes: [], text };
}

const passes = 4;

/** A text whose lines cannot be moved without changing what it says keeps its lines. */
function onePass(text: string): string {
  for (const indent of [true, false]) {
    const changes = [...spaceChanges(text, { indent })].sort((a, b) => a.from - b.from || a.to - b.to);
    const after = withChanges(text, changes);
    if (changes.length === 0 || saysTheSame(text, after)) return after;
  }
  return text;
}

/** The changes from one text to another that has the same words, with other spaces between them. */
function spacesBetween(before: string, after: string): readonly TextChange[] {
  const spaces = /[ \t\r\n]*/y;
  const changes: TextChange[] = [];
  for (let from = 0, there = 0; from <= before.length; from++, there++) {
    spaces.lastIndex = from;
    const was = spaces.exec(before)?.[0] ?? '';
    spaces.lastIndex = there;
    const is = spaces.exec(after)?.[0] ?? '';
    if (was !== is) changes.push({ from, to: from + was.length, text: is });
    from += was.length;
    there += is.length;
  }
  return changes;
}

/**
 * The changes within some lines, where they alone leave what the file says. Of lines that cannot be moved without the lines round
 * them, only the spaces inside are put in order.
 */
export function formatRange(document: Document, lines: Range): Formatted {
  const all = format(document);
  if (all.kind === 'broken') return all;
  const text = textOf(document);
  const from = text.lastIndexOf('\n', lines.from - 1) + 1;
  const feed = text.indexOf('\n', lines.to);
  const to = feed === -1 ? text.length : feed;
  for (const indent of [true, false]) {
    const changes = [...(indent ? all.changes : spaceChanges(text, { indent }))]
      .filter(change => from <= change.from && change.to <= to)
      .sort((a, b) => a.from - b.from || a.to - b.to);
    const after = withChanges(text, changes);
    if (changes.length === 0 || saysTheSame(text, after)) return { kind: 'formatted', changes, text: after };
  }
  return { kind: 'formatted', changes: [], text };
}

function saysTheSame(before: string, after: string): boolean {
  const [was, is] = [before, after].map(readText);
  if (was === undefined || is === undefined || was.notes.length !== is.notes.length) return false;
  return equal(plainValue(was.tree), plainValue(is.tree));
}

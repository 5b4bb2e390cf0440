// Edits said in places -> the smallest changes of text, every other byte kept. The only file that makes text changes:
// comments, order, quotes, line breaks and indentation elsewhere stay as their author left them.

import type { Edit } from '../../schema/edit.ts';
import type { Path } from '../../schema/place.ts';
import { type Found, find } from './address.ts';
import type { Document, TextChange } from './document.ts';
import { addFirst, addItem, addItemBefore, addPair } from './edit-add.ts';
import { removePart } from './edit-remove.ts';
import { rangeOf } from './place.ts';
import { indentAt, indented, lineBreakOf, writtenKey } from './write.ts';

/**
 * The changes that make some edits, in the order of the text; all count in the text before any of them, and changes at
 * one offset stand in the order of their edits. An edit whose place does not exist makes none.
 */
export function textEdits(document: Document, edits: readonly Edit[]): readonly TextChange[] {
  const made = new Set<string>();
  const changes = edits.flatMap(edit => {
    const change = changeFor(document, edit, made);
    return change === undefined ? [] : [change];
  });
  return changes.sort((a, b) => a.from - b.from || a.to - b.to);
}

/** A text after changes that count in the text before any of them. */
export function withChanges(text: string, changes: readonly TextChange[]): string {
  let result = '';
  let at = 0;
  for (const change of changes) {
    result += text.slice(at, Math.max(at, change.from)) + change.text;
    at = Math.max(at, change.to);
  }
  return result + text.slice(at);
}

function changeFor(document: Document, edit: Edit, made: Set<string>): TextChange | undefined {
  switch (edit.kind) {
    case 'replace':
      return replace(document, edit.at, edit.text);
    case 'rename':
      return rename(document, edit.path, edit.nth, edit.key);
    case 'insert':
      return edit.first === true
        ? addFirst(document, edit.key, edit.text)
        : addPair(document, edit.into, edit.key, edit.text);
    case 'append':
      return edit.before === undefined
        ? addItem(document, edit.to, edit.text, made)
        : addItemBefore(document, edit.to, edit.before, edit.text);
    case 'remove':
      return removePart(document, edit.path, edit.nth);
  }
}

function replace(
  document: Document,
  at: Extract<Edit, { kind: 'replace' }>['at'],
  text: string,
): TextChange | undefined {
  const range = rangeOf(document, at);
  const found = find(document, at.path);
  if (range === undefined || found === undefined) return undefined;
  const { entry, start, pair } = found;
  const indent = indentAt(entry.text, (pair?.key.range ?? found.tree.range).from);
  const written = indented(text, indent, lineBreakOf(document));
  if (at.part.kind !== 'value' || range.to > range.from) {
    const behindColon = written.includes('\n') ? undefined : colonBefore(found);
    return behindColon === undefined
      ? { ...range, text: written }
      : { ...range, from: behindColon, text: ` ${written}` };
  }
  // Nothing is written there: the value goes right behind the colon or dash, before any comment.
  let behind = range.from - start;
  while (behind > 0 && (entry.text[behind - 1] === ' ' || entry.text[behind - 1] === '\t')) behind--;
  const sign = entry.text[behind - 1];
  const lead = written.startsWith('\n') || written.startsWith('\r') ? '' : ' ';
  const colon = sign === ':' || (sign === '-' && pair === undefined) ? '' : ':';
  const next = entry.text[behind] ?? '\n';
  const tail = /[\s,\]}]/.test(next) ? '' : ' ';
  return { from: start + behind, to: start + behind, text: colon + lead + written + tail };
}

/** Where the colon ends behind which only line breaks stand before the lines of a map or list. */
function colonBefore({ tree, entry, start, pair }: Found): number | undefined {
  if (pair === undefined || (tree.kind !== 'map' && tree.kind !== 'list') || tree.flow) return undefined;
  const between = /^\s*:(?=\s+$)/.exec(entry.text.slice(pair.key.range.to, tree.range.from));
  return between === null ? undefined : start + pair.key.range.to + between[0].length;
}

function rename(document: Document, path: Path, nth: number | undefined, key: string): TextChange | undefined {
  const pair = find(document, path, nth)?.pair;
  const range = rangeOf(document, { path, part: nth === undefined ? { kind: 'key' } : { kind: 'key', nth } });
  if (range === undefined || pair === undefined) return undefined;
  return { ...range, text: writtenKey(key, pair.key) };
}

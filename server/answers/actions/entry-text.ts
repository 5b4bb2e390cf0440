// What an entry says, as it is written, so that it can be put somewhere else.

import type { Path } from '../../../schema/place.ts';
import { find } from '../../syntax/address.ts';
import type { Document } from '../../syntax/document.ts';
import type { Tree } from '../../syntax/tree.ts';

/**
 * The text of the value at a path, with its lines counted in from where they will be put: behind its new key where it is in braces,
 * on lines below it where it is not. Undefined where nothing is written, or not in a way that means the same elsewhere.
 */
export function entryText(document: Document, path: Path, into: 'lines' | 'braces'): string | undefined {
  const found = find(document, path);
  if (found === undefined || found.tree.range.to === found.tree.range.from) return undefined;
  const { tree, pair } = found;
  const all = found.entry.text;
  // An anchor or a repeat means something only where it stands.
  if (/[&*]\w/.test(all.slice(pair?.key.range.to ?? tree.range.from, tree.range.to))) return undefined;
  const isBlock = (tree.kind === 'map' || tree.kind === 'list') && !tree.flow;
  if (into === 'braces' && isBlock) return inBraces(all, tree);
  const lineStart = all.lastIndexOf('\n', tree.range.from - 1) + 1;
  const indent = isBlock ? tree.range.from - lineStart : leading(all.slice(lineStart));
  const lines = all
    .slice(tree.range.from, tree.range.to)
    .trimEnd()
    .split(/\r?\n/)
    .map((line, at) => (at === 0 ? line : line.slice(Math.min(indent, leading(line)))));
  return isBlock ? `\n  ${lines.join('\n  ')}` : lines.join('\n');
}

/** A map of lines on one line; undefined where that would lose a comment or the form of a text. */
function inBraces(all: string, tree: Tree): string | undefined {
  if (/(^|\s)#/.test(all.slice(tree.range.from, tree.range.to))) return undefined;
  const parts: string[] = [];
  switch (tree.kind) {
    case 'empty':
      return '';
    case 'scalar': {
      const written = all.slice(tree.range.from, tree.range.to);
      if (/\n/.test(written)) return undefined;
      return tree.style === 'plain' && /[,[\]{}]/.test(written) ? JSON.stringify(tree.text) : written;
    }
    case 'list': {
      for (const item of tree.items) {
        const text = inBraces(all, item);
        if (text === undefined) return undefined;
        parts.push(text);
      }
      return `[${parts.join(', ')}]`;
    }
    case 'map': {
      for (const { key, value } of tree.pairs) {
        const text = inBraces(all, value);
        if (text === undefined) return undefined;
        parts.push(`${all.slice(key.range.from, key.range.to)}:${text === '' ? '' : ` ${text}`}`);
      }
      return parts.length === 0 ? '{}' : `{ ${parts.join(', ')} }`;
    }
  }
}

function leading(line: string): number {
  return line.length - line.trimStart().length;
}

// What can be folded away: sections, entries and whatever else runs over several lines, and blocks of comments.

import { memo } from '../../plan/memo.ts';
import { type Document, entryAt } from '../../syntax/document.ts';
import type { Entry } from '../../syntax/entry.ts';
import { pairRange } from '../../syntax/place.ts';
import { tokensOf } from '../../syntax/tokens.ts';
import type { Range } from '../../syntax/tree.ts';
import { walk } from '../../syntax/walk.ts';

export interface Fold {
  readonly kind: 'entry' | 'comment';
  /** From the line that stays in sight to the end of what is folded; it always spans a line break. */
  readonly range: Range;
}

/** In the order of the text; a line folds one way, the outer of two that begin on it. */
export function folding(document: Document): readonly Fold[] {
  return document.entries.flatMap((entry, index) => {
    const start = document.starts[index] ?? 0;
    const own = entryFolds(entry).map(({ kind, range: { from, to } }) => fold(kind, start + from, start + to));
    const section = entry.opens === undefined ? undefined : sectionFold(document, entry.opens);
    return section === undefined ? own : [...own, section].sort((a, b) => a.range.from - b.range.from);
  });
}

/** From the key of a section that is cut into entries to the last word of its last entry. */
function sectionFold(document: Document, section: string): Fold | undefined {
  const range = pairRange(document, [section]);
  if (range === undefined) return undefined;
  const { entry, start } = entryAt(document, Math.max(range.from, range.to - 1));
  const to = start + entry.text.slice(0, range.to - start).trimEnd().length;
  return entryAt(document, range.from).entry === entry ? undefined : fold('entry', range.from, to);
}

/** Counted from the start of the entry, and found once for each, as editors ask after every change. */
const entryFolds = memo(({ text, tree }: Entry): readonly Fold[] => {
  const folds: Fold[] = [];
  const add = (kind: Fold['kind'], { from, to }: Range): void => {
    const end = from + text.slice(from, to).trimEnd().length;
    if (text.slice(from, end).includes('\n')) folds.push(fold(kind, from, end));
  };
  for (const { key, value } of walk(tree)) {
    // A single value that is folded over lines, as a long text in quotes, is left alone unless it is a block.
    if (value.kind === 'empty' || (value.kind === 'scalar' && value.style !== 'block')) continue;
    add('entry', { from: key?.range.from ?? value.range.from, to: value.range.to });
  }
  for (const block of commentBlocks(text)) add('comment', block);
  folds.sort((a, b) => a.range.from - b.range.from || b.range.to - a.range.to);
  return folds.filter(({ range }, at) => at === 0 || text.slice(folds[at - 1]?.range.from, range.from).includes('\n'));
});

function fold(kind: Fold['kind'], from: number, to: number): Fold {
  return { kind, range: { from, to } };
}

/** Runs of lines that hold nothing but a comment. */
function commentBlocks(text: string): readonly Range[] {
  const blocks: { from: number; to: number }[] = [];
  if (!text.includes('#')) return blocks;
  let isLineStart = true;
  let open: { from: number; to: number } | undefined;
  for (const { kind, from, text: written } of tokensOf(text)) {
    if (kind === 'comment' && isLineStart) {
      if (open === undefined) {
        open = { from, to: from + written.length };
        blocks.push(open);
      } else {
        open.to = from + written.length;
      }
    } else if (kind === 'break') {
      // An empty line ends a block: two breaks with no comment between them.
      if (isLineStart && open !== undefined && text.slice(open.to, from).includes('\n')) open = undefined;
    } else if (kind !== 'space' && kind !== 'comment') {
      open = undefined;
    }
    if (kind !== 'space') isLineStart = kind === 'break' || kind === 'block-text' || kind === 'mark';
  }
  return blocks;
}

// The errors of the `yaml` package -> notes. One slip makes the package complain many times; this keeps what a grower
// can act on, where it is.

import type { YAMLError } from 'yaml';
import { limits } from './limits.ts';
import type { SyntaxNote } from './note.ts';
import { ownReasons, reasons } from './reasons.ts';
import { openQuoteAt } from './tokens.ts';
import type { Unclosed } from './view-nodes.ts';

interface Complaints {
  readonly errors: readonly YAMLError[];
  readonly warnings: readonly YAMLError[];
}

/** Notes for what the package found in `text`, in the order of the text. */
export function noteErrors(text: string, found: Complaints, unclosed: readonly Unclosed[]): readonly SyntaxNote[] {
  const tags = found.warnings.filter(warning => warning.code === 'TAG_RESOLVE_FAILED');
  const errors = [...found.errors, ...tags];
  if (errors.length === 0) return openQuoteNotes(text);
  const tabs = tabNotes(text);
  if (tabs.length > 0) return tabs;
  // What follows a quote or brace that is never closed is an echo of it.
  const [first] = [...unclosed].sort((a, b) => a.at - b.at);
  const notes: SyntaxNote[] = [];
  for (const error of errors) {
    if (first !== undefined && error.pos[0] >= first.at) continue;
    const from = Math.min(error.pos[0], text.length);
    const to = Math.max(from, Math.min(error.pos[1], endOfLine(text, from)));
    notes.push({ code: 'yaml-invalid', params: { reason: reasonOf(error) }, range: widened(text, from, to) });
  }
  if (first !== undefined && errors.some(error => error.pos[0] >= first.at)) {
    notes.push({ code: 'yaml-invalid', params: { reason: first.reason }, range: { from: first.at, to: first.at + 1 } });
  }
  return notes.sort((a, b) => a.range.from - b.range.from).slice(0, limits.notesPerEntry);
}

/** The package is silent about a quote that is open after a doubled one, or that stands behind an explicit key. */
function openQuoteNotes(text: string): SyntaxNote[] {
  const at = openQuoteAt(text);
  if (at === undefined) return [];
  return [{ code: 'yaml-invalid', params: { reason: ownReasons.unclosedQuote }, range: { from: at, to: at + 1 } }];
}

/** The tabs that indent lines. Only a text that the package refused is asked: in a block text tabs are content. */
function tabNotes(text: string): SyntaxNote[] {
  if (!text.includes('\t')) return [];
  const notes: SyntaxNote[] = [];
  for (const found of text.matchAll(/(^|\n)( *)(\t[ \t]*)(?=[^\s#])/g)) {
    const from = found.index + (found[1]?.length ?? 0) + (found[2]?.length ?? 0);
    notes.push({ code: 'tab-indent', params: {}, range: { from, to: from + (found[3]?.length ?? 1) } });
    if (notes.length === limits.notesPerEntry) break;
  }
  return notes;
}

function reasonOf(error: YAMLError): string {
  if (error.code !== 'MISSING_CHAR') return reasons[error.code];
  if (error.message.includes('map value')) return ownReasons.missingColon;
  if (error.message.includes('quote')) return ownReasons.unclosedQuote;
  if (error.message.includes('space')) return ownReasons.missingSpace;
  if (error.message.includes(',')) return ownReasons.missingColonOrComma;
  return reasons.MISSING_CHAR;
}

function endOfLine(text: string, from: number): number {
  const feed = text.indexOf('\n', from);
  const end = feed === -1 ? text.length : feed;
  return end > from && text[end - 1] === '\r' ? end - 1 : end;
}

/** An empty range cannot be seen: it takes in the unit before it, or after it. */
function widened(text: string, from: number, to: number): { from: number; to: number } {
  if (to > from) return { from, to };
  const before = text[from - 1];
  if (before !== undefined && before !== '\n') return { from: from - 1, to: from };
  return { from, to: Math.min(from + 1, text.length) };
}

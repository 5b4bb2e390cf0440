// What an edit adds to a text, as the lines of the text after it: those that are new, or that it changes.

import type { TextChange } from '../syntax/document.ts';

export interface AddedLines {
  /** The first of them, counted from 1. */
  readonly line: number;
  /** Each ends with a line feed. */
  readonly text: string;
}

/** The lines on which the inserted text stands; blank ends of the insertion count for nothing. */
export function addedLines(before: string, { from, to, text }: TextChange): AddedLines {
  const after = before.slice(0, from) + text + before.slice(to);
  const first = from + text.length - text.trimStart().length;
  const end = from + text.trimEnd().length;
  const start = after.lastIndexOf('\n', first - 1) + 1;
  const feed = after.indexOf('\n', end);
  const lines = after.slice(start, feed === -1 ? after.length : feed);
  return { line: after.slice(0, start).split('\n').length, text: `${lines.replaceAll('\r', '')}\n` };
}

// What a printed page holds, whatever it is printed as: text for a terminal, Markdown, or HTML. Reports fill it with words; the three
// printers beside this file decide only how it looks.

export interface Page {
  readonly title: string;
  /** What it is about, under the title: a line each. */
  readonly about: readonly string[];
  readonly sections: readonly Section[];
  /** The last line. */
  readonly foot: string;
}

export interface Section {
  readonly heading: string;
  readonly blocks: readonly Block[];
}

export type Block =
  | { readonly kind: 'paragraph'; readonly text: string }
  /** What is to be ticked off. */
  | { readonly kind: 'checklist'; readonly items: readonly string[] }
  | Table
  /** Room to write values in, each with what to expect. */
  | { readonly kind: 'write'; readonly fields: readonly Field[] }
  /** What may hurt somebody; set apart in every print. */
  | { readonly kind: 'caution'; readonly about: string; readonly sentences: readonly string[] };

export interface Table {
  readonly kind: 'table';
  /** What the table shows, for those who do not see it; printed only where it adds to the heading. */
  readonly caption: string;
  readonly columns: readonly Column[];
  readonly rows: readonly (readonly Cell[])[];
}

export interface Column {
  readonly name: string;
  /** Numbers stand at the right. */
  readonly align?: 'right';
}

/** A text, boxes to tick, or room to write; what has no text of its own says in `for` what it is for. */
export type Cell =
  | string
  | { readonly kind: 'boxes'; readonly count: number; readonly for: string }
  | { readonly kind: 'room'; readonly for: string };

export interface Field {
  readonly label: string;
  /** What to expect, as `about 6.9`. */
  readonly hint?: string;
}

export function paragraph(text: string): Block {
  return { kind: 'paragraph', text };
}

export function checklist(items: readonly string[]): Block {
  return { kind: 'checklist', items };
}

export function table(caption: string, columns: readonly Column[], rows: Table['rows']): Block {
  return { kind: 'table', caption, columns, rows };
}

export function write(fields: readonly Field[]): Block {
  return { kind: 'write', fields };
}

export function caution(about: string, sentences: readonly string[]): Block {
  return { kind: 'caution', about, sentences };
}

export function room(forWhat: string): Cell {
  return { kind: 'room', for: forWhat };
}

/** More boxes than this would not fit a line: then there is room to count. */
const mostBoxes = 6;

export function boxes(count: number, forWhat: string): Cell {
  return count > mostBoxes
    ? { kind: 'room', for: `${forWhat}, how many of ${count}` }
    : { kind: 'boxes', count: Math.max(1, count), for: forWhat };
}

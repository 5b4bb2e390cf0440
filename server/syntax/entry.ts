// One entry: its text, and its tree when somebody asks. A class for its identity: an entry that an edit did not touch
// stays the same object, and whatever was computed from it is remembered by it.

import type { Path } from '../../schema/place.ts';
import type { SyntaxNote } from './note.ts';
import { readText } from './read-text.ts';
import type { Reading } from './read-yaml.ts';
import type { Cut } from './split.ts';
import type { Tree } from './tree.ts';

export class Entry {
  readonly text: string;
  readonly cut: Cut;
  /** Line feeds in the text. */
  readonly breaks: number;
  /** What stands in it that may forbid cutting its file: see whole.ts. */
  readonly signs: number;
  /**
   * Where the entry's tree hangs: `[]` for pieces of the top level, `['batches']` for a pair or item of that section.
   * The tree of a pair is a map that holds it, the tree of an item a list that holds it.
   */
  readonly base: Path;
  #reading: Reading | undefined;
  #lines: readonly number[] | undefined;

  constructor(text: string, cut: Cut, breaks: number, signs: number) {
    this.text = text;
    this.cut = cut;
    this.breaks = breaks;
    this.signs = signs;
    this.base = cut.role === 'child' && cut.section !== undefined ? [cut.section] : [];
  }

  /** The section whose children are the entries after this one; undefined for all but a section's bare head. */
  get opens(): string | undefined {
    return this.cut.role === 'head' ? this.cut.section : undefined;
  }

  /** A map or a list, or empty where nothing could be read. Ranges count from the entry's start. */
  get tree(): Tree {
    return this.#read().tree;
  }

  /** What is wrong inside this entry. Paths are below its base, list items counted from 0 within the entry. */
  get notes(): readonly SyntaxNote[] {
    return this.#read().notes;
  }

  /** Where its lines begin. */
  get lines(): readonly number[] {
    if (this.#lines === undefined) {
      const lines = [0];
      for (let at = this.text.indexOf('\n'); at !== -1; at = this.text.indexOf('\n', at + 1)) lines.push(at + 1);
      this.#lines = lines;
    }
    return this.#lines;
  }

  #read(): Reading {
    this.#reading ??= this.cut.refused === undefined ? readText(this.text) : refuse(this.cut.refused);
    return this.#reading;
  }
}

function refuse(note: SyntaxNote): Reading {
  return { tree: { kind: 'empty', range: { from: 0, to: 0 } }, notes: [note] };
}

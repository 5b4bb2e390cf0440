// Many files at one moment: applies changes, knows who uses whom, and hands out snapshots. A class for its identity: it is the
// one place in the core where something changes.

import { Remembered } from '../../schema/remembered.ts';
import { type Reading, type Recipe, readRecipe } from '../recipe/recipe.ts';
import { followUse, type NoFile, type Scope, type Used } from '../recipe/use.ts';
import { applyChange, type Document, openDocument, type TextChange } from '../syntax/document.ts';
import type { FileText } from './files.ts';
import { type Snapshot, takeSnapshot } from './snapshot.ts';

interface Held {
  document: Document;
  reading: Reading;
  /** Open in an editor: its text is the editor's, whatever the disk says. */
  open: boolean;
  used?: Used;
  snapshot?: Snapshot;
}

export class Workspace {
  readonly #files = new Map<string, Held>();
  readonly #missing = new Map<string, NoFile>();

  /** An editor opened a file, or a command line read one. */
  open(uri: string, text: string): void {
    this.#put(uri, openDocument(text), true);
  }

  /** An editor changed an open file; ranges count in the text as each change finds it. */
  change(uri: string, changes: readonly TextChange[]): void {
    const held = this.#files.get(uri);
    if (held === undefined) return;
    this.#put(uri, changes.reduce(applyChange, held.document), held.open);
  }

  /** An editor closed a file; what the disk holds counts again, and is to be told by `arrived`. */
  close(uri: string): void {
    if (this.#files.delete(uri)) this.#forgetUsersOf(uri);
  }

  /** A file that was wanted has been read, or cannot be. What an editor holds open is not touched. */
  arrived(uri: string, file: FileText): void {
    const held = this.#files.get(uri);
    if (held?.open === true) return;
    if (file.kind === 'text') {
      this.#put(uri, openDocument(file.text, held?.document.entries), false);
      return;
    }
    this.#files.delete(uri);
    if (this.#missing.get(uri) === file.why) return;
    this.#missing.set(uri, file.why);
    this.#forgetUsersOf(uri);
  }

  has(uri: string): boolean {
    return this.#files.has(uri);
  }

  isOpen(uri: string): boolean {
    return this.#files.get(uri)?.open === true;
  }

  documentOf(uri: string): Document | undefined {
    return this.#files.get(uri)?.document;
  }

  /** Every file held, open or read for others. */
  get uris(): readonly string[] {
    return [...this.#files.keys()];
  }

  /** The files that were asked for by `use` and about which nothing is known yet. */
  wanted(): readonly string[] {
    const asked = new Set<string>();
    for (const [uri, held] of this.#files) for (const file of this.#usedBy(uri, held).asked) asked.add(file);
    return [...asked].filter(uri => !this.#files.has(uri) && !this.#missing.has(uri));
  }

  /** The files that could not be had for a reason. */
  missing(why: NoFile): readonly string[] {
    return [...this.#missing].flatMap(([uri, reason]) => (reason === why ? [uri] : []));
  }

  /** The files whose findings may change when a file does: those that use it, directly or not. */
  usersOf(uri: string): readonly string[] {
    return [...this.#files].flatMap(([user, held]) => (held.used?.asked.includes(uri) === true ? [user] : []));
  }

  /** The files that a file asks for, directly or not, present or not. */
  usedBy(uri: string): readonly string[] {
    const held = this.#files.get(uri);
    return held === undefined ? [] : this.#usedBy(uri, held).asked;
  }

  /** All that is known of a file now; the same object until something it depends on changes. */
  snapshot(uri: string): Snapshot | undefined {
    const held = this.#files.get(uri);
    if (held === undefined) return undefined;
    const used = this.#usedBy(uri, held);
    held.snapshot ??= takeSnapshot(uri, held.document, held.reading, this.#scopeOf(uri, held, used), used, other =>
      this.documentOf(other),
    );
    return held.snapshot;
  }

  #put(uri: string, document: Document, open: boolean): void {
    const held = this.#files.get(uri);
    const before = held?.reading.recipe;
    const reading = readRecipe(document, before);
    this.#missing.delete(uri);
    if (held === undefined) {
      this.#files.set(uri, { document, reading, open });
      this.#forgetUsersOf(uri);
      return;
    }
    held.document = document;
    held.reading = reading;
    held.open = open;
    delete held.snapshot;
    if (before?.use !== reading.recipe.use) delete held.used;
    // Who borrows from this file sees only its values: a changed comment changes nothing for them.
    if (before !== reading.recipe) this.#forgetUsersOf(uri);
  }

  #forgetUsersOf(uri: string): void {
    for (const user of this.usersOf(uri)) {
      const held = this.#files.get(user);
      if (held === undefined) continue;
      delete held.used;
      delete held.snapshot;
    }
  }

  #usedBy(uri: string, held: Held): Used {
    held.used ??= followUse(uri, held.reading.recipe, file => this.#recipeIn(file));
    return held.used;
  }

  #recipeIn(uri: string): Recipe | NoFile | 'pending' {
    return this.#files.get(uri)?.reading.recipe ?? this.#missing.get(uri) ?? 'pending';
  }

  readonly #scopes = new Remembered<Recipe, Scope>();

  /** The same scope for the same recipe with the same lenders, so that a changed comment changes no plan. */
  #scopeOf(uri: string, held: Held, used: Used): Scope {
    const { recipe } = held.reading;
    const known = this.#scopes.get(recipe);
    const same =
      known !== undefined &&
      known.file === uri &&
      known.lenders.length === used.lenders.length &&
      known.lenders.every((lender, index) => lender.recipe === used.lenders[index]?.recipe);
    if (same) return known;
    const scope: Scope = { file: uri, recipe, lenders: used.lenders };
    this.#scopes.set(recipe, scope);
    return scope;
  }
}

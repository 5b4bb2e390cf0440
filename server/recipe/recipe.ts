// A recipe as plain values: each section a map from names, put together from entries that are read once each. Equal values stay
// the same objects from one version of a text to the next, so that what was computed from them need not be computed again.

import type { Finding } from '../../schema/findings.ts';
import type { Path, Place } from '../../schema/place.ts';
import { recipe as recipeSchema } from '../../schema/recipe.ts';
import { Remembered } from '../../schema/remembered.ts';
import { type SectionName, sectionNames } from '../../schema/section-names.ts';
import { piecesRead } from '../syntax/address.ts';
import type { Document } from '../syntax/document.ts';
import type { Entry } from '../syntax/entry.ts';
import { equal } from './equal.ts';
import { keysOf, schemaAt } from './form.ts';
import { haveSameKeys, keepNames } from './names-of.ts';
import { type Notes, read } from './read.ts';
import type { LogEntry, RecipeValues, SectionEntries } from './seen.ts';

export type Sections = { readonly [S in SectionName]: ReadonlyMap<string, SectionEntries[S]> };

export interface Recipe {
  readonly version?: 1;
  readonly title?: string;
  readonly start?: NonNullable<RecipeValues['start']>;
  readonly show: 'metric' | 'us';
  readonly use: readonly (string | undefined)[];
  readonly sections: Sections;
  readonly log: readonly (LogEntry | undefined)[];
}

export interface Reading {
  readonly recipe: Recipe;
  readonly notes: readonly Finding[];
}

/** Puts a recipe together from a document; `before` lends its value objects wherever they still say the same. */
export function readRecipe(document: Document, before?: Recipe): Reading {
  const top: Record<string, unknown> = {};
  const sections: Partial<Record<SectionName, ReadonlyMap<string, unknown>>> = {};
  let log: readonly (LogEntry | undefined)[] = [];
  const notes: Finding[] = [];
  let hasVersion = false;
  for (const { entry, children } of piecesRead(document)) {
    const piece = readEntry(entry);
    notes.push(...piece.notes);
    hasVersion ||= piece.keys.includes('recipe');
    for (const [key, value] of Object.entries(piece.values)) {
      if (key === 'log') log = value as readonly (LogEntry | undefined)[];
      else if (isSection(key))
        sections[key] ??= keptMap([value as ReadonlyMap<string, unknown>], before?.sections[key]);
      else if (!Object.hasOwn(top, key)) top[key] = value;
    }
    const section = entry.opens;
    if (section === undefined || children.length === 0) continue;
    if (section === 'log') {
      const read = readItems(children);
      log = read.items as readonly (LogEntry | undefined)[];
      notes.push(...read.notes);
    } else if (section === 'use') {
      const read = readItems(children);
      if (!Object.hasOwn(top, section)) top[section] = read.items;
      notes.push(...read.notes);
    } else if (isSection(section)) {
      const read = readSection(entry, children, before?.sections[section]);
      sections[section] ??= read.named;
      notes.push(...read.notes);
    } else notes.push(...children.flatMap(child => readEntry(child).notes));
  }
  const otherVersion = notes.find(({ code }) => code === 'version-unsupported');
  // What the words of another version mean is not known, so nothing is taken from it and nothing else is said of it.
  if (otherVersion !== undefined) return { recipe: nothingRead, notes: [otherVersion] };
  if (!hasVersion && document.entries.some(isMapOfKeys)) notes.push(versionMissing);
  const values = top as RecipeValues;
  const made: Recipe = {
    ...(values.recipe === undefined ? {} : { version: values.recipe }),
    ...(values.title === undefined ? {} : { title: values.title }),
    ...(values.start === undefined ? {} : { start: values.start }),
    show: values.show ?? 'metric',
    use: kept(values.use ?? [], before?.use),
    sections: keptSections(sections, before?.sections),
    log: keptList(log, before?.log),
  };
  return { recipe: before !== undefined && sameMembers(made, before) ? before : made, notes };
}

/** Whether an entry holds keys of the file itself: what is no map at all lacks more than its version. */
function isMapOfKeys({ base, tree }: Entry): boolean {
  return base.length === 0 && tree.kind === 'map';
}

const versionMissing: Finding = {
  code: 'value-missing',
  params: { key: 'recipe', inside: 'A recipe', needed: 'the version of the format, 1' },
  at: { path: [], part: { kind: 'value' } },
  fixes: [
    {
      title: 'Add `recipe: 1`',
      edits: [{ kind: 'insert', into: [], key: 'recipe', text: '1', first: true }],
      sure: true,
    },
  ],
};

interface Piece {
  readonly values: Readonly<Record<string, unknown>>;
  readonly named: ReadonlyMap<string, unknown>;
  readonly items: readonly unknown[];
  readonly keys: readonly string[];
  readonly notes: readonly Finding[];
}

const pieces = new Remembered<Entry, Piece>();

/** What one entry says; read once. Numbers of list items in its notes count from the entry's own first item. */
function readEntry(entry: Entry): Piece {
  const known = pieces.get(entry);
  if (known !== undefined) return known;
  const notes: Notes = [];
  const schema = schemaAt(recipeSchema, entry.base);
  const tree = entry.tree;
  // What a section's head opens is read with its children; a head that opens nothing known is an unknown key.
  const isHead = entry.opens !== undefined && keysOf(recipeSchema).includes(entry.opens);
  const value =
    schema === undefined || isHead || tree.kind === 'empty' ? undefined : read(schema, tree, entry.base, notes);
  const piece: Piece = {
    values: entry.base.length === 0 && isRecord(value) ? value : {},
    named: value instanceof Map ? value : new Map(),
    items: Array.isArray(value) ? value : [],
    keys: tree.kind === 'map' ? tree.pairs.map(pair => pair.key.text) : [],
    notes,
  };
  pieces.set(entry, piece);
  return piece;
}

interface SectionPiece {
  readonly children: readonly Entry[];
  readonly read: readonly Piece[];
  readonly named: ReadonlyMap<string, unknown>;
  readonly notes: readonly Finding[];
}

/** By the head of the section, what was read of it last. */
const sectionPieces = new Remembered<Entry, SectionPiece>();

/** The named values of a section's children. An edit inside one of them leaves the others as they are. */
function readSection(
  head: Entry,
  children: readonly Entry[],
  before: ReadonlyMap<string, unknown> | undefined,
): SectionPiece {
  const last = sectionPieces.get(head);
  if (last?.children === children) return last;
  const read = children.map(
    (child, at) => (child === last?.children[at] ? last.read[at] : undefined) ?? readEntry(child),
  );
  const notes: Finding[] = [];
  for (const piece of read) if (piece.notes.length > 0) notes.push(...piece.notes);
  const changed = last === undefined || last.named !== before ? undefined : changedIn(read, last.read);
  const named =
    before === undefined || changed === undefined
      ? keptMap(
          read.map(piece => piece.named),
          before,
        )
      : withValues(before, changed);
  const piece = { children, read, named, notes };
  sectionPieces.set(head, piece);
  return piece;
}

/** The maps of the pieces that are not those of before; undefined where a name came or went. */
function changedIn(read: readonly Piece[], before: readonly Piece[]): Piece['named'][] | undefined {
  if (read.length !== before.length) return undefined;
  const changed: Piece['named'][] = [];
  for (const [at, piece] of read.entries()) {
    const was = before[at];
    if (piece === was) continue;
    if (was === undefined || !haveSameKeys(piece.named, was.named)) return undefined;
    changed.push(piece.named);
  }
  return changed;
}

/** A map with other values for some of its names; itself where they say the same. */
function withValues(
  before: ReadonlyMap<string, unknown>,
  changed: readonly ReadonlyMap<string, unknown>[],
): ReadonlyMap<string, unknown> {
  const values = changed.flatMap(named =>
    [...named].map(([name, value]) => [name, kept(value, before.get(name))] as const),
  );
  const others = values.filter(([name, value]) => before.get(name) !== value);
  if (others.length === 0) return before;
  const into = new Map(before);
  for (const [name, value] of others) into.set(name, value);
  keepNames(into, before);
  return into;
}

interface ListPiece {
  readonly items: readonly unknown[];
  readonly notes: readonly Finding[];
}

const listPieces = new Remembered<readonly Entry[], ListPiece>();

/** The items of a list of the top level whose items stand on lines of their own. */
function readItems(children: readonly Entry[]): ListPiece {
  const known = listPieces.get(children);
  if (known !== undefined) return known;
  const items: unknown[] = [];
  const notes: Finding[] = [];
  for (const child of children) {
    const piece = readEntry(child);
    for (const note of piece.notes) notes.push(moved(note, items.length));
    items.push(...piece.items);
  }
  const piece = { items, notes };
  listPieces.set(children, piece);
  return piece;
}

function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value) && !(value instanceof Map);
}

/** A note of a list's item with the number of the item in the whole list. */
function moved(note: Finding, by: number): Finding {
  if (by === 0) return note;
  const place = (at: Place): Place => ({ ...at, path: movedPath(at.path, by) });
  const fixes = note.fixes?.map(fix => ({
    ...fix,
    edits: fix.edits.map(edit => {
      if (edit.kind === 'replace') return { ...edit, at: place(edit.at) };
      if (edit.kind === 'insert') return { ...edit, into: movedPath(edit.into, by) };
      if (edit.kind === 'append') return { ...edit, to: movedPath(edit.to, by) };
      return { ...edit, path: movedPath(edit.path, by) };
    }),
  }));
  return { ...note, at: place(note.at), ...(fixes === undefined ? {} : { fixes }) } as Finding;
}

function movedPath(path: Path, by: number): Path {
  const [section, item, ...rest] = path;
  return section !== undefined && typeof item === 'number' ? [section, item + by, ...rest] : path;
}

function isSection(key: string): key is SectionName {
  return Object.hasOwn(sectionNames, key);
}

/** Named values together, the first of equal names, each as the object it was before where it says the same; so too their map. */
function keptMap(
  from: readonly ReadonlyMap<string, unknown>[],
  before: ReadonlyMap<string, unknown> | undefined,
): ReadonlyMap<string, unknown> {
  const into = new Map<string, unknown>();
  for (const named of from) {
    for (const [name, value] of named) if (!into.has(name)) into.set(name, kept(value, before?.get(name)));
  }
  if (before === undefined) return into;
  if (sameMap(into, before)) return before;
  if (haveSameKeys(into, before)) keepNames(into, before);
  return into;
}

function kept<T>(value: T, before: T | undefined): T {
  return before !== undefined && equal(value, before) ? before : value;
}

/** One empty map for each section, so that an empty section too stays the same object. */
const noEntries = Object.fromEntries(Object.keys(sectionNames).map(name => [name, new Map()])) as unknown as Sections;

/** What is taken from a file of another version. */
const nothingRead: Recipe = { show: 'metric', use: [], sections: keptSections({}, undefined), log: [] };

function keptSections(
  made: Partial<Record<SectionName, ReadonlyMap<string, unknown>>>,
  before: Sections | undefined,
): Sections {
  const names = Object.keys(sectionNames) as readonly SectionName[];
  const sections = Object.fromEntries(names.map(name => [name, made[name] ?? noEntries[name]])) as unknown as Sections;
  return before !== undefined && names.every(name => sections[name] === before[name]) ? before : sections;
}

function sameMap(a: ReadonlyMap<string, unknown>, b: ReadonlyMap<string, unknown>): boolean {
  if (a.size !== b.size) return false;
  const others = b.entries();
  for (const [name, value] of a) {
    const [otherName, other] = others.next().value ?? [];
    if (name !== otherName || value !== other) return false;
  }
  return true;
}

function keptList<T>(made: readonly T[], before: readonly T[] | undefined): readonly T[] {
  if (before === undefined) return made;
  const items = made.map((item, index) => kept(item, before[index]));
  return items.length === before.length && items.every((item, index) => item === before[index]) ? before : items;
}

function sameMembers(a: Recipe, b: Recipe): boolean {
  return (
    a.version === b.version &&
    a.title === b.title &&
    a.start === b.start &&
    a.show === b.show &&
    a.use === b.use &&
    a.sections === b.sections &&
    a.log === b.log
  );
}

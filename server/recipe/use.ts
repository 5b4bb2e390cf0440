// Which names a recipe sees: its own first, then those of the files it uses, in order, and of what they use. Files arrive through
// a function, so that editors, disks and tests can all give them.

import type { Finding } from '../../schema/findings.ts';
import type { Path } from '../../schema/place.ts';
import { Remembered } from '../../schema/remembered.ts';
import { lentSections, type SectionName, sectionNames } from '../../schema/section-names.ts';
import type { Recipe } from './recipe.ts';
import type { SectionEntries } from './seen.ts';

/** An entry with where it stands. `file` is left out for the recipe's own. */
export interface Sourced<T> {
  readonly name: string;
  readonly value: T;
  readonly path: Path;
  readonly file?: string;
}

export interface Lender {
  readonly file: string;
  readonly recipe: Recipe;
}

/** A recipe with the files it borrows from, nearest first. */
export interface Scope {
  readonly file: string;
  readonly recipe: Recipe;
  readonly lenders: readonly Lender[];
}

/** Why a used file cannot be had. */
export type NoFile = 'absent' | 'unreadable' | 'outside';

/** Gives the recipe in a file, or why there is none; `pending` while it is being read. */
export type LoadRecipe = (file: string) => Recipe | NoFile | 'pending';

export interface Used {
  readonly lenders: readonly Lender[];
  readonly findings: readonly Finding[];
  /** Every file asked for, present or not: a change in one of them changes this recipe. */
  readonly asked: readonly string[];
}

/** Follows `use` from a recipe through all files, each once. Only what is wrong in this recipe's own `use` becomes a finding. */
export function followUse(file: string, recipe: Recipe, load: LoadRecipe): Used {
  const lenders: Lender[] = [];
  const findings: Finding[] = [];
  const asked = new Set<string>();
  recipe.use.forEach((written, index) => {
    if (written === undefined) return;
    const at = { path: ['use', index], part: { kind: 'value' } } as const;
    const missing = (reason: NoFile | 'not-relative'): void => {
      findings.push({ code: 'file-missing', params: { file: written, reason }, at });
    };
    const uri = resolved(file, written);
    if (uri === undefined) {
      // Beside a text that has never been saved there is nothing.
      missing(hasFolder(file) ? 'not-relative' : 'absent');
      return;
    }
    const chain = circle(file, uri, load, asked);
    if (chain !== undefined) {
      findings.push({ code: 'cycle', params: { chain: [file, ...chain].map(nameOfFile) }, at });
      return;
    }
    const got = load(uri);
    asked.add(uri);
    if (got === 'pending') return;
    if (typeof got === 'string') missing(got);
    else addLenders(uri, got, load, lenders, asked);
  });
  return { lenders, findings, asked: [...asked] };
}

/** The URI that a written relative path means, seen from a file; undefined where it is no such path or the file is in no folder. */
export function resolved(file: string, written: string): string | undefined {
  if (
    !hasFolder(file) ||
    written.trim() === '' ||
    /^[a-z][a-z0-9+.-]*:/i.test(written) ||
    written.startsWith('/') ||
    written.includes('\\')
  ) {
    return undefined;
  }
  const encoded = written.split('/').map(encodeURIComponent).join('/');
  return new URL(encoded, file).href;
}

/** Whether other files can stand beside a file: not so for `untitled:Untitled-1`. */
function hasFolder(file: string): boolean {
  return URL.canParse('.', file);
}

/** The last part of a file's URI, as a person would say it. */
export function nameOfFile(uri: string): string {
  const last = uri.slice(uri.lastIndexOf('/') + 1);
  try {
    return decodeURIComponent(last);
  } catch {
    return last;
  }
}

function addLenders(uri: string, recipe: Recipe, load: LoadRecipe, into: Lender[], asked: Set<string>): void {
  if (into.some(lender => lender.file === uri)) return;
  into.push({ file: uri, recipe });
  for (const written of recipe.use) {
    const next = written === undefined ? undefined : resolved(uri, written);
    if (next === undefined) continue;
    asked.add(next);
    const got = load(next);
    if (typeof got !== 'string') addLenders(next, got, load, into, asked);
  }
}

/** The way from `uri` back to `file` through `use`, or undefined where there is none. */
function circle(file: string, uri: string, load: LoadRecipe, asked: Set<string>): readonly string[] | undefined {
  const seen = new Set<string>();
  const walk = (at: string): readonly string[] | undefined => {
    if (at === file) return [at];
    if (seen.has(at)) return undefined;
    seen.add(at);
    asked.add(at);
    const got = load(at);
    if (typeof got === 'string') return undefined;
    for (const written of got.use) {
      const next = written === undefined ? undefined : resolved(at, written);
      const back = next === undefined ? undefined : walk(next);
      if (back !== undefined) return [at, ...back];
    }
    return undefined;
  };
  return walk(uri);
}

/** The entry of a name, the recipe's own before a borrowed one. */
export function find<S extends SectionName>(
  scope: Scope,
  section: S,
  name: string,
): Sourced<SectionEntries[S]> | undefined {
  const own = scope.recipe.sections[section].get(name) as SectionEntries[S] | undefined;
  if (own !== undefined) return { name, value: own, path: [section, name] };
  if (!lentSections.includes(section)) return undefined;
  for (const lender of scope.lenders) {
    const lent = lender.recipe.sections[section].get(name) as SectionEntries[S] | undefined;
    if (lent !== undefined) return { name, value: lent, path: [section, name], file: lender.file };
  }
  return undefined;
}

/** Whether `find` would find something. */
export function hasName({ recipe, lenders }: Scope, section: SectionName, name: string): boolean {
  if (recipe.sections[section].has(name)) return true;
  return lentSections.includes(section) && lenders.some(lender => lender.recipe.sections[section].has(name));
}

/** All entries of a section that the recipe sees, its own first, the first of equal names. The same list while the section stays. */
export function all<S extends SectionName>(scope: Scope, section: S): readonly Sourced<SectionEntries[S]>[] {
  const own: ReadonlyMap<string, unknown> = scope.recipe.sections[section];
  const lent = lentSections.includes(section) ? scope.lenders : [];
  const known = listed.get(own);
  const isSame =
    known?.section === section &&
    known.lent.length === lent.length &&
    known.lent.every(
      ({ file, entries }, at) => file === lent[at]?.file && entries === lent[at]?.recipe.sections[section],
    );
  if (isSame) return known.all as readonly Sourced<SectionEntries[S]>[];
  const seen = new Map<string, Sourced<unknown>>();
  for (const [name, value] of own) seen.set(name, { name, value, path: [section, name] });
  for (const { file, recipe } of lent) {
    for (const [name, value] of recipe.sections[section]) {
      if (!seen.has(name)) seen.set(name, { name, value, path: [section, name], file });
    }
  }
  const from = lent.map(({ file, recipe }) => ({ file, entries: recipe.sections[section] }));
  const all = [...seen.values()];
  listed.set(own, { section, lent: from, all });
  return all as readonly Sourced<SectionEntries[S]>[];
}

interface Listed {
  readonly section: SectionName;
  readonly lent: readonly { readonly file: string; readonly entries: ReadonlyMap<string, unknown> }[];
  readonly all: readonly Sourced<unknown>[];
}

const listed = new Remembered<ReadonlyMap<string, unknown>, Listed>();

/** Every name of every section, as completion and spelling need them. */
export function namesIn(scope: Scope, sections: readonly SectionName[]): readonly string[] {
  return sections.flatMap(section => all(scope, section).map(sourced => sourced.name));
}

export const allSections = Object.keys(sectionNames) as readonly SectionName[];

// Walks a zod schema and a YAML tree together. What can be read becomes plain values; what cannot becomes a finding at its
// exact place, and the rest of the entry is read all the same.

import * as z from 'zod/mini';
import { words } from '../../schema/field.ts';
import type { Finding, Fix } from '../../schema/findings.ts';
import { nearest } from '../../schema/nearest.ts';
import type { Complaint } from '../../schema/parsed.ts';
import { keyAt, type Path, type Place, valueAt } from '../../schema/place.ts';
import type { ScalarTree, Tree } from '../syntax/tree.ts';

/** The findings of a reading are gathered here as it goes. */
export type Notes = Finding[];

type Schema = z.core.$ZodType;

/** Reads a tree by a schema. Undefined where nothing could be made of it. */
export function read(schema: Schema, tree: Tree, path: Path, notes: Notes): unknown {
  const inner = unwrapped(schema);
  const def = inner._zod.def;
  if (isDef(def, 'object')) return readGroup(inner, def, tree, path, notes);
  if (isDef(def, 'record')) return readMap(inner, def, tree, path, notes);
  if (isDef(def, 'array')) return readList(inner, def, tree, path, notes);
  if (tree.kind === 'empty') {
    notes.push(wrongShape(`Nothing is written here; ${wantedBy(inner)} belongs here.`, path, 'key'));
    return undefined;
  }
  if (tree.kind !== 'scalar') {
    notes.push(wrongShape(`A ${tree.kind} stands here; ${wantedBy(inner)} belongs here.`, path));
    return undefined;
  }
  return readLeaf(inner, tree, path, notes);
}

/** The schema of what stands at a path, where the schema has such a place. */
export function schemaAt(schema: Schema, path: Path): Schema | undefined {
  let at: Schema | undefined = unwrapped(schema);
  for (const key of path) {
    if (at === undefined) return undefined;
    const def: z.core.$ZodTypeDef = at._zod.def;
    if (isDef(def, 'object')) at = Object.hasOwn(def.shape, key) ? def.shape[String(key)] : undefined;
    else if (isDef(def, 'record')) at = def.valueType;
    else if (isDef(def, 'array')) at = typeof key === 'number' ? def.element : undefined;
    else return undefined;
    at = at === undefined ? undefined : unwrapped(at);
  }
  return at;
}

/** The keys that a map read by this schema may have: a group's, or the fixed ones of a map. Empty where names are free. */
export function keysOf(schema: Schema): readonly string[] {
  const def = unwrapped(schema)._zod.def;
  if (isDef(def, 'object')) return Object.keys(def.shape);
  return isDef(def, 'record') ? fixedKeys(def) : [];
}

/** Whether a group's key must be written. */
export function isNeeded(schema: Schema, key: string): boolean {
  const def = unwrapped(schema)._zod.def;
  if (!isDef(def, 'object')) return false;
  const field = def.shape[key];
  return field !== undefined && !isDef(field._zod.def, 'optional');
}

/** What is inside an `optional`. */
export function unwrapped(schema: Schema): Schema {
  const def = schema._zod.def;
  return isDef(def, 'optional') ? unwrapped(def.innerType) : schema;
}

interface Defs {
  readonly optional: z.core.$ZodOptionalDef;
  readonly object: z.core.$ZodObjectDef;
  readonly record: z.core.$ZodRecordDef;
  readonly array: z.core.$ZodArrayDef;
  readonly enum: z.core.$ZodEnumDef;
  readonly literal: z.core.$ZodLiteralDef<z.core.util.Literal>;
}

export function isDef<T extends keyof Defs>(def: z.core.$ZodTypeDef, type: T): def is Defs[T] & z.core.$ZodTypeDef {
  return def.type === type;
}

/** The fixed keys of a map, or none where any name may stand. */
function fixedKeys(def: z.core.$ZodRecordDef): readonly string[] {
  const keys = def.keyType._zod.def;
  return isDef(keys, 'enum') ? Object.values(keys.entries).map(String) : [];
}

function readGroup(schema: Schema, def: z.core.$ZodObjectDef, tree: Tree, path: Path, notes: Notes): unknown {
  if (tree.kind !== 'map' && tree.kind !== 'empty') {
    notes.push(wrongShape(`${called(schema)} is a map of keys: ${someOf(Object.keys(def.shape))}.`, path));
    return undefined;
  }
  const value: Record<string, unknown> = {};
  const meant = new Set<string>();
  for (const { key, value: below } of tree.kind === 'map' ? tree.pairs : []) {
    const name = key.text;
    const field = Object.hasOwn(def.shape, name) ? def.shape[name] : undefined;
    if (field === undefined) {
      const close = noteUnknownKey(schema, name, Object.keys(def.shape), path, notes);
      if (close !== undefined) meant.add(close);
      continue;
    }
    if (Object.hasOwn(value, name)) continue;
    const made = read(field, below, [...path, name], notes);
    if (made !== undefined || path.length > 1) value[name] = made;
  }
  if (path.length > 0) noteMissing(schema, def, tree, path, notes, meant);
  return value;
}

/** Notes the keys that must be written and are not; one that is only misspelt (`meant`) has its finding already. */
function noteMissing(
  schema: Schema,
  def: z.core.$ZodObjectDef,
  tree: Tree,
  path: Path,
  notes: Notes,
  meant: ReadonlySet<string>,
): void {
  const written = tree.kind === 'map' ? tree.pairs.map(pair => pair.key.text) : [];
  const is = words.get(schema);
  if (is?.oneOf === true) {
    const known = written.filter(key => Object.hasOwn(def.shape, key));
    if (known.length === 0 && meant.size === 0) {
      const needed = `one of ${someOf(Object.keys(def.shape))}`;
      notes.push(missing(Object.keys(def.shape)[0] ?? '', called(schema), needed, path));
    }
    for (const extra of known.slice(1)) {
      notes.push(
        wrongShape(`${called(schema)} takes one shape; \`${known[0]}\` is written already.`, [...path, extra], 'key'),
      );
    }
    return;
  }
  for (const [key, field] of Object.entries(def.shape)) {
    if (isDef(field._zod.def, 'optional') || written.includes(key) || meant.has(key)) continue;
    notes.push(
      missing(key, called(schema), asClause(words.get(field)?.says ?? ''), path, words.get(field)?.examples?.[0]),
    );
  }
}

function readMap(schema: Schema, def: z.core.$ZodRecordDef, tree: Tree, path: Path, notes: Notes): unknown {
  const fixed = fixedKeys(def);
  if (tree.kind !== 'map') {
    const holds = fixed.length > 0 ? someOf(fixed) : 'names, each with its value';
    if (tree.kind !== 'empty') notes.push(wrongShape(`A map belongs here: ${holds}.`, path));
    return fixed.length > 0 ? {} : new Map();
  }
  const named = new Map<string, unknown>();
  for (const { key, value: below } of tree.pairs) {
    const name = key.text;
    if (name.startsWith('x-') || named.has(name)) continue;
    if (fixed.length > 0 && !fixed.includes(name)) {
      noteUnknownKey(schema, name, fixed, path, notes);
      continue;
    }
    // Where a name refers to an entry, the entry's own name is the one to mend.
    if (fixed.length === 0 && words.get(schema)?.refers === undefined) noteBadName(name, path, notes);
    const made = read(def.valueType, below, [...path, name], notes);
    if (made !== undefined || path.length > 1) named.set(name, made);
  }
  return fixed.length > 0 ? Object.fromEntries(named) : named;
}

function readList(schema: Schema, def: z.core.$ZodArrayDef, tree: Tree, path: Path, notes: Notes): unknown {
  if (tree.kind === 'empty') return [];
  if (tree.kind !== 'list') {
    const example = words.get(schema)?.examples?.[0];
    const finding = wrongShape(`A list belongs here${example === undefined ? '' : `, as in \`${example}\``}.`, path);
    const isPlain = tree.kind === 'scalar' && tree.style === 'plain' && !/[,[\]{}#]/.test(tree.text);
    notes.push(isPlain ? { ...finding, fixes: [replaceBy(valueAt(path), `[${tree.text}]`)] } : finding);
    return undefined;
  }
  return tree.items.map((item, index) => read(def.element, item, [...path, index], notes));
}

function readLeaf(schema: Schema, tree: ScalarTree, path: Path, notes: Notes): unknown {
  const def = schema._zod.def;
  const takesText = def.type === 'string' || def.type === 'pipe' || def.type === 'enum';
  const result = z.safeParse(schema, takesText ? tree.text : tree.value);
  if (result.success) return result.data;
  const complaint = complaintOf(result.error.issues[0]);
  notes.push(complaint === undefined ? plainComplaint(schema, tree, path) : noteOf(complaint, path));
  return undefined;
}

function complaintOf(issue: z.core.$ZodIssue | undefined): Complaint | undefined {
  return issue?.code === 'custom' && issue.params?.kind === 'complaint'
    ? (issue.params as unknown as Complaint)
    : undefined;
}

/** A complaint about a small text as the finding at that slice, with the fix where there is one. */
function noteOf(complaint: Complaint, path: Path): Finding {
  const { code, slice, params, instead } = complaint;
  const at: Place = { path, part: { kind: 'slice', ...slice } };
  const fixes = instead === undefined ? [] : [{ ...replaceBy(at, instead), sure: code === 'unit-unknown' }];
  if (code !== 'unit-missing') return { code, params, at, fixes } as Finding;
  return { code, params, at, fixes: params.units.map(unit => replaceBy(at, `${params.number} ${unit}`)) };
}

function replaceBy(at: Place, text: string): Fix {
  return { title: `Write \`${text}\``, edits: [{ kind: 'replace', at, text }], sure: false };
}

/** What is wrong with a bare number, a fixed word or a flag. */
function plainComplaint(schema: Schema, tree: ScalarTree, path: Path): Finding {
  const at = valueAt(path);
  const def = schema._zod.def;
  const unquoted = typeof tree.value === 'string' && tree.style !== 'plain' ? bareOf(schema, tree.text) : undefined;
  if (unquoted !== undefined) {
    const reason = `\`${tree.text}\` stands in quotes, and what belongs here is written without them.`;
    return { code: 'value-invalid', params: { reason }, at, fixes: [replaceBy(at, unquoted)] };
  }
  if (isDef(def, 'literal')) {
    return {
      code: 'version-unsupported',
      params: { version: tree.text },
      at,
      fixes: [replaceBy(at, String(def.values[0]))],
    };
  }
  if (isDef(def, 'enum')) {
    const options = Object.values(def.entries).map(String);
    const suggestion = nearest(tree.text, options);
    const fixes = suggestion === undefined ? [] : [replaceBy(at, suggestion)];
    const reason = `\`${tree.text}\`: ${oneOf(options)} belongs here.`;
    return { code: 'value-invalid', params: { reason, suggestion }, at, fixes };
  }
  return { code: 'value-invalid', params: { reason: `\`${tree.text}\`: ${wantedBy(schema)} belongs here.` }, at };
}

/** A quoted number or flag without its quotes, where that can be read. */
function bareOf(schema: Schema, text: string): string | undefined {
  const bare = text.trim();
  const value = bare === 'true' ? true : bare === 'false' ? false : Number(bare);
  return bare !== '' && z.safeParse(schema, value).success ? bare : undefined;
}

/** Notes a key that the format does not have, and answers the one that is meant, where that can be told. */
function noteUnknownKey(
  schema: Schema,
  key: string,
  keys: readonly string[],
  path: Path,
  notes: Notes,
): string | undefined {
  if (key.startsWith('x-')) return undefined;
  const close = nearest(key, keys);
  const at = keyAt([...path, key]);
  const fixes: readonly Fix[] =
    close === undefined
      ? []
      : [
          {
            title: `Change to \`${close}\``,
            edits: [{ kind: 'rename', path: [...path, key], key: close }],
            sure: true,
          },
        ];
  notes.push({ code: 'key-unknown', params: { key, inside: called(schema), nearest: close }, at, fixes });
  return close;
}

const namePattern = /^[a-z][a-z0-9-]*$/;

/** Whether an entry may be called so. */
export function isName(text: string): boolean {
  return namePattern.test(text);
}

function noteBadName(name: string, path: Path, notes: Notes): void {
  if (isName(name)) return;
  const spelled = name
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^[^a-z]+|-+$/g, '');
  const suggestion = isName(spelled) ? spelled : undefined;
  const fixes: readonly Fix[] =
    suggestion === undefined
      ? []
      : [
          {
            title: `Change to \`${suggestion}\``,
            edits: [{ kind: 'rename', path: [...path, name], key: suggestion }],
            sure: false,
          },
        ];
  notes.push({ code: 'name-invalid', params: { name, suggestion }, at: keyAt([...path, name]), fixes });
}

function missing(key: string, inside: string, needed: string, path: Path, example?: string): Finding {
  const fixes: readonly Fix[] =
    example === undefined
      ? []
      : [
          {
            title: `Add \`${key}: ${example}\``,
            edits: [{ kind: 'insert', into: path, key, text: example }],
            sure: false,
          },
        ];
  return { code: 'value-missing', params: { key, inside, needed }, at: keyAt(path), fixes };
}

function wrongShape(reason: string, path: Path, part: 'key' | 'value' = 'value'): Finding {
  return { code: 'value-invalid', params: { reason }, at: part === 'key' ? keyAt(path) : valueAt(path) };
}

function called(schema: Schema): string {
  return words.get(schema)?.called ?? 'This map';
}

/** What a schema wants, as a noun phrase with an example. */
function wantedBy(schema: Schema): string {
  const def = schema._zod.def;
  const example = words.get(schema)?.examples?.[0];
  const as = example === undefined ? '' : `, as in \`${example}\`,`;
  if (isDef(def, 'object') || isDef(def, 'record')) return `a map${as}`;
  if (isDef(def, 'array')) return `a list${as}`;
  if (def.type === 'boolean') return '`true` or `false`';
  if (def.type !== 'number') return `a value${as}`;
  const [low, high] = words.get(schema)?.between ?? [];
  const between = low === undefined || high === undefined ? '' : ` from ${low} to ${high}`;
  return `a ${'format' in def ? 'whole ' : ''}number without a unit${between}${as}`;
}

function someOf(keys: readonly string[]): string {
  const shown = keys.slice(0, 8).map(key => `\`${key}\``);
  return `${shown.join(', ')}${keys.length > 8 ? ', …' : ''}`;
}

/** All of some fixed words. */
function oneOf(options: readonly string[]): string {
  return options.map(option => `\`${option}\``).join(' or ');
}

/** The first sentence of a description, small at its beginning and without its full stop, to stand behind a colon. */
function asClause(says: string): string {
  const first = says.split(/[.:;] ?/)[0] ?? says;
  return first.slice(0, 1).toLowerCase() + first.slice(1);
}

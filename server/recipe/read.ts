// Walks a zod schema and a YAML tree together. What can be read becomes plain values; what cannot becomes a finding at its
// exact place, and the rest of the entry is read all the same.

import * as z from 'zod/mini';
import { words } from '../../schema/field.ts';
import type { Finding, Fix } from '../../schema/findings.ts';
import { nearest } from '../../schema/nearest.ts';
import type { Complaint } from '../../schema/parsed.ts';
import { keyAt, type Path, type Place, valueAt } from '../../schema/place.ts';
import type { PairTree, ScalarTree, Tree } from '../syntax/tree.ts';
import { formOf, type GroupForm, isDef, type LeafForm, type ListForm, type MapForm, type Schema } from './form.ts';

/** The findings of a reading are gathered here as it goes. */
export type Notes = Finding[];

/** Reads a tree by a schema. Undefined where nothing could be made of it. */
export function read(schema: Schema, tree: Tree, path: Path, notes: Notes): unknown {
  const form = formOf(schema);
  if (form.kind === 'group') return readGroup(form, tree, path, notes);
  if (form.kind === 'map') return readMap(form, tree, path, notes);
  return form.kind === 'list' ? readList(form, tree, path, notes) : readLeaf(form, tree, path, notes);
}

function readGroup(form: GroupForm, tree: Tree, path: Path, notes: Notes): unknown {
  const { schema, fields } = form;
  if (tree.kind !== 'map' && tree.kind !== 'empty') {
    notes.push(wrongShape(`${called(schema)} is a map of keys: ${someOf([...fields.keys()])}.`, path));
    return undefined;
  }
  const written = tree.kind === 'map' ? tree.pairs : [];
  const value: Record<string, unknown> = {};
  const meant: string[] = [];
  for (const { key, value: below } of written) {
    const name = key.text;
    const field = fields.get(name);
    if (field === undefined) {
      const close = noteUnknownKey(schema, name, [...fields.keys()], path, notes);
      if (close !== undefined) meant.push(close);
      continue;
    }
    if (Object.hasOwn(value, name)) continue;
    const made = read(field, below, [...path, name], notes);
    if (made !== undefined || path.length > 1) value[name] = made;
  }
  if (path.length === 0) return value;
  if (form.oneOf) noteOtherShapes(form, written, path, notes, meant);
  else noteMissing(form, written, path, notes, meant);
  return value;
}

/** Notes the keys that must be written and are not; one that is only misspelt (`meant`) has its finding already. */
function noteMissing(
  { schema, fields, needed }: GroupForm,
  written: readonly PairTree[],
  path: Path,
  notes: Notes,
  meant: readonly string[],
): void {
  for (const wanted of needed) {
    if (meant.includes(wanted) || written.some(({ key }) => key.text === wanted)) continue;
    const field = fields.get(wanted);
    const is = field === undefined ? undefined : words.get(field);
    notes.push(missing(wanted, called(schema), asClause(is?.says ?? ''), path, is?.examples?.[0]));
  }
}

/** Notes that none of the shapes is written, or more than one. */
function noteOtherShapes(
  { schema, fields }: GroupForm,
  written: readonly PairTree[],
  path: Path,
  notes: Notes,
  meant: readonly string[],
): void {
  const [first, ...more] = written.map(({ key }) => key.text).filter(key => fields.has(key));
  if (first === undefined && meant.length === 0) {
    const shapes = [...fields.keys()];
    notes.push(missing(shapes[0] ?? '', called(schema), `one of ${someOf(shapes)}`, path));
  }
  for (const extra of more) {
    const reason = `${called(schema)} takes one shape; \`${first}\` is written already.`;
    notes.push(wrongShape(reason, [...path, extra], 'key'));
  }
}

function readMap({ schema, fixed, value, isNaming }: MapForm, tree: Tree, path: Path, notes: Notes): unknown {
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
    if (isNaming) noteBadName(name, path, notes);
    const made = read(value, below, [...path, name], notes);
    if (made !== undefined || path.length > 1) named.set(name, made);
  }
  return fixed.length > 0 ? Object.fromEntries(named) : named;
}

function readList({ schema, item }: ListForm, tree: Tree, path: Path, notes: Notes): unknown {
  if (tree.kind === 'empty') return [];
  if (tree.kind !== 'list') {
    const example = words.get(schema)?.examples?.[0];
    const finding = wrongShape(`A list belongs here${example === undefined ? '' : `, as in \`${example}\``}.`, path);
    const isPlain = tree.kind === 'scalar' && tree.style === 'plain' && !/[,[\]{}#]/.test(tree.text);
    notes.push(isPlain ? { ...finding, fixes: [replaceBy(valueAt(path), `[${tree.text}]`)] } : finding);
    return undefined;
  }
  return tree.items.map((below, index) => read(item, below, [...path, index], notes));
}

function readLeaf(form: LeafForm, tree: Tree, path: Path, notes: Notes): unknown {
  const { schema, takes } = form;
  if (tree.kind === 'empty') {
    notes.push(wrongShape(`Nothing is written here; ${wantedBy(schema)} belongs here.`, path, 'key'));
    return undefined;
  }
  if (tree.kind !== 'scalar') {
    const [home] = words.get(schema)?.refers ?? [];
    const belongs =
      tree.kind === 'map' && home !== undefined ? ` What the map says goes into \`${home}\`, under a name.` : '';
    notes.push(wrongShape(`A ${tree.kind} stands here; ${wantedBy(schema)} belongs here.${belongs}`, path));
    return undefined;
  }
  if (takes === 'text') return tree.text;
  if (typeof takes === 'function') {
    const result = takes(tree.text);
    if (result.kind === 'read') return result.value;
    notes.push(noteOf(result, path));
    return undefined;
  }
  const result = z.safeParse(schema, takes === 'word' ? tree.text : tree.value);
  if (result.success) return result.data;
  notes.push(plainComplaint(schema, tree, path));
  return undefined;
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
  if (words.get(schema)?.refers !== undefined) return `a name${as}`;
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

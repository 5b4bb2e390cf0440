import * as fc from 'fast-check';
import { expect, test, vi } from 'vitest';
import { parseAllDocuments } from 'yaml';
import type { Edit } from '../../schema/edit.ts';
import type { Path } from '../../schema/place.ts';
import { openDocument } from '../../server/syntax/document.ts';
import { textEdits, withChanges } from '../../server/syntax/edit.ts';
import { soundText } from './odd-text.ts';

// Laws run hundreds of texts each: on a busy machine that takes longer than one example may.
vi.setConfig({ testTimeout: 60_000 });

// The values come from the `yaml` package reading the whole file, so that neither the cut nor the tree is trusted here.

type Value = Map<string, Value> | Value[] | string | number | boolean | null;

function read(text: string): Value | undefined {
  const documents = parseAllDocuments(text, { stringKeys: true, logLevel: 'silent' });
  const [document] = documents;
  if (documents.length === 0) return null;
  if (document === undefined || documents.length > 1 || document.errors.length > 0) return undefined;
  const value: unknown = document.toJS({ mapAsMap: true });
  return value as Value;
}

interface Spot {
  readonly path: Path;
  readonly value: Value;
  readonly parent: Value;
}

function spots(value: Value, path: Path = [], parent: Value = null): Spot[] {
  const own = { path, value, parent };
  if (value instanceof Map) return [own, ...[...value].flatMap(([key, one]) => spots(one, [...path, key], value))];
  if (Array.isArray(value)) return [own, ...value.flatMap((one, at) => spots(one, [...path, at], value))];
  return [own];
}

/** Draws an edit of a kind at a spot and what the file must say after it; undefined where the kind makes no sense. */
function expected(
  kind: Edit['kind'],
  text: string,
  pick: number,
): { readonly edit: Edit; readonly value: Value; readonly spot: Spot } | undefined {
  const before = read(text);
  if (!(before instanceof Map)) return undefined;
  const after = structuredClone(before);
  const all = spots(after);
  const fits = all.filter(({ value, parent, path }) => {
    if (kind === 'insert') return value instanceof Map || value === null;
    if (kind === 'append') return Array.isArray(value) || value === null;
    if (kind === 'rename') return parent instanceof Map;
    if (kind === 'remove') return path.length > 0;
    return path.length > 0 && !(value instanceof Map) && !Array.isArray(value);
  });
  const spot = fits[Math.floor(pick * fits.length)];
  if (spot === undefined) return undefined;
  const { path, value, parent } = spot;
  const last = path.at(-1);
  const set = (one: Value) => {
    if (parent instanceof Map) parent.set(String(last), one);
    if (Array.isArray(parent)) parent[Number(last)] = one;
  };
  switch (kind) {
    case 'insert':
      if (value instanceof Map) value.set('new', '5 mL');
      else set(new Map([['new', '5 mL']]));
      return { edit: { kind, into: path, key: 'new', text: '5 mL' }, value: after, spot };
    case 'append':
      if (Array.isArray(value)) value.push('5 mL');
      else set(['5 mL']);
      return { edit: { kind, to: path, text: '5 mL' }, value: after, spot };
    case 'rename': {
      if (!(parent instanceof Map)) return undefined;
      const pairs = [...parent].map(([key, one]) => [key === last ? 'new: name' : key, one] as const);
      parent.clear();
      for (const [key, one] of pairs) parent.set(key, one);
      return { edit: { kind, path, key: 'new: name' }, value: after, spot };
    }
    case 'remove':
      if (parent instanceof Map) parent.delete(String(last));
      if (Array.isArray(parent)) parent.splice(Number(last), 1);
      return { edit: { kind, path }, value: after, spot };
    case 'replace':
      set(7);
      return { edit: { kind, at: { path, part: { kind: 'value' } }, text: '7' }, value: after, spot };
  }
}

/** Maps and lists that have lost all they held are written as nothing, which reads as null. */
function emptied(value: Value): unknown {
  if (value instanceof Map) return value.size === 0 ? null : [...value].map(([key, one]) => [key, emptied(one)]);
  if (Array.isArray(value)) return value.length === 0 ? null : value.map(emptied);
  return value;
}

for (const kind of ['replace', 'rename', 'insert', 'append', 'remove'] as const) {
  test(`After an edit of the kind ${kind} the file says what was asked and keeps the rest`, () => {
    let made = 0;
    fc.assert(
      fc.property(soundText, fc.double({ min: 0, max: 0.999, noNaN: true }), fc.boolean(), (drawn, pick, ended) => {
        const text = ended ? drawn : drawn.replace(/(?:\r?\n)+$/, '');
        // A tag before a value stays, and says what a new one or none is.
        if ((kind === 'replace' || kind === 'remove') && text.includes('!!')) return;
        const asked = expected(kind, text, pick);
        if (asked === undefined) return;
        const changes = textEdits(openDocument(text), [asked.edit]);
        const why = JSON.stringify({ text, edit: asked.edit, changes });
        expect(changes.length, why).toBe(1);
        const result = withChanges(text, changes);
        const after = read(result);
        expect(after, why).toBeDefined();
        if (after !== undefined) expect(emptied(after), why).toEqual(emptied(asked.value));
        const [change] = changes;
        if (change === undefined) return;
        made++;
        if (asked.spot.value !== null && (kind === 'insert' || kind === 'append'))
          expect(change.to, why).toBe(change.from);
        if (text.includes('\r\n')) expect(change.text, why).not.toMatch(/(?<!\r)\n/);
        if (kind !== 'remove') expect(comments(result), why).toEqual(comments(text));
        if (kind !== 'remove' && text !== '') expect(result.endsWith('\n'), why).toBe(text.endsWith('\n'));
      }),
      { numRuns: 1000 },
    );
    expect(made).toBeGreaterThan(200);
  });
}

function comments(text: string): readonly string[] {
  return text.match(/(?:^|[ \n])# ?\*?note/g)?.map(one => one.trim()) ?? [];
}

import * as fc from 'fast-check';
import { expect, test, vi } from 'vitest';
import { parseAllDocuments } from 'yaml';
import { applyChange, type Document, openDocument, textOf } from '../../server/syntax/document.ts';
import { offsetAt, positionAt } from '../../server/syntax/position.ts';
import { plainValue, type Tree } from '../../server/syntax/tree.ts';
import { change, oddText, soundText } from './odd-text.ts';

// Laws run hundreds of texts each: on a busy machine that takes longer than one example may.
vi.setConfig({ testTimeout: 60_000 });

const anyText = fc.oneof(oddText, soundText);

test('The texts of the entries joined are the file', () => {
  fc.assert(
    fc.property(anyText, text => {
      const document = openDocument(text);
      expect(document.entries.map(entry => entry.text).join('')).toBe(text);
      expect(
        document.starts.map((start, at) => text.startsWith(document.entries[at]?.text ?? '\0', start)),
      ).not.toContain(false);
    }),
    { numRuns: 1000 },
  );
});

test('A file read entry by entry says what it says read as a whole', () => {
  let compared = 0;
  let cut = 0;
  const check = (text: string) => {
    const documents = parseAllDocuments(text, { uniqueKeys: false, resolveKnownTags: false, logLevel: 'silent' });
    if (documents.length !== 1) return;
    const [whole] = documents;
    if (whole === undefined || whole.errors.length > 0) return;
    if (/[<=>]{7}|\0/.test(text)) return;
    const expected = oracle(whole.contents);
    if (expected === refused || !(expected instanceof Pairs)) return;
    const document = openDocument(text);
    compared++;
    if (document.entries.length > 1) cut++;
    expect(assembled(document), JSON.stringify(text)).toEqual(expected);
  };
  fc.assert(fc.property(oddText, check), { numRuns: 4000 });
  fc.assert(fc.property(soundText, check), { numRuns: 2000 });
  expect(compared).toBeGreaterThan(1000);
  expect(cut).toBeGreaterThan(500);
});

test('A document after changes is the document opened anew, and untouched entries are the same objects', () => {
  fc.assert(
    fc.property(anyText, fc.array(change, { minLength: 1, maxLength: 5 }), (start, changes) => {
      let document = openDocument(start);
      let text = start;
      for (const one of changes) {
        const from = Math.floor(one.from * text.length);
        const to = Math.min(text.length, from + one.length);
        const before = document;
        document = applyChange(document, { from, to, text: one.text });
        text = text.slice(0, from) + one.text + text.slice(to);
        const anew = openDocument(text);
        const shape = (it: Document) =>
          it.entries.map(entry => ({ text: entry.text, base: entry.base, cut: entry.cut }));
        expect(shape(document), JSON.stringify(text)).toEqual(shape(anew));
        expect(document.starts).toEqual(anew.starts);
        expect(document.firstLines).toEqual(anew.firstLines);
        expect(document.length).toBe(text.length);
        expect(textOf(document)).toBe(text);
        keepsUntouched(before, document, from, to);
      }
    }),
    { numRuns: 2500 },
  );
});

test('Every range lies inside its entry', () => {
  fc.assert(
    fc.property(anyText, text => {
      for (const entry of openDocument(text).entries) {
        for (const { range } of entry.notes) inside(range, entry.text);
        everyRange(entry.tree, entry.text);
      }
    }),
    { numRuns: 1000 },
  );
});

test('Positions and offsets are each other’s inverse in every encoding', () => {
  fc.assert(
    fc.property(anyText, fc.constantFrom('utf-8' as const, 'utf-16' as const, 'utf-32' as const), (text, encoding) => {
      const document = openDocument(text);
      let line = 0;
      let lineStart = 0;
      for (let at = 0; at <= text.length; at++) {
        const inCharacter =
          at > 0 && /[\uDC00-\uDFFF]/.test(text[at] ?? '') && /[\uD800-\uDBFF]/.test(text[at - 1] ?? '');
        const inBreak = text[at - 1] === '\r' && text[at] === '\n';
        if (!inCharacter && !inBreak) {
          const position = positionAt(document, at, encoding);
          expect(position.line).toBe(line);
          if (encoding === 'utf-8')
            expect(position.character).toBe(new TextEncoder().encode(text.slice(lineStart, at)).length);
          expect(offsetAt(document, position, encoding)).toBe(at);
        }
        if (text[at] === '\n') {
          line++;
          lineStart = at + 1;
        }
      }
    }),
    { numRuns: 200 },
  );
});

/** The pairs of a map in their order, equal keys included. */
class Pairs {
  readonly pairs: readonly (readonly [string, unknown])[];
  constructor(pairs: readonly (readonly [string, unknown])[]) {
    this.pairs = pairs;
  }
}

const refused = Symbol('keys that are not text, or aliases: not compared');

function oracle(node: unknown): unknown {
  const one = node as { items?: unknown[]; key?: unknown; value?: unknown; source?: string } | null;
  if (one === null || one === undefined) return null;
  if (Array.isArray(one.items) && one.constructor.name === 'YAMLMap') {
    const pairs = one.items.map(item => {
      const { key, value } = item as { key: { source?: string; value?: unknown } | null; value: unknown };
      if (key !== null && 'items' in key) return refused;
      const said = key === null ? '' : typeof key.value === 'string' ? key.value : (key.source ?? '');
      return [said, oracle(value)] as const;
    });
    return pairs.some(pair => pair === refused || (pair as readonly unknown[])[1] === refused)
      ? refused
      : new Pairs(pairs as [string, unknown][]);
  }
  if (Array.isArray(one.items)) {
    const items = one.items.map(item =>
      item !== null && typeof item === 'object' && 'key' in item ? oracleOfPair(item) : oracle(item),
    );
    return items.includes(refused) ? refused : items;
  }
  return 'value' in one ? one.value : refused;
}

function oracleOfPair(item: unknown): unknown {
  const { key, value } = item as { key: { source?: string; value?: unknown } | null; value: unknown };
  if (key !== null && 'items' in key) return refused;
  const inner = oracle(value);
  const said = key === null ? '' : typeof key.value === 'string' ? key.value : (key.source ?? '');
  return inner === refused ? refused : new Pairs([[said, inner]]);
}

function assembled(document: Document): unknown {
  const pairs: [string, unknown][] = [];
  for (const entry of document.entries) {
    const { tree } = entry;
    if (entry.base.length === 0) {
      if (tree.kind === 'map') for (const pair of tree.pairs) pairs.push([pair.key.text, view(pair.value)]);
      continue;
    }
    const section = pairs.at(-1);
    if (section === undefined || section[0] !== entry.base[0]) throw new Error('a child without its head');
    if (tree.kind === 'list') section[1] = [...((section[1] as unknown[] | null) ?? []), ...tree.items.map(view)];
    if (tree.kind === 'map') {
      const before = section[1] instanceof Pairs ? section[1].pairs : [];
      section[1] = new Pairs([...before, ...tree.pairs.map(pair => [pair.key.text, view(pair.value)] as const)]);
    }
  }
  return new Pairs(pairs);
}

function view(tree: Tree): unknown {
  if (tree.kind === 'map') return new Pairs(tree.pairs.map(pair => [pair.key.text, view(pair.value)] as const));
  if (tree.kind === 'list') return tree.items.map(view);
  return plainValue(tree);
}

function keepsUntouched(before: Document, after: Document, from: number, to: number): void {
  const cut = (it: Document) => it.entries[0]?.cut.role !== 'whole';
  if (!cut(before) || !cut(after)) return;
  const known = new Set(before.entries);
  const shift = after.length - before.length;
  for (const [at, start] of after.starts.entries()) {
    const entry = after.entries[at];
    const old =
      start + (entry?.text.length ?? 0) < from
        ? before.starts.indexOf(start)
        : start - shift > to
          ? before.starts.indexOf(start - shift)
          : -1;
    const twin = before.entries[old];
    if (entry === undefined || twin === undefined || twin.text !== entry.text) continue;
    if (JSON.stringify(twin.cut) !== JSON.stringify(entry.cut)) continue;
    expect(known.has(entry), 'an untouched entry was made anew').toBe(true);
  }
}

function everyRange(tree: Tree, text: string): void {
  inside(tree.range, text);
  if (tree.kind === 'list') for (const item of tree.items) everyRange(item, text);
  if (tree.kind === 'map')
    for (const pair of tree.pairs) {
      inside(pair.key.range, text);
      everyRange(pair.value, text);
    }
}

function inside(range: { readonly from: number; readonly to: number }, text: string): void {
  expect(0 <= range.from && range.from <= range.to && range.to <= text.length, JSON.stringify({ range, text })).toBe(
    true,
  );
}

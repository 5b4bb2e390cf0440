// Small rules of the house that a reader would otherwise have to remember: sizes, names, headers, words that do not belong.

import { basename } from 'node:path';
import { describe, expect, test } from 'vitest';
import { bareCode, filesIn, foldersIn, textOf } from './source.ts';

/** Files that are one table each: read by looking up, not from top to bottom. */
const tables = [
  'schema/findings.ts',
  'schema/sources.ts',
  'schema/units.ts',
  'server/chemistry/tables/acids.ts',
  'server/chemistry/tables/elements.ts',
  'server/chemistry/tables/reactions.ts',
  'server/chemistry/tables/species.ts',
];
/** Nothing is said about a folder's usual length until it has some files. */
const folderSets = ['schema', 'server', 'client', '.ci', 'test'];

const files = filesIn('');
const scripts = files.filter(path => path.endsWith('.ts'));
const product = scripts.filter(path => !path.endsWith('.test.ts'));
const texts = files.filter(path => /\.(?:ts|md|ya?ml|json|jsonl|css|svg)$|^LICENSE$|^\.ci\/run$/.test(path));
const notGenerated = texts.filter(path => !path.endsWith('package-lock.json'));

describe('sizes', () => {
  test('no file is longer than 400 lines or 24 kB, tables aside', () => {
    expect(scripts.filter(path => !tables.includes(path) && isLong(textOf(path)))).toEqual([]);
  });

  test.each(folderSets)('%s: median at most 110 lines, ninth in ten at most 280', folder => {
    const lengths = scripts.filter(path => path.startsWith(`${folder}/`) && !tables.includes(path)).map(lengthOf);
    expect(lengths.length).toBeGreaterThan(3);
    expect(quantile(lengths, 0.5)).toBeLessThanOrEqual(110);
    expect(quantile(lengths, 0.9)).toBeLessThanOrEqual(280);
  });

  test('every table that is named is there', () => {
    expect(tables.filter(path => !scripts.includes(path))).toEqual([]);
  });

  test('a long file is seen', () => {
    expect(isLong('a\n'.repeat(401))).toBe(true);
    expect(isLong('a'.repeat(24_001))).toBe(true);
    expect(isLong('a\n'.repeat(400))).toBe(false);
    expect(quantile([1, 2, 3, 300], 0.9)).toBe(300);
    expect(quantile([1, 2, 3], 0.5)).toBe(2);
  });
});

describe('shape of a file', () => {
  test('each says at its top what it is', () => {
    expect(product.filter(path => !hasHeader(textOf(path)))).toEqual([]);
  });

  test('names are in kebab case and say something', () => {
    expect(scripts.filter(path => !isWellNamed(basename(path)))).toEqual([]);
  });

  test('no default exports, no `any`, no `!`, no silenced checks', () => {
    const loose = scripts.flatMap(path => looseCode(textOf(path)).map(found => `${path}: ${found}`));
    // Vitest reads the default export of its configuration and nothing else.
    expect(loose.filter(found => found !== 'vitest.config.ts: export default')).toEqual([]);
  });

  test.each([
    ['export default 1;', 'export default'],
    ['const a: any = 1;', ': any'],
    ['const a = b as any;', 'as any'],
    ['const a: Map<string, any> = b;', ', any'],
    ['const a = b!;', 'b!;'],
    ['const a = b!.c;', 'b!.'],
    ['const a = b[0]![1];', ']!['],
    [`// ${'@ts-'}ignore\nconst a = 1;`, '@ts-'],
  ])('what is loose is seen: %s', (text, found) => {
    expect(looseCode(text)).toEqual([found]);
  });

  test('what only looks loose is let be', () => {
    expect(looseCode("if (a !== b || !c) d('any! default'); // any!\nconst e = f != g;")).toEqual([]);
  });

  test('what is computed is kept on its object, not in a WeakMap, but for the earlier answers of a memo', () => {
    const held = scripts.filter(path => /^(schema|server\/(?!protocol|host|cli))/.test(path));
    expect(held.length).toBeGreaterThan(100);
    expect(held.filter(path => textOf(path).includes('new WeakMap'))).toEqual(['server/plan/memo.ts']);
  });

  test('a missing header and a poor name are seen', () => {
    expect(hasHeader("import { a } from 'a';\n")).toBe(false);
    expect(hasHeader('// Too short.\n')).toBe(false);
    expect(hasHeader('// What a file is, and why it stands apart.\n')).toBe(true);
    expect(hasHeader('#!/usr/bin/env node\n// What a file is, and why it stands apart.\n')).toBe(true);
    const poor = [
      'topUp.ts',
      'Top-up.ts',
      'top_up.ts',
      'index.ts',
      'utils.ts',
      'dose-helper.ts',
      'manager.ts',
      'misc.ts',
    ];
    expect(poor.filter(isWellNamed)).toEqual([]);
    expect(['top-up.ts', 'top-up.test.ts', 'ph.ts'].every(isWellNamed)).toBe(true);
  });
});

describe('words', () => {
  test('no notes of work left undone, no places of one machine', () => {
    expect(notGenerated.flatMap(path => strayWords(textOf(path)).map(found => `${path}: ${found}`))).toEqual([]);
  });

  test.each([
    [`// ${'TO'}DO later`, `${'TO'}DO`],
    [`# ${'FIX'}ME`, `${'FIX'}ME`],
    [`read ${'/wo'}rk/a.ts`, `${'/wo'}rk/`],
    [`read ${'/ho'}me/me/a.ts`, `${'/ho'}me/me/`],
    [`https://${'regis'}try.example.org/a`, `://${'regis'}try.`],
    [`test.${'skip'}('a')`, `.${'skip'}(`],
    [`describe.${'only'}('a')`, `.${'only'}(`],
  ])('such words are seen: %s', (text, found) => {
    expect(strayWords(text)).toEqual([found]);
  });
});

describe('the documents', () => {
  test('the map in DEVELOPERS.md lists exactly the folders that are there', () => {
    expect(mapped(textOf('DEVELOPERS.md'))).toEqual(
      [...foldersIn(''), ...foldersIn('server').map(name => `server/${name}`)].filter(isOurs).sort(),
    );
  });

  test('the map is read as it is drawn', () => {
    const drawn = '```\nschema/   what\n  units.ts  rows\nserver/   the server\n  plan/   figures\n```\n';
    expect(mapped(drawn)).toEqual(['schema', 'server', 'server/plan']);
  });

  test('the change log has a place for what is not released', () => {
    expect(textOf('CHANGELOG.md')).toMatch(/^## Unreleased$/m);
  });

  test('every relative link of a Markdown page leads to a file', () => {
    const pages = files.filter(path => path.endsWith('.md'));
    const broken = pages.flatMap(path => deadLinks(path, textOf(path)).map(link => `${path}: ${link}`));
    expect(pages.length).toBeGreaterThan(30);
    expect(broken).toEqual([]);
  });

  test('a dead link is seen', () => {
    const page = '[a](there-is-none.md) [b](README.md#two) ![c](https://example.org/c.png) `[d](e)`';
    expect(deadLinks('README.md', page)).toEqual(['there-is-none.md']);
  });
});

function isLong(text: string): boolean {
  return text.trimEnd().split('\n').length > 400 || Buffer.byteLength(text) > 24_000;
}

function lengthOf(path: string): number {
  return textOf(path).trimEnd().split('\n').length;
}

/** The smallest of the values that at least this share of them does not exceed. */
function quantile(values: readonly number[], share: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.max(0, Math.ceil(sorted.length * share) - 1)] ?? 0;
}

function hasHeader(text: string): boolean {
  const top = text.replace(/^#!.*\n/, '');
  const comment = /^\/\*\*[\s\S]*?\*\/|^(?:\/\/.*\n)+/.exec(top)?.[0] ?? '';
  return comment.length >= 30 && /[.?:]\s*(?:\*\/)?\s*$/m.test(comment);
}

const poorNames =
  /^(?:index|utils?|helpers?|managers?|misc|common|lib)\b|-(?:utils?|helpers?|managers?|impl|service)\b/;

function isWellNamed(name: string): boolean {
  return /^[a-z0-9]+(?:-[a-z0-9]+)*(?:\.(?:test|config|d))?\.ts$/.test(name) && !poorNames.test(name);
}

function looseCode(text: string): readonly string[] {
  const loose = /\bexport default\b|(?:: |\bas |<|, )any\b|[\w)\]]![.;,)[\]]/g;
  const found = bareCode(text).match(loose) ?? [];
  return /@ts-(?:ignore|nocheck)/.test(text) ? [...found, '@ts-'] : [...found];
}

/** Written in halves, since this file is held against its own rules. */
const stray = new RegExp(
  [
    `\\b(?:${'TO'}DO|${'FIX'}ME|${'X'}XX|HA${'CK'})\\b`,
    `(?<![\\w.])${'/wo'}rk/`,
    `${'/(?:ho'}me|Users)/\\w+/`,
    `://${'regis'}try\\.`,
    `(?<=\\b(?:test|it|describe))\\.(?:${'skip'}|${'only'}|${'to'}do)\\b\\(?`,
  ].join('|'),
  'g',
);

function strayWords(text: string): readonly string[] {
  return [...(text.match(stray) ?? [])];
}

/** Dot folders hold settings of tools, apart from our own `.ci`. */
function isOurs(folder: string): boolean {
  return !folder.startsWith('.') || folder === '.ci';
}

/** The folders that the first code block draws: at the margin, and one step in below `server/`. */
function mapped(page: string): readonly string[] {
  const lines = /```\w*\n([\s\S]*?)```/.exec(page)?.[1]?.split('\n') ?? [];
  let top = '';
  const found: string[] = [];
  for (const line of lines) {
    const [, indent = '', name] = /^( *)([\w.-]+)\/(?:\s|$)/.exec(line) ?? [];
    if (name === undefined) continue;
    if (indent === '') top = name;
    if (indent === '') found.push(name);
    else if (indent === '  ' && top === 'server') found.push(`server/${name}`);
  }
  return found.sort();
}

function deadLinks(path: string, page: string): readonly string[] {
  const prose = page.replace(/```[\s\S]*?```/g, '').replace(/`[^`\n]*`/g, '');
  const links = [...prose.matchAll(/\]\(([^)\s#]+)(?:#[^)]*)?\)/g)].flatMap(([, link]) => link ?? []);
  const from = path.includes('/') ? path.slice(0, path.lastIndexOf('/') + 1) : '';
  return links.filter(link => !/^\w+:/.test(link) && !files.includes(joined(from, link)));
}

function joined(from: string, link: string): string {
  return new URL(link, `file:///${from}`).pathname.slice(1);
}

// Who may import whom. A file imports from its own folder and from lower floors only; equal floors do not see each other. The
// table is the architecture, and every import of every source is held against it.

import { posix } from 'node:path';
import { expect, test } from 'vitest';
import { bareCode, filesIn, importsOf, textOf } from './source.ts';

interface Floor {
  /** The folder, or the one file, that stands on this floor. The first that fits a path is its floor. */
  readonly place: string;
  /** Folders or files of ours that it may import, beside its own. */
  readonly ours: readonly string[];
  /** Outside packages; `x*` stands for all that begin with `x`. */
  readonly outside: readonly string[];
  /** The core: no clock, no console, no process, no timers. */
  readonly core: boolean;
}

const schema = ['schema'];
const ground = [...schema, 'server/geometry', 'server/chemistry'];
const recipe = [...ground, 'server/syntax', 'server/recipe'];
const workspace = [...recipe, 'server/plan', 'server/checks', 'server/words', 'server/workspace'];
const views = [...workspace, 'server/answers', 'server/reports'];
/** The manifest is imported for its version. */
const edges = [...views, 'server/protocol', 'server/host', 'package.json'];

const floors: readonly Floor[] = [
  { place: 'schema', ours: [], outside: ['zod/mini'], core: true },
  { place: 'server/geometry', ours: schema, outside: [], core: true },
  { place: 'server/chemistry', ours: schema, outside: [], core: true },
  { place: 'server/syntax', ours: schema, outside: ['yaml'], core: true },
  { place: 'server/recipe', ours: [...schema, 'server/syntax'], outside: ['zod/mini'], core: true },
  { place: 'server/plan', ours: [...ground, 'server/recipe'], outside: [], core: true },
  { place: 'server/checks', ours: [...ground, 'server/recipe', 'server/plan'], outside: [], core: true },
  {
    place: 'server/words',
    ours: [...ground, 'server/recipe', 'server/plan', 'server/checks'],
    outside: [],
    core: true,
  },
  { place: 'server/workspace', ours: workspace, outside: [], core: true },
  { place: 'server/answers', ours: workspace, outside: ['zod/mini'], core: true },
  { place: 'server/reports', ours: workspace, outside: ['ical-generator'], core: true },
  { place: 'server/protocol', ours: views, outside: ['vscode-languageserver*'], core: false },
  { place: 'server/host', ours: views, outside: ['node:*'], core: false },
  { place: 'server/cli', ours: [...edges, 'server/node.ts'], outside: ['node:*', 'commander'], core: false },
  { place: 'server/node.ts', ours: edges, outside: ['node:*', 'vscode-languageserver*'], core: false },
  { place: 'server/browser.ts', ours: edges, outside: ['vscode-languageserver*'], core: false },
  { place: 'server/start.ts', ours: ['server/node.ts', 'server/browser.ts'], outside: [], core: false },
  {
    place: 'client',
    ours: ['server/protocol/requests.ts', 'schema/settings.ts'],
    outside: ['vscode', 'vscode-languageclient*', 'node:*'],
    core: false,
  },
];

const sources = ['schema', 'server', 'client'].flatMap(filesIn).filter(path => path.endsWith('.ts'));
const core = sources.filter(path => floorOf(path)?.core);

test('every file imports only from its floor and below', () => {
  expect(sources.flatMap(path => strayImports(path, textOf(path)).map(stray => `${path}: ${stray}`))).toEqual([]);
});

test('the core has no clock, console, process or timer', () => {
  expect(core.flatMap(path => strayGlobals(textOf(path)).map(stray => `${path}: ${stray}`))).toEqual([]);
});

test('only files.ts of the core speaks of promises', () => {
  const promising = core.filter(path => /\bPromise\b|\basync\b|\bawait\b/.test(bareCode(textOf(path))));
  expect(promising).toEqual(['server/workspace/files.ts']);
});

test('only the syntax makes text edits, and only the protocol words them for editors', () => {
  expect(core.filter(path => /\bnewText\b/.test(bareCode(textOf(path))))).toEqual([]);
});

test('every floor has its files, and every file a floor', () => {
  expect(sources.length).toBeGreaterThan(80);
  expect(sources.filter(path => floorOf(path) === undefined)).toEqual([]);
  const built = [
    'schema',
    'server/geometry',
    'server/chemistry',
    'server/syntax',
    'server/recipe',
    'server/plan',
    'client',
  ];
  for (const place of built) expect(sources.some(path => floorOf(path)?.place === place)).toBe(true);
});

test.each([
  ['schema/a.ts', "import { b } from '../server/plan/b.ts';", 'server/plan/b.ts'],
  ['schema/a.ts', "import { z } from 'zod';", 'zod'],
  ['server/geometry/a.ts', "import type { B } from '../chemistry/b.ts';", 'server/chemistry/b.ts'],
  ['server/plan/a.ts', "import { readFileSync } from 'node:fs';", 'node:fs'],
  ['server/plan/a.ts', "import {\n  b,\n  c,\n} from '../checks/b.ts';", 'server/checks/b.ts'],
  ['server/plan/a.ts', "export { b } from '../answers/b.ts';", 'server/answers/b.ts'],
  ['server/answers/a.ts', "import { b } from '../reports/b.ts';", 'server/reports/b.ts'],
  ['server/recipe/a.ts', "import { parse } from 'yaml';", 'yaml'],
  ['server/host/a.ts', "import { b } from '../protocol/b.ts';", 'server/protocol/b.ts'],
  ['server/cli/a.ts', "import 'vscode-languageserver/node';", 'vscode-languageserver/node'],
  ['server/browser.ts', "const fs = await import('node:fs');", 'node:fs'],
  ['client/a.ts', "import { b } from '../server/plan/b.ts';", 'server/plan/b.ts'],
])('a stray import is seen: %s, %s', (path, text, stray) => {
  expect(strayImports(path, text)).toEqual([stray]);
});

test.each([
  ['const today = Date.now();', 'Date.now'],
  ['const today = new Date();', 'new Date()'],
  ['console.log(1);', 'console'],
  ['setTimeout(() => {}, 1);', 'setTimeout'],
  ['if (process.env.X) go();', 'process'],
])('what has no place in the core is seen: %s', (text, stray) => {
  expect(strayGlobals(text)).toEqual([stray]);
});

test('words in comments and strings are not code', () => {
  expect(strayGlobals("// console\nconst a = 'new Date()'; /* process */ const b = `Date.now console`;")).toEqual([]);
});

function floorOf(path: string): Floor | undefined {
  return floors.find(({ place }) => path === place || path.startsWith(`${place}/`));
}

function strayImports(path: string, text: string): readonly string[] {
  const floor = floorOf(path);
  if (floor === undefined) return ['no floor'];
  const own = floor.place.endsWith('.ts') ? [] : [floor.place];
  return importsOf(text).flatMap(named => {
    if (!named.startsWith('.')) return floor.outside.some(pattern => fits(named, pattern)) ? [] : [named];
    const target = posix.join(posix.dirname(path), named);
    const allowed = [...own, ...floor.ours].some(place => target === place || target.startsWith(`${place}/`));
    return allowed ? [] : [target];
  });
}

function fits(named: string, pattern: string): boolean {
  return pattern.endsWith('*') ? named.startsWith(pattern.slice(0, -1)) : named === pattern;
}

/** A date made from given numbers is arithmetic; one made from nothing is a clock. */
function strayGlobals(text: string): readonly string[] {
  const code = bareCode(text);
  const found = code.match(
    /\bDate\.now\b|\bnew Date\(\s*\)|\bperformance\b|\bconsole\b|(?<![.\w])process(?=\.)|\bset(?:Timeout|Interval|Immediate)\b|\bBuffer\b|\bMath\.random\b/g,
  );
  return [...(found ?? [])];
}

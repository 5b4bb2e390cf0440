// Colours recipes with the editor's own grammar engine and its YAML grammar, which only the editor's installation brings.
// A page can show colours but cannot tell their scopes, hence beside the suites and not in them.
import * as assert from 'node:assert/strict';
import { readdirSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { unitRows } from '../../schema/units.ts';
import type { Installation } from './install.ts';
import type { Result } from './suite/test.ts';

interface Grammar {
  tokenizeLine(line: string, state: unknown): { readonly tokens: readonly Token[] };
}

interface Token {
  readonly startIndex: number;
  readonly endIndex: number;
  readonly scopes: readonly string[];
}

/** A line, a text in it, and a scope that the text must have; `not ` before it where it must not. */
const expected: readonly (readonly [line: string, text: string, scope: string])[] = [
  ['    volume: 12 L', '12', 'constant.numeric.amount.grow-recipe'],
  ['    volume: 12 L', 'L', 'keyword.other.unit.grow-recipe'],
  ['    volume: 12 L', 'volume', 'entity.name.tag.yaml'],
  ['  - { uses: 260 mL/d, lasts: 14 d }', 'mL/d', 'keyword.other.unit.grow-recipe'],
  ['alkalinity: 140 mg/L CaCO3', 'mg/L CaCO3', 'keyword.other.unit.grow-recipe'],
  ['EC: 0.8..1.2 mS/cm', '..', 'keyword.operator.range.grow-recipe'],
  ['EC: 0.8..1.2 mS/cm', 'mS/cm', 'keyword.other.unit.grow-recipe'],
  ['pH: 5.5..6.5', '6.5', 'constant.numeric.amount.grow-recipe'],
  ['start: 2027-02-01', '2027-02-01', 'constant.numeric.date.grow-recipe'],
  ['feed: { meadow: 50 % of label }', '% of label', 'keyword.other.unit.grow-recipe'],
  ['analysis: { N: 5 %, K2O: 6 % }', 'N', 'entity.name.tag.yaml'],
  ['N: 120..200 mg/L', 'N', 'entity.name.tag.yaml'],
  ['analysis: { N: 5 %, K2O: 6 % }', 'K2O', 'not constant.numeric.amount.grow-recipe'],
  ['title: 3 tall pots', '3', 'not constant.numeric.amount.grow-recipe'],
  ['# add 5 mL', '5', 'not constant.numeric.amount.grow-recipe'],
  ['volume: 12 L   # by 5 mL', ' by 5 mL', 'comment.line.number-sign.yaml'],
];

export async function checkGrammar(installation: Installation): Promise<readonly Result[]> {
  const grammar = await loadGrammar(installation);
  const units = unitRows.map(([symbol]) => [`key: 3 ${symbol}`, symbol, 'keyword.other.unit.grow-recipe'] as const);
  return [
    check('grammar: amounts, ranges, dates and keys have their colours', grammar, expected),
    check('grammar: every unit is coloured as a unit', grammar, units),
  ];
}

function check(name: string, grammar: Grammar, cases: typeof expected): Result {
  const started = Date.now();
  try {
    for (const [line, text, scope] of cases) {
      const scopes = scopesOf(grammar, line, text);
      const wanted = scope.replace(/^not /, '');
      assert.equal(
        scopes.includes(wanted),
        wanted === scope,
        `${line}: “${text}” is ${scope}, has ${scopes.join(' ')}`,
      );
    }
    return { name, milliseconds: Date.now() - started };
  } catch (cause) {
    return { name, milliseconds: Date.now() - started, failure: String(cause) };
  }
}

/** The scopes of the token in which `text` begins; the whole text must share them. */
function scopesOf(grammar: Grammar, line: string, text: string): readonly string[] {
  const start = line.lastIndexOf(text);
  const token = grammar
    .tokenizeLine(line, null)
    .tokens.find(({ startIndex, endIndex }) => startIndex <= start && start + text.length <= endIndex);
  return token?.scopes ?? ['split into several tokens'];
}

async function loadGrammar({ server }: Installation): Promise<Grammar> {
  const editor = join(dirname(server), '..', '..', 'lib', 'vscode');
  const load = createRequire(join(editor, 'package.json'));
  const oniguruma = load('vscode-oniguruma');
  const textmate = load('vscode-textmate');
  await oniguruma.loadWASM(readFileSync(load.resolve('vscode-oniguruma/release/onig.wasm')));
  const yaml = join(editor, 'extensions', 'yaml', 'syntaxes');
  const own = join(import.meta.dirname, '..', '..', 'client', 'language', 'grow-recipe.tmLanguage.json');
  const files = [own, ...readdirSync(yaml).map(name => join(yaml, name))];
  const byScope = new Map(
    files.map(file => {
      const text = readFileSync(file, 'utf8');
      return [String(JSON.parse(text).scopeName), textmate.parseRawGrammar(text, file)] as const;
    }),
  );
  const registry = new textmate.Registry({
    onigLib: Promise.resolve({
      createOnigScanner: (sources: string[]) => new oniguruma.OnigScanner(sources),
      createOnigString: (text: string) => new oniguruma.OnigString(text),
    }),
    loadGrammar: async (scope: string) => byScope.get(scope) ?? null,
  });
  return registry.loadGrammar('source.grow-recipe');
}

// Writes every file that is derived from another. With --check it only tells which would change, and fails if one would; the
// staleness test does the same in memory.

import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { type FindingCode, findings } from '../schema/findings.ts';
import { accuracyPage, measureAccuracy } from './generate/accuracy-page.ts';
import { findingExamplesText } from './generate/finding-examples.ts';
import { findingPage, findingsIndex } from './generate/finding-pages.ts';
import { formatPage } from './generate/format-page.ts';
import { formulasPage } from './generate/formulas-page.ts';
import { grammarText } from './generate/grammar.ts';
import { jsonPage } from './generate/json-page.ts';
import { jsonSchemaText } from './generate/json-schema.ts';
import { withSettings } from './generate/settings.ts';
import { sourcesPage } from './generate/sources-page.ts';
import { unitsPage } from './generate/units-page.ts';

/** A folder in which every file is generated: what is not made any more is taken away. */
const ownFolder = 'schema/reference/findings';

/** Every generated file of a checkout by its path, with the text that it should have. */
export function generated(root: string): ReadonlyMap<string, string> {
  const read = (path: string): string | undefined =>
    existsSync(join(root, path)) ? readFileSync(join(root, path), 'utf8') : undefined;
  const codes = Object.keys(findings) as FindingCode[];
  const example = (name: FindingCode): string | undefined => read(`test/findings/${name}.grow.yaml`);
  return new Map([
    ['package.json', withSettings(read('package.json') ?? '{}')],
    ['client/language/grow-recipe.tmLanguage.json', grammarText()],
    ['schema/grow-recipe.schema.json', jsonSchemaText()],
    ['schema/reference/format.md', formatPage()],
    ['schema/reference/json.md', jsonPage()],
    ['schema/reference/units.md', unitsPage()],
    ['schema/reference/formulas.md', formulasPage()],
    ['schema/reference/sources.md', sourcesPage()],
    ['schema/reference/accuracy.md', accuracyPage(measureAccuracy())],
    ['schema/reference/finding-examples.json', findingExamplesText(example)],
    [`${ownFolder}/README.md`, findingsIndex()],
    ...codes.map((name): [string, string] => [`${ownFolder}/${name}.md`, findingPage(name, example(name))]),
  ]);
}

/** The generated files that are missing, differ from what would be written, or are not made any more. */
export function stale(root: string, files: ReadonlyMap<string, string>): readonly string[] {
  const differing = [...files].filter(([path, text]) => {
    const at = join(root, path);
    return !existsSync(at) || readFileSync(at, 'utf8') !== text;
  });
  const folder = join(root, ownFolder);
  const present = existsSync(folder) ? readdirSync(folder).map(name => `${ownFolder}/${name}`) : [];
  return [...differing.map(([path]) => path), ...present.filter(path => !files.has(path))];
}

function write(root: string, files: ReadonlyMap<string, string>, paths: readonly string[]): void {
  for (const path of paths) {
    const text = files.get(path);
    if (text === undefined) {
      rmSync(join(root, path));
      continue;
    }
    mkdirSync(dirname(join(root, path)), { recursive: true });
    writeFileSync(join(root, path), text);
  }
}

function main(): void {
  const root = join(import.meta.dirname, '..');
  const check = process.argv.includes('--check');
  const files = generated(root);
  const paths = stale(root, files);
  if (!check) write(root, files, paths);
  for (const path of paths) process.stdout.write(`${check ? 'stale' : 'written'}: ${path}\n`);
  if (paths.length === 0) process.stdout.write(`${files.size} generated files are up to date\n`);
  if (check && paths.length > 0) {
    process.stdout.write('run `npm run generate`\n');
    process.exitCode = 1;
  }
}

if (process.argv[1] === import.meta.filename) main();

// Begins a new finding: its row in the catalogue, its check and its marked example, each to be filled in. The compiler and the
// house tests then name what is still missing.

import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { findings } from '../schema/findings.ts';

const root = join(import.meta.dirname, '..');

/** The catalogue with a row for the code behind its last one. */
export function withRow(catalogue: string, code: string): string {
  const end = '\n} as const satisfies Record<string, Row<never>>;';
  if (!catalogue.includes(end)) throw new Error('the catalogue does not end as expected');
  const row = `
  '${code}': row<{ name: string }>({
    severity: 'warning',
    from: 'check',
    title: 'What is wrong, in a few words',
    what: ({ name }) => \`What is wrong with \\\`\${name}\\\`, with its amounts.\`,
    why: 'What follows from it.',
    fix: 'What to do.',
    sources: ['tidemark-design'],
  }),`;
  return catalogue.replace(end, () => `${row}${end}`);
}

/** The check of a code, which finds nothing yet. */
export function checkText(code: string): string {
  const name = camel(code);
  return `// Finds what, and why it needs a check of its own.

import type { FindingOf } from '../../schema/findings.ts';
import type { Plan } from '../plan/plan.ts';

export function ${name}(plan: Plan): readonly FindingOf<'${code}'>[] {
  return [...plan.batches.values()].flatMap(() => []);
}
`;
}

/** The list of checks with the code's import and line. */
export function withCheck(checks: string, code: string): string {
  const name = camel(code);
  const line = `import { ${name} } from './${code}.ts';`;
  const imports = checks.match(/^import .* from '\.\/.*';$/gm) ?? [];
  const before = imports.find(other => other.slice(other.indexOf("'./")) > line.slice(line.indexOf("'./")));
  const last = imports[imports.length - 1] ?? '';
  const imported =
    before === undefined
      ? checks.replace(last, () => `${last}\n${line}`)
      : checks.replace(before, () => `${line}\n${before}`);
  return imported.replace(/^\} (?:as const )?satisfies/m, end => `  '${code}': ${name},\n${end}`);
}

const example = (code: string): string => `recipe: 1
batches:
  first: { water: mains, volume: 10 L }
  #<---- ${code}: what it says of this case
# --- fixed
recipe: 1
batches:
  first: { water: mains, volume: 10 L }
`;

function camel(code: string): string {
  return code.replace(/-([a-z0-9])/g, (_, letter: string) => letter.toUpperCase());
}

function begin(code: string): void {
  const at = (path: string): string => join(root, path);
  const change = (path: string, edit: (text: string, code: string) => string): void =>
    writeFileSync(at(path), edit(readFileSync(at(path), 'utf8'), code));
  change('schema/findings.ts', withRow);
  change('server/checks/checks.ts', withCheck);
  for (const [path, text] of [
    [`server/checks/${code}.ts`, checkText(code)],
    [`test/findings/${code}.grow.yaml`, example(code)],
  ] as const) {
    if (!existsSync(at(path))) writeFileSync(at(path), text);
    process.stdout.write(`fill in ${path}\n`);
  }
  process.stdout.write('fill in the last row of schema/findings.ts, then run `npm run generate` and `npm test`\n');
}

if (process.argv[1] === import.meta.filename) {
  const [code] = process.argv.slice(2);
  const fault =
    code === undefined || !/^[a-z][a-z0-9]*(?:-[a-z0-9]+)+$/.test(code)
      ? 'usage: npm run new-finding CODE, where CODE is words in small letters with hyphens'
      : Object.hasOwn(findings, code)
        ? `there is a finding ${code} already`
        : undefined;
  if (code !== undefined && fault === undefined) {
    begin(code);
  } else {
    process.stderr.write(`${fault}\n`);
    process.exitCode = 2;
  }
}

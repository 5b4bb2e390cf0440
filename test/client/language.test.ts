// The language files: what VS Code reads from them must be sound before an editor sees it.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { findings } from '../../schema/findings.ts';
import { Workspace } from '../../server/workspace/workspace.ts';

const folder = join(import.meta.dirname, '..', '..', 'client', 'language');
const configuration = JSON.parse(readFileSync(join(folder, 'configuration.json'), 'utf8'));
const snippets: Readonly<
  Record<string, { readonly prefix: string; readonly body: readonly string[]; readonly description: string }>
> = JSON.parse(readFileSync(join(folder, 'snippets.json'), 'utf8'));

/** The words that a double click would take, in order. */
function words(line: string): readonly string[] {
  const { pattern, flags } = configuration.wordPattern;
  return line.match(new RegExp(pattern, `g${flags}`)) ?? [];
}

test.each([
  ['uses: 260 mL/d', ['uses', '260', 'mL/d']],
  ['net-cup: { depth: 6.5 cm }', ['net-cup', 'depth', '6.5', 'cm']],
  ['formula: CaSO4·2H2O', ['formula', 'CaSO4·2H2O']],
  ['ions: { NO3-N: 140 mg/L }', ['ions', 'NO3-N', '140', 'mg/L']],
  ['temperature: 18 °C', ['temperature', '18', '°C']],
  ['pH: 5.5..6.5', ['pH', '5.5', '6.5']],
  ['use: [./shelf.grow.yaml]', ['use', 'shelf.grow.yaml']],
])('words of `%s` keep units, hyphens and formulae whole', (line, expected) => {
  expect(words(line)).toEqual(expected);
});

test.each([
  ['batches:', true],
  ['  opening:   # the first', true],
  ['  - add:', true],
  ['    ions: {', true],
  ['    volume: 12 L', false],
  ['# a comment:', false],
  ['    ions: { Ca: 40 mg/L }', false],
])('a line after `%s` is indented: %s', (line, indented) => {
  expect(new RegExp(configuration.indentationRules.increaseIndentPattern).test(line)).toBe(indented);
});

/** A snippet as it stands after Tab has been pressed through it: first choices and proposals taken. */
function filled(name: string): string {
  const body = snippets[name]?.body ?? [];
  return body
    .join('\n')
    .replace(/\$\{\d+\|([^,|]+)[^}]*\}/g, '$1')
    .replace(/\$\{\d+:\$CURRENT_YEAR-\$CURRENT_MONTH-\$CURRENT_DATE\}/g, '2027-02-01')
    .replace(/\$\{\d+:([^}]*)\}/g, '$1')
    .replace(/\$0/g, '');
}

function errorsIn(text: string): readonly string[] {
  const workspace = new Workspace();
  workspace.open('file:///snippets.grow.yaml', text);
  const found = workspace.snapshot('file:///snippets.grow.yaml')?.findings ?? [];
  return found
    .filter(({ finding }) => findings[finding.code].severity === 'error')
    .map(({ finding }) => `${finding.code} at ${finding.at.path.join('/')}`);
}

const sections = {
  waters: ['Water'],
  feeds: ['Feed by label', 'Feed by formula'],
  adjusters: ['Acid', 'Base'],
  tools: ['Measuring tool', 'Mixing vessel'],
  containers: ['Round container', 'Box container'],
  targets: ['Target'],
  stages: ['Stage'],
  plantings: ['Planting'],
  batches: ['Batch'],
  log: ['Reading', 'Top-up'],
};

test('all snippets together, each in its section, are a recipe without errors', () => {
  expect([...Object.values(sections).flat(), 'New recipe'].sort()).toEqual(Object.keys(snippets).sort());
  const body = Object.entries(sections).map(([section, names]) => {
    const entries = names.map(name => filled(name).trimEnd().replace(/^/gm, '  '));
    return `${section}:\n${entries.join('\n')}\n`;
  });
  expect(errorsIn(`recipe: 1\nstart: 2027-02-01\n${body.join('')}`)).toEqual([]);
});

test('the snippet of a whole recipe has no errors', () => {
  expect(errorsIn(filled('New recipe'))).toEqual([]);
  expect(errorsIn(filled('New recipe').replace('10 L', '10 cm'))).toEqual(['unit-mismatch at batches/first/volume']);
});

test('snippets with an acid or a base tell how to be safe', () => {
  for (const name of ['Acid', 'Base']) expect(snippets[name]?.description).toMatch(/gloves and eye protection/i);
});

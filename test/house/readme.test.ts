// What the README shows is true: its recipe checks and plans, its commands are those that the command line has, said as its help says
// them, and each that stands as an example is understood.

import type { Command } from 'commander';
import { expect, test } from 'vitest';
import { dayOf } from '../../schema/date.ts';
import { commandTree, readArgs } from '../../server/cli/args.ts';
import { findingsFormats } from '../../server/reports/findings/formats.ts';
import { Workspace } from '../../server/workspace/workspace.ts';
import { textOf } from './source.ts';

const readme = textOf('README.md');
const pages = ['README.md', 'CHANGELOG.md', 'DEVELOPERS.md', 'schema/reference/ci.md'];
const formats = [...findingsFormats.keys()];

test('the recipe of the README has no findings but the caution for its acid', () => {
  const [, recipe = ''] = /```yaml\n([\s\S]*?)```/.exec(readme) ?? [];
  const workspace = new Workspace();
  workspace.open('file:///readme.grow.yaml', recipe);
  const snapshot = workspace.snapshot('file:///readme.grow.yaml');
  expect(snapshot?.plan.batches.size).toBe(1);
  expect(snapshot?.findings.map(({ finding }) => finding.code)).toEqual(['acid-hazard']);
});

test('the table of commands says what the help says', () => {
  const rows = commandTree(formats, () => {}).commands.map(rowOf);
  expect(rows.length).toBeGreaterThan(10);
  expect(readme.match(/^\| `tidemark .*$/gm)).toEqual(rows);
});

test.each(pages)('every command line of %s is understood', page => {
  const lines = commandLines(textOf(page));
  expect(lines.filter(line => !isUnderstood(line))).toEqual([]);
  if (page === 'README.md') expect(lines.length).toBeGreaterThan(10);
});

test('a command line that is not understood is seen', () => {
  const page = '```sh\ntidemark plan a.grow.yaml --batch x\n```\nRun `tidemark chek`, or `tidemark check [PATHS]`.\n';
  expect(commandLines(page)).toEqual(['plan a.grow.yaml --batch x', 'chek']);
  expect(commandLines(page).filter(isUnderstood)).toEqual([]);
  expect(isUnderstood("log a.grow.yaml --add 'down 4 mL' --pH 6.6")).toBe(true);
});

test('every script that README and DEVELOPERS.md name is there', () => {
  const { scripts } = JSON.parse(textOf('package.json'));
  const named = [...`${readme}${textOf('DEVELOPERS.md')}`.matchAll(/\bnpm run ([\w:-]+)/g)].flatMap(
    ([, name]) => name ?? [],
  );
  expect(named.length).toBeGreaterThan(5);
  expect(named.filter(name => !Object.hasOwn(scripts, name))).toEqual([]);
});

test('every editor command that the README names is in the manifest', () => {
  const { commands } = JSON.parse(textOf('package.json')).contributes;
  const titles = commands.map(({ title }: { title: string }) => title);
  const named = [...readme.matchAll(/\*Tidemark:\s([^*]+)\*/g)].map(([, title = '']) => title.replace(/\s+/g, ' '));
  expect(named.length).toBeGreaterThan(2);
  expect(named.filter(title => !titles.includes(title))).toEqual([]);
});

test('the test command of the README is what .ci/run runs', () => {
  expect(readme).toContain('npm ci && npm test');
  expect(textOf('.ci/run')).toMatch(/^npm ci\b.*\nnpm test\b/m);
});

function rowOf(command: Command): string {
  const takes = command.registeredArguments.map(argument => {
    const name = argument.variadic ? `${argument.name()}...` : argument.name();
    return argument.required ? `<${name}>` : `[${name}]`;
  });
  const needed = command.options.filter(option => option.mandatory && option.defaultValue === undefined);
  const usage = ['tidemark', command.name(), ...takes, ...needed.map(option => option.long)].join(' ');
  const choices = command.options.find(option => option.long === '--format')?.argChoices ?? [];
  return `| \`${usage}\` | ${command.summary()} | ${choices.join(', ')} |`.replace('|  |', '| |');
}

/** What stands behind `tidemark` in code, where it is a whole command and not only its form. */
function commandLines(page: string): readonly string[] {
  const blocks = [...page.matchAll(/^```sh\n([\s\S]*?)^```/gm)].flatMap(([, block = '']) => block.split('\n'));
  const spans = [...page.replace(/^```[\s\S]*?^```/gm, '').matchAll(/`([^`\n]+)`/g)].map(([, span = '']) => span);
  return [...blocks, ...spans]
    .flatMap(line => /^tidemark ([^#>]+)/.exec(line)?.[1]?.trim() ?? [])
    .filter(line => !/[[<]|\b[A-Z]{3,}\b/.test(line));
}

function isUnderstood(line: string): boolean {
  const args = [...line.matchAll(/'([^']*)'|"([^"]*)"|(\S+)/g)].map(([, a, b, c]) => a ?? b ?? c ?? '');
  const silent = { isTTY: false, write: () => {} };
  const today = () => dayOf(2027, 3, 1);
  const io = { out: silent, err: silent, cwd: '.', env: {}, today, readInput: () => new Uint8Array() };
  // A command alone is a name for it, whatever it would need.
  if (args.length === 1) return commandTree(formats, () => {}).commands.some(command => command.name() === args[0]);
  return typeof readArgs(args, io, formats) === 'object';
}

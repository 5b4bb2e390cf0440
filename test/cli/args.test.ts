import { expect, test } from 'vitest';
import { commandTree } from '../../server/cli/args.ts';
import { runCli } from './run-cli.ts';

test.each([
  [['chek'], "unknown command 'chek'\n(Did you mean check?)"],
  [['check', '--fromat', 'json'], "unknown option '--fromat'\n(Did you mean --format?)"],
  [['check', '--format', 'yml'], 'Allowed choices are text, concise, json, sarif, github, gitlab, junit, markdown.'],
  [['check', '--fail-on', 'maybe'], 'Allowed choices are error, warning, information, hint, never.'],
  [['plan'], "missing required argument 'file'"],
  [['plan', 'a', 'b'], 'too many arguments'],
  [['serve'], "required option '--stdio' not specified"],
  [['explain', 'acid-hazrd'], 'Did you mean acid-hazard?'],
  [['explain', 'zzzzzzzz'], '`tidemark explain` lists them all'],
])('what is not understood gives 2 and goes to standard error: %j', async (args, says) => {
  const { code, out, err } = await runCli(args);
  expect({ code, out }).toEqual({ code: 2, out: '' });
  expect(err).toContain(says);
  expect(err).toMatch(/^tidemark: /);
});

test('without a command, the help goes to standard error and gives 2', async () => {
  const { code, out, err } = await runCli([]);
  expect({ code, out }).toEqual({ code: 2, out: '' });
  expect(err).toContain('Usage: tidemark');
});

test('help is an answer, and begins with examples', async () => {
  const { code, out, err } = await runCli(['--help']);
  expect({ code, err }).toEqual({ code: 0, err: '' });
  expect(out).toMatch(/^Examples:\n {2}tidemark check\n/);
  expect(out).toContain('Exit codes: 0 nothing found, 1 findings at or above --fail-on, 2 usage or unreadable input.');
});

test.each(commandTree([], () => {}).commands.map(command => command.name()))('help of %s', async command => {
  const { code, out } = await runCli([command, '--help']);
  expect(code).toBe(0);
  expect(out).toMatch(new RegExp(`^Examples:\n {2}tidemark ${command}`));
});

test('the version is that of the package', async () => {
  const { code, out } = await runCli(['--version']);
  expect(code).toBe(0);
  expect(out).toMatch(/^\d+\.\d+\.\d+\n$/);
});

const red = '\u001b[1;31merror\u001b[0m';

test.each([
  ['a terminal', { isTTY: true }, [], true],
  ['no terminal', {}, [], false],
  ['a terminal that cannot', { isTTY: true, env: { TERM: 'dumb' } }, [], false],
  ['NO_COLOR', { isTTY: true, env: { NO_COLOR: '1' } }, [], false],
  ['an empty NO_COLOR, which does not count', { isTTY: true, env: { NO_COLOR: '' } }, [], true],
  ['FORCE_COLOR', { env: { FORCE_COLOR: '1' } }, [], true],
  ['FORCE_COLOR=0', { isTTY: true, env: { FORCE_COLOR: '0' } }, [], false],
  ['FORCE_COLOR before NO_COLOR', { env: { FORCE_COLOR: '1', NO_COLOR: '1' } }, [], true],
  ['--no-color before all', { isTTY: true, env: { FORCE_COLOR: '1' } }, ['--no-color'], false],
] as const)('colours with %s', async (_, setting, more, coloured) => {
  const { out } = await runCli(['check', '-', ...more], { ...setting, stdin: 'recipe: 1\nwater: {}\n' });
  expect(out.includes(red)).toBe(coloured);
  expect(out.includes('\u001b')).toBe(coloured);
});

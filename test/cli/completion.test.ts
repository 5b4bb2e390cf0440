import { spawnSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { type Shell, shells } from '../../server/cli/shells.ts';
import { folderWith, runCli } from './run-cli.ts';

const commands = [
  'check',
  'plan',
  'water',
  'sheet',
  'calendar',
  'supplies',
  'log',
  'diff',
  'explain',
  'format',
  'new',
  'migrate',
  'completion',
  'serve',
];

test.each(shells)(
  '%s: every command, option and value is in it, and the shell itself can read it where it is there',
  async shell => {
    const { code, out, err } = await runCli(['completion', shell]);
    expect({ code, err }).toEqual({ code: 0, err: '' });
    for (const word of [...commands, 'changed-since', 'sarif', 'information', 'stdin-filename'])
      expect(out).toContain(word);
    const file = join(folderWith({}), 'script');
    writeFileSync(file, out);
    const read = spawnSync(shell, [shell === 'fish' ? '--no-execute' : '-n', file], { encoding: 'utf8' });
    if (read.error === undefined) expect({ status: read.status, said: read.stderr }).toEqual({ status: 0, said: '' });
  },
);

/** What is typed before the key that completes it, what must be offered then, and what must not. */
const questions: readonly (readonly [typed: string, offered: readonly string[], other: string])[] = [
  ['tidemark ch', ['check'], 'plan'],
  ['tidemark check --ch', ['--changed-since'], '--format'],
  ['tidemark check --format g', ['github', 'gitlab'], 'sarif'],
  ['tidemark check --format=g', ['github', 'gitlab'], 'sarif'],
  ['tidemark completion z', ['zsh'], 'fish'],
  ['tidemark check ro', ['rows/'], 'README'],
  ['tidemark check --stdin-filename ro', ['rows/'], 'README'],
];

describe.each(shells)('%s, where it is installed,', shell => {
  test.each(questions)('offers after `%s`: %j', async (typed, offered, other) => {
    if (!isInstalled(shell)) return;
    const { out } = await runCli(['completion', shell]);
    const folder = folderWith({ 'rows/a.grow.yaml': 'recipe: 1\n', README: '', 'zfunc/_tidemark': out });
    const answer = ask[shell](folder, typed, offered.at(-1) ?? '');
    for (const word of offered) expect(answer).toContain(word);
    expect(answer).not.toContain(other);
  });
});

test('one of them is installed', () => {
  expect(shells.filter(isInstalled)).toContain('bash');
});

function isInstalled(shell: Shell): boolean {
  return spawnSync(shell, ['-c', 'exit 0']).error === undefined;
}

/** What a shell answers with the script in a folder to what is typed; `last` is what it says last. */
const ask: Readonly<Record<Shell, (folder: string, typed: string, last: string) => string>> = {
  bash(folder, typed) {
    // Bash splits words at equals signs too. Files are found by bash itself where the script says so.
    const words = typed.split(/\s+|(?==)|(?<==)/u).map(word => `'${word}'`);
    return run('bash', folder, [
      '. zfunc/_tidemark; compopt() { [[ $* != "-o default" ]] || files=yes; }',
      `COMP_WORDS=(${words.join(' ')}); COMP_CWORD=${words.length - 1}; _tidemark`,
      `printf '%s\\n' "\${COMPREPLY[@]}"; [[ -z $files ]] || compgen -f -S / -- "\${COMP_WORDS[COMP_CWORD]}"`,
    ]);
  },
  fish: (folder, typed) => run('fish', folder, ['source zfunc/_tidemark', `complete -C '${typed}'`]),
  // A shell within the shell, as only one at a terminal completes. The key is the first, which loads the script.
  zsh: (folder, typed, last) =>
    run('zsh', folder, [
      "zmodload zsh/zpty; zpty inner 'TERM=dumb zsh -f -i'",
      "zpty -w inner 'PS1=; unsetopt zle_bracketed_paste; fpath=($PWD/zfunc $fpath)'",
      "zpty -w inner 'autoload -Uz compinit; compinit -u -D; bindkey ^X list-choices; print rea''dy'; zpty -r inner said '*ready*'",
      `zpty -w -n inner $'${typed}\\x18'; zpty -r inner said '*${last}*'; print -r -- $said; zpty -d inner`,
    ]),
};

function run(shell: Shell, cwd: string, lines: readonly string[]): string {
  const { stdout, stderr } = spawnSync(shell, ['-c', lines.join('\n')], { cwd, encoding: 'utf8', timeout: 30_000 });
  return `${stdout}${stderr}`;
}

test('a shell that is not known', async () => {
  const { code, err } = await runCli(['completion', 'tcsh']);
  expect({ code, err }).toEqual({ code: 2, err: expect.stringContaining('Allowed choices are bash, zsh, fish.') });
});

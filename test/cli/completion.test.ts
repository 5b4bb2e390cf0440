import { execFileSync, spawnSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { shells } from '../../server/cli/shells.ts';
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

/** What bash would offer for the last word of a line. */
async function offered(...words: string[]): Promise<readonly string[]> {
  const { out } = await runCli(['completion', 'bash']);
  const line = words.map(word => `'${word}'`).join(' ');
  const script = `${out}\ncompopt() { :; }\nCOMP_WORDS=(${line}); COMP_CWORD=${words.length - 1}; _tidemark; printf '%s\\n' "\${COMPREPLY[@]}"`;
  return execFileSync('bash', ['-c', script], { encoding: 'utf8' }).trim().split('\n');
}

const hasBash = spawnSync('bash', ['-c', 'exit 0']).status === 0;

test.runIf(hasBash)('bash completes commands, options, values and file names', async () => {
  expect(await offered('tidemark', 'ch')).toEqual(['check']);
  expect(await offered('tidemark', 'check', '--ch')).toEqual(['--changed-since']);
  expect(await offered('tidemark', 'check', '--format', 'g')).toEqual(['github', 'gitlab']);
  expect(await offered('tidemark', 'completion', 'z')).toEqual(['zsh']);
  expect(await offered('tidemark', 'check', 'a')).toEqual(['']);
});

test('a shell that is not known', async () => {
  const { code, err } = await runCli(['completion', 'tcsh']);
  expect({ code, err }).toEqual({ code: 2, err: expect.stringContaining('Allowed choices are bash, zsh, fish.') });
});

// A second editor that shares no code with the first: Neovim, without a screen, with the server of the packaged command line. Used
// where it is on the machine and never installed from here.
import { spawnSync } from 'node:child_process';
import { cpSync, existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Result } from '../suite/test.ts';

const here = import.meta.dirname;
const longest = 60_000;

export function runNeovim(home: string, extension: string): readonly Result[] {
  const version = spawnSync('nvim', ['--version'], { encoding: 'utf8' });
  if (version.error !== undefined) {
    process.stdout.write('Neovim tests skipped: there is no nvim on this machine\n');
    return [];
  }
  const folder = join(home, 'neovim', 'recipes');
  cpSync(join(here, '..', 'recipes'), folder, { recursive: true });
  const results = join(home, 'neovim', 'results.json');
  const nothingConfigured = ['--headless', '-u', 'NONE', '-i', 'NONE', '-n'];
  const { stdout, stderr } = spawnSync(
    'nvim',
    [...nothingConfigured, '-S', join(here, 'neovim', 'suite.lua'), 'stairwell.grow.yaml'],
    {
      cwd: folder,
      encoding: 'utf8',
      timeout: longest,
      env: {
        ...process.env,
        // Its log of the language client goes where the run cleans up.
        XDG_CACHE_HOME: join(home, 'neovim'),
        XDG_STATE_HOME: join(home, 'neovim'),
        TIDEMARK_NODE: process.execPath,
        TIDEMARK_CLI: join(extension, 'dist', 'cli.cjs'),
        TIDEMARK_RESULTS: results,
      },
    },
  );
  if (!existsSync(results)) {
    return [
      { name: 'Neovim: the suite runs', failure: `${stdout}${stderr}` || 'it did not end', milliseconds: longest },
    ];
  }
  const told: readonly Result[] = JSON.parse(readFileSync(results, 'utf8'));
  const [name = 'Neovim'] = version.stdout.split('\n');
  process.stdout.write(`Neovim tests run in ${name}\n`);
  return told.map(result => ({ ...result, name: `Neovim: ${result.name}` }));
}

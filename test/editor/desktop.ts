// `npm run test:desktop`: the main suite in a desktop editor, for machines with internet. It is downloaded unless the
// environment variable TIDEMARK_DESKTOP_EDITOR names the executable of one; without a screen, run it under xvfb-run.
import { execFileSync } from 'node:child_process';
import { cpSync, existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { runTests } from '@vscode/test-electron';
import { carry } from './carrier.ts';
import { errorsLogged } from './logs.ts';
import { report } from './report.ts';
import type { Result } from './suite/test.ts';

const root = join(import.meta.dirname, '..', '..');
const home = mkdtempSync(join(tmpdir(), 'tidemark-desktop-'));
try {
  process.exitCode = report(await runDesktop());
} finally {
  rmSync(home, { recursive: true, force: true, maxRetries: 5, retryDelay: 200 });
}

async function runDesktop(): Promise<readonly Result[]> {
  const recipes = join(home, 'recipes');
  cpSync(join(import.meta.dirname, 'recipes'), recipes, { recursive: true });
  const carrier = carry(join(home, 'carrier'), 'trusted');
  const user = join(home, 'user');
  mkdirSync(join(user, 'User'), { recursive: true });
  writeFileSync(join(user, 'User', 'settings.json'), JSON.stringify({ 'security.workspace.trust.enabled': false }));
  const executable = process.env.TIDEMARK_DESKTOP_EDITOR;
  // A failed test makes the run itself fail; what failed is read from the results.
  const ended = await runTests({
    ...(executable ? { vscodeExecutablePath: executable } : {}),
    extensionDevelopmentPath: [unpacked(), carrier.folder],
    extensionTestsPath: carrier.entry,
    launchArgs: [
      recipes,
      '--user-data-dir',
      user,
      '--extensions-dir',
      join(home, 'extensions'),
      '--disable-workspace-trust',
    ],
  }).then(
    code => `the editor ended with ${code}`,
    (cause: unknown) => String(cause),
  );
  const file = `${carrier.entry}.json`;
  if (!existsSync(file)) return [{ name: 'desktop: the suite runs', failure: ended, milliseconds: 0 }];
  const results: readonly Result[] = JSON.parse(readFileSync(file, 'utf8'));
  const errors = errorsLogged(user);
  const quiet = { name: 'the extension logs no errors', milliseconds: 0 };
  return [...results, errors.length === 0 ? quiet : { ...quiet, failure: errors.join('\n') }];
}

/** A folder with exactly the files that are packaged, so that nothing else of the clone can be relied on. */
function unpacked(): string {
  execFileSync('npm', ['run', '--silent', 'build'], { cwd: root, stdio: ['ignore', 'ignore', 'inherit'] });
  const listed = execFileSync('npx', ['vsce', 'ls', '--no-dependencies'], { cwd: root, encoding: 'utf8' });
  const folder = join(home, 'extension');
  for (const file of listed.split('\n').filter(line => line !== '')) {
    mkdirSync(join(folder, dirname(file)), { recursive: true });
    cpSync(join(root, file), join(folder, file));
  }
  return folder;
}

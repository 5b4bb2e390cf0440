// The editor that runs wholly in a browser, with the packaged extension in its web host: no Node behind it, a virtual file system, the
// language server in a worker.
import { spawn } from 'node:child_process';
import { cpSync, existsSync, mkdirSync, readdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser } from './browser.ts';
import { carry } from './carrier.ts';
import type { Installation } from './install.ts';
import { listen } from './listen.ts';
import { answers, freePort, stopGroup } from './serve.ts';
import type { Result } from './suite/test.ts';
import { marker } from './suite/web-marker.ts';

interface Places {
  /** A folder of this run, removed by whoever made it. */
  readonly home: string;
  /** The packaged extension, unpacked. */
  readonly extension: string;
  readonly shot: string;
}

export async function runWeb(
  installation: Installation,
  browser: Browser,
  { home, extension, shot }: Places,
): Promise<readonly Result[]> {
  const recipes = join(home, 'web', 'recipes');
  cpSync(join(import.meta.dirname, 'recipes'), recipes, { recursive: true });
  // Saved in a second by itself, what one test types would be what the next begins with.
  mkdirSync(join(recipes, '.vscode'));
  writeFileSync(join(recipes, '.vscode', 'settings.json'), JSON.stringify({ 'files.autoSave': 'off' }));
  const carrier = carry(join(home, 'web', 'carrier'), 'web', {}, 'browser');
  const port = await freePort();
  const server = serveStatic(installation, port, {
    build: { type: 'static', location: installation.web },
    extensionDevelopmentPath: carrier.folder,
    extensionTestsPath: carrier.entry,
    extensionPaths: [extension],
    folderMountPath: recipes,
  });
  try {
    await answers(`http://localhost:${port}/`, server);
    const page = await browser.newPage({ viewport: { width: 1280, height: 800 } });
    const { end, line } = await listen(page);
    const told = line(marker);
    await page.goto(`http://localhost:${port}/`);
    // The picture is of the extension while it runs: its hints go with it, and settle a little after the last test.
    const last = await Promise.race([told, end]);
    await page.waitForTimeout(1500);
    await page.screenshot({ path: shot });
    await page.close();
    if (!last.includes(marker)) return [{ name: 'web: the suite runs', failure: last, milliseconds: 0 }];
    const results: readonly Result[] = JSON.parse(last.slice(last.indexOf(marker) + marker.length));
    return results.map(result => ({ ...result, name: `web: ${result.name}` }));
  } finally {
    stopGroup(server);
  }
}

/** In a process of its own, since it logs every request that fails to the console of the process that it is in. */
function serveStatic(installation: Installation, port: number, config: object): ReturnType<typeof spawn> {
  const script = `require('@vscode/test-web/out/server/main.js').runServer('localhost', ${port}, ${JSON.stringify(config)})`;
  return spawn(installation.node, ['-e', script], {
    cwd: installation.root,
    detached: true,
    stdio: 'ignore',
  });
}

/** Where an editor has unpacked the extension that was installed into it. */
export function unpackedIn(extensions: string): string {
  const name = existsSync(extensions)
    ? readdirSync(extensions).find(entry => entry.startsWith('tidemark.'))
    : undefined;
  if (name === undefined) throw new Error(`the extension is not installed in ${extensions}`);
  return join(extensions, name);
}

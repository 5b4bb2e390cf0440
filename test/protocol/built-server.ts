// The server as it is shipped, one bundle, in a process of its own.

import { type ChildProcessWithoutNullStreams, spawn } from 'node:child_process';
import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { build } from 'esbuild';
import { type Client, type ClientOptions, startClient } from './client.ts';

/** Bundles the server into a folder of its own and gives the file. */
export async function buildServer(): Promise<string> {
  const outfile = join(mkdtempSync(join(tmpdir(), 'tidemark-server-')), 'server.cjs');
  await build({
    absWorkingDir: join(import.meta.dirname, '..', '..'),
    entryPoints: ['server/node.ts'],
    outfile,
    bundle: true,
    platform: 'node',
    format: 'cjs',
    target: 'node20',
    mainFields: ['module', 'main'],
    minify: true,
    logLevel: 'warning',
  });
  return outfile;
}

export interface Running {
  readonly client: Client;
  readonly process: ChildProcessWithoutNullStreams;
  readonly exited: Promise<number | null>;
}

export async function startBuilt(file: string, options: ClientOptions = {}): Promise<Running> {
  const server = spawn(process.execPath, [file, '--stdio'], { stdio: 'pipe' });
  const exited = new Promise<number | null>(done => server.once('exit', code => done(code)));
  const client = await startClient(server.stdout, server.stdin, options);
  return { client, process: server, exited };
}

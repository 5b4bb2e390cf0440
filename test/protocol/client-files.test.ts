// Files that no disk holds: the client is asked for them, and only for those that may be read.

import { rmSync } from 'node:fs';
import { dirname } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { buildServer, startBuilt } from './built-server.ts';

const recipe = 'vscode-vfs://host/garden/porch.grow.yaml';
const text = 'recipe: 1\nuse: [./shelf.grow.yaml]\nbatches: { tub: { water: rain, volume: 2 L } }\n';
const shelf = { kind: 'text', text: 'recipe: 1\nwaters: { rain: { pH: 6 } }\n' };

let server: string;
beforeAll(async () => {
  server = await buildServer();
}, 60_000);
afterAll(() => rmSync(dirname(server), { recursive: true }));

test('a used file of a virtual file system is read by the client', async () => {
  const { client, process } = await startBuilt(server, {
    folders: ['vscode-vfs://host/garden'],
    answers: new Map([['tidemark/readFile', () => shelf]]),
  });
  await client.open(recipe, text);
  await client.until(() => lastCodes(client.published).length === 0);
  process.kill();
});

test('a client that cannot read files leaves them unreadable', async () => {
  const { client, process } = await startBuilt(server, { folders: ['vscode-vfs://host/garden'] });
  await client.open(recipe, text);
  await client.until(() => lastCodes(client.published).includes('file-missing'));
  process.kill();
});

test('the client is not asked for a file outside the open folders', async () => {
  let asked = 0;
  const { client, process } = await startBuilt(server, {
    folders: ['vscode-vfs://host/garden'],
    answers: new Map([
      [
        'tidemark/readFile',
        () => {
          asked += 1;
          return shelf;
        },
      ],
    ]),
  });
  await client.open(recipe, text.replace('./shelf', '../shelf'));
  await client.until(() => lastCodes(client.published).includes('file-missing'));
  expect(asked).toBe(0);
  process.kill();
});

/** The codes that were pushed last; one that never comes where nothing was. */
function lastCodes(published: readonly { readonly diagnostics: readonly { readonly code?: unknown }[] }[]): unknown[] {
  const last = published.at(-1);
  return last === undefined ? ['nothing pushed'] : last.diagnostics.map(({ code }) => code);
}

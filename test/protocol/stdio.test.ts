import { mkdirSync, mkdtempSync, realpathSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterAll, beforeAll, expect, test } from 'vitest';
import {
  CancellationTokenSource,
  CodeActionRequest,
  CompletionRequest,
  CompletionResolveRequest,
  DidChangeWatchedFilesNotification,
  DocumentSymbolRequest,
  ExitNotification,
  HoverRequest,
  InlayHintRequest,
  LSPErrorCodes,
  ShutdownRequest,
} from 'vscode-languageserver/node';
import { makeRecipe } from '../bench/make-recipe.ts';
import { buildServer, startBuilt } from './built-server.ts';
import { behind, codesOf } from './client.ts';

let server: string;
let folder: string;

beforeAll(async () => {
  server = await buildServer();
  folder = realpathSync(mkdtempSync(join(tmpdir(), 'tidemark-recipes-')));
}, 60_000);

afterAll(() => {
  rmSync(dirname(server), { recursive: true });
  rmSync(folder, { recursive: true });
});

const text = `recipe: 1
waters:
  spring: { pH: 7.8, alkalinity: 140 mg/L CaCO3 }
feeds:
  leafy: { label: 2 mL/L, density: 1.1 kg/L, analysis: { N: 5 % } }
tools:
  syringe: { smallest: 0.5 mL, largest: 50 mL }
batches:
  first:
    water: spring
    volume: 20 L
    feed: { leafy: label }
`;

function uriOf(name: string): string {
  return pathToFileURL(join(folder, name)).href;
}

test('a recipe is opened, changed and asked about, and the server goes when it is told to', async () => {
  const { client, exited } = await startBuilt(server, {
    folders: [pathToFileURL(folder).href],
    capabilities: {
      textDocument: {
        completion: { completionItem: { snippetSupport: true } },
        documentSymbol: { hierarchicalDocumentSymbolSupport: true },
      },
    },
  });
  const { connection, initialized } = client;
  expect(initialized.serverInfo?.name).toBe('tidemark');
  expect(initialized.capabilities.textDocumentSync).toMatchObject({ change: 2 });
  const uri = uriOf('first.grow.yaml');
  const textDocument = { uri };
  await client.open(uri, text);
  expect(await client.pushed(uri)).not.toContain('name-unknown');

  const hover = await connection.sendRequest(HoverRequest.type, { textDocument, position: behind(text, 'leafy: la') });
  expect(JSON.stringify(hover?.contents)).toContain('40 mL');

  const whole = { start: { line: 0, character: 0 }, end: { line: 12, character: 0 } };
  const hints = await connection.sendRequest(InlayHintRequest.type, { textDocument, range: whole });
  expect(hints?.map(({ label }) => label)).toContain('2 mL/L = 40 mL');

  const symbols = await connection.sendRequest(DocumentSymbolRequest.type, { textDocument });
  expect(symbols?.map(({ name }) => name)).toEqual(['waters', 'feeds', 'tools', 'batches']);

  const spot = behind(text, 'water: ');
  await client.change(uri, [{ range: { start: spot, end: behind(text, 'water: spring') }, text: 'sprong' }]);
  expect(await client.pushed(uri)).toContain('name-unknown');

  const offered = await connection.sendRequest(CompletionRequest.type, { textDocument, position: spot });
  const items = Array.isArray(offered) ? offered : (offered?.items ?? []);
  expect(items.map(({ label }) => label)).toEqual(['spring']);
  const [item] = items;
  if (item === undefined) throw new Error('nothing is offered');
  expect(item.documentation).toBeUndefined();
  const resolved = await connection.sendRequest(CompletionResolveRequest.type, item);
  expect(JSON.stringify(resolved.documentation)).toContain('140 mg/L');

  const found = client.published.at(-1)?.diagnostics.find(({ code }) => code === 'name-unknown');
  if (found === undefined) throw new Error('the misspelt name is not found');
  const context = { diagnostics: [found], only: ['quickfix'] };
  const actions = await connection.sendRequest(CodeActionRequest.type, { textDocument, range: found.range, context });
  expect(actions?.map(({ title }) => title)).toEqual(['Change to `spring`', 'Add the water `sprong`']);

  await client.close(uri);
  await client.until(() => client.published.at(-1)?.diagnostics.length === 0);
  await connection.sendRequest(ShutdownRequest.type);
  await connection.sendNotification(ExitNotification.type);
  expect(await exited).toBe(0);
});

test('a request that is given up while the server is busy is not worked out', async () => {
  const { client, exited } = await startBuilt(server);
  const uri = uriOf('long.grow.yaml');
  await client.open(uri, makeRecipe(20_000));
  const source = new CancellationTokenSource();
  const position = { line: 10, character: 4 };
  const asked = client.connection.sendRequest(HoverRequest.type, { textDocument: { uri }, position }, source.token);
  source.cancel();
  await expect(asked).rejects.toMatchObject({ code: LSPErrorCodes.RequestCancelled });
  await client.connection.sendNotification(ExitNotification.type);
  await exited;
});

test('told to exit without a shutdown, or left by its client, it goes with an error code', async () => {
  const told = await startBuilt(server);
  await told.client.connection.sendNotification(ExitNotification.type);
  expect(await told.exited).toBe(1);
  const left = await startBuilt(server);
  left.process.stdin.end();
  expect(await left.exited).toBe(1);
});

test('a used file is read from the disk, when it changes, and when it is gone', async () => {
  mkdirSync(join(folder, 'shelf'));
  const shelf = join(folder, 'shelf', 'shelf.grow.yaml');
  writeFileSync(shelf, 'recipe: 1\nwaters: { rain: { pH: 6 } }\n');
  const { client, exited } = await startBuilt(server, {
    folders: [pathToFileURL(folder).href],
    capabilities: { workspace: { didChangeWatchedFiles: { dynamicRegistration: true } } },
  });
  await client.until(() => client.registered.includes('workspace/didChangeWatchedFiles'));
  const uri = uriOf('second.grow.yaml');
  const isFound = (code: string) => () => codesOf(client.published.at(-1)?.diagnostics ?? []).includes(code);
  await client.open(uri, 'recipe: 1\nuse: [./shelf/shelf.grow.yaml]\nbatches: { a: { water: rain, volume: 2 L } }\n');
  await client.until(() => client.published.length > 0);
  await client.until(() => !isFound('name-unknown')() && !isFound('file-missing')());

  const told = (type: 1 | 2 | 3) =>
    client.connection.sendNotification(DidChangeWatchedFilesNotification.type, {
      changes: [{ uri: pathToFileURL(shelf).href, type }],
    });
  writeFileSync(shelf, 'recipe: 1\nwaters: { drizzle: { pH: 6 } }\n');
  await told(2);
  await client.until(isFound('name-unknown'));
  rmSync(shelf);
  await told(3);
  await client.until(isFound('file-missing'));
  writeFileSync(shelf, 'recipe: 1\nwaters: { rain: { pH: 6 } }\n');
  await told(1);
  await client.until(() => !isFound('name-unknown')() && !isFound('file-missing')());
  await client.connection.sendNotification(ExitNotification.type);
  await exited;
});

test('a file outside the open folders is not read, however it is reached', async () => {
  const secret = mkdtempSync(join(tmpdir(), 'tidemark-outside-'));
  writeFileSync(join(secret, 'secret.grow.yaml'), 'recipe: 1\nwaters: { rain: { pH: 6 } }\n');
  symlinkSync(secret, join(folder, 'link'));
  const { client, exited } = await startBuilt(server, { folders: [pathToFileURL(folder).href] });
  for (const path of [`../${secret.split('/').at(-1)}/secret.grow.yaml`, './link/secret.grow.yaml']) {
    const uri = uriOf(`${path.length}.grow.yaml`);
    await client.open(uri, `recipe: 1\nuse: [${path}]\n`);
    await client.until(() =>
      codesOf(client.published.filter(one => one.uri === uri).at(-1)?.diagnostics ?? []).includes('file-missing'),
    );
    const [finding] = client.published.filter(one => one.uri === uri).at(-1)?.diagnostics ?? [];
    expect(finding?.message).toMatch(/outside/);
  }
  await client.connection.sendNotification(ExitNotification.type);
  await exited;
  rmSync(secret, { recursive: true });
});

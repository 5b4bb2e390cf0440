import { afterEach, expect, test, vi } from 'vitest';
import { DocumentDiagnosticRequest, WorkspaceDiagnosticRequest } from 'vscode-languageserver/node';
import * as located from '../../server/workspace/located.ts';
import { codesOf } from './client.ts';
import { startInProcess } from './in-process.ts';

const uri = 'file:///shelf/first.grow.yaml';
const textDocument = { uri };
const text = `recipe: 1
batches:
  first: { water: sprong, volume: 20 L }
`;
const top = { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } };
const pulling = { textDocument: { diagnostic: {} } };
const itsOwn = expect.objectContaining({ message: expect.stringContaining('a fault in Tidemark') });

afterEach(() => {
  vi.restoreAllMocks();
});

/** From here on nothing can be found, as if one of our checks had a fault. */
function breakChecks(): void {
  vi.spyOn(located, 'locate').mockImplementation(() => {
    throw new Error('a fault of ours');
  });
}

test('findings that cannot be worked out are taken back, and it is said why', async () => {
  const client = await startInProcess();
  await client.open(uri, text);
  expect(await client.pushed(uri)).toContain('name-unknown');
  breakChecks();
  await client.change(uri, [{ range: top, text: '# typed\n' }]);
  await client.pushed(uri);
  expect(client.published.at(-1)?.diagnostics).toEqual([itsOwn]);
  vi.restoreAllMocks();
  await client.change(uri, [{ range: top, text: '# and on\n' }]);
  expect(await client.pushed(uri)).toContain('name-unknown');
});

test('a client that asks is told so too, of one file and of all', async () => {
  const { connection, open } = await startInProcess({ capabilities: pulling });
  await open(uri, text);
  const before = await connection.sendRequest(DocumentDiagnosticRequest.type, { textDocument });
  expect(before.kind === 'full' && codesOf(before.items)).toContain('name-unknown');
  breakChecks();
  await connection.sendNotification('textDocument/didChange', {
    textDocument: { uri, version: 2 },
    contentChanges: [{ range: top, text: '# typed\n' }],
  });
  expect(await connection.sendRequest(DocumentDiagnosticRequest.type, { textDocument })).toMatchObject({
    kind: 'full',
    items: [itsOwn],
  });
  const all = await connection.sendRequest(WorkspaceDiagnosticRequest.type, { previousResultIds: [] });
  expect(all.items).toEqual([expect.objectContaining({ uri, items: [itsOwn] })]);
});

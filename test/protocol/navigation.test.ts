import { expect, test } from 'vitest';
import {
  CodeActionRequest,
  CodeLensRequest,
  DefinitionRequest,
  DidChangeWatchedFilesNotification,
  DocumentFormattingRequest,
  DocumentHighlightRequest,
  DocumentLinkRequest,
  DocumentRangeFormattingRequest,
  FoldingRangeRequest,
  PrepareRenameRequest,
  ReferencesRequest,
  RenameRequest,
  SelectionRangeRequest,
  SemanticTokensDeltaRequest,
  SemanticTokensRangeRequest,
  SemanticTokensRequest,
  WillRenameFilesRequest,
  WorkDoneProgress,
  type WorkDoneProgressBegin,
  type WorkDoneProgressEnd,
  type WorkDoneProgressReport,
  WorkspaceDiagnosticRequest,
  WorkspaceSymbolRequest,
} from 'vscode-languageserver/node';
import { listFilesRequest } from '../../server/protocol/requests.ts';
import { behind, codesOf } from './client.ts';
import { startInProcess } from './in-process.ts';

const root = 'file:///shelf';
const uri = `${root}/first.grow.yaml`;
const shelf = `${root}/shelf.grow.yaml`;
const other = `${root}/other.grow.yaml`;
const textDocument = { uri };
const text = `recipe: 1
use: [./shelf.grow.yaml]
batches:
  first:
    volume:  20 L
    feed: { moss: label }
`;
const shelfText = 'recipe: 1\nfeeds:\n  moss: { label: 2 mL/L }\n';
const otherText = 'recipe: 1\nuse: [./shelf.grow.yaml]\nbatches: { tub: { volume: 2 L, feed: { moss: label } } }\n';
const onMoss = behind(text, 'feed: { mo');

function disk(): Map<string, string> {
  return new Map([
    [uri, text],
    [shelf, shelfText],
    [other, otherText],
  ]);
}

const pulling = { textDocument: { diagnostic: {} } };

test('a definition is a place, and for clients that can show it where one came from too', async () => {
  const plain = await startInProcess({ disk: disk() });
  await plain.open(uri, text);
  await plain.pushed(uri);
  const asked = { textDocument, position: onMoss };
  const range = { start: { line: 2, character: 2 }, end: { line: 2, character: 6 } };
  expect(await plain.connection.sendRequest(DefinitionRequest.type, asked)).toEqual({ uri: shelf, range });
  const linked = await startInProcess({
    disk: disk(),
    capabilities: { textDocument: { definition: { linkSupport: true } } },
  });
  await linked.open(uri, text);
  await linked.pushed(uri);
  expect(await linked.connection.sendRequest(DefinitionRequest.type, asked)).toEqual([
    {
      originSelectionRange: { start: { line: 5, character: 12 }, end: { line: 5, character: 16 } },
      targetUri: shelf,
      targetRange: { start: { line: 2, character: 2 }, end: { line: 2, character: 25 } },
      targetSelectionRange: range,
    },
  ]);
});

test('references and renaming reach recipes that nobody has opened', async () => {
  const client = await startInProcess({ disk: disk(), lists: true, folders: [root] });
  await client.open(uri, text);
  const found = await client.connection.sendRequest(ReferencesRequest.type, {
    textDocument,
    position: onMoss,
    context: { includeDeclaration: false },
  });
  expect(found?.map(one => one.uri).sort()).toEqual([uri, other]);
  const renamed = await client.connection.sendRequest(RenameRequest.type, {
    textDocument,
    position: onMoss,
    newName: 'fern',
  });
  expect(Object.keys(renamed?.changes ?? {}).sort()).toEqual([uri, other, shelf]);
});

test('edits of several files say which version of an open one they are for', async () => {
  const client = await startInProcess({
    disk: disk(),
    lists: true,
    folders: [root],
    capabilities: { workspace: { workspaceEdit: { documentChanges: true } } },
  });
  await client.open(uri, text);
  const renamed = await client.connection.sendRequest(RenameRequest.type, {
    textDocument,
    position: onMoss,
    newName: 'fern',
  });
  const versions = (renamed?.documentChanges ?? []).map(change =>
    'textDocument' in change ? [change.textDocument.uri, change.textDocument.version] : [],
  );
  expect(Object.fromEntries(versions)).toEqual({ [uri]: 1, [shelf]: null, [other]: null });
});

test('what cannot be renamed is refused with a reason, before and after the new name is known', async () => {
  const client = await startInProcess({
    disk: disk(),
    capabilities: { textDocument: { rename: { prepareSupport: true } } },
  });
  expect(client.initialized.capabilities.renameProvider).toEqual({ prepareProvider: true });
  await client.open(uri, text);
  await client.pushed(uri);
  const position = behind(text, 'vol');
  await expect(client.connection.sendRequest(PrepareRenameRequest.type, { textDocument, position })).rejects.toThrow(
    'Only the names of entries',
  );
  await expect(
    client.connection.sendRequest(RenameRequest.type, { textDocument, position: onMoss, newName: 'No' }),
  ).rejects.toThrow('cannot be a name');
  expect(
    await client.connection.sendRequest(PrepareRenameRequest.type, { textDocument, position: onMoss }),
  ).toMatchObject({ placeholder: 'moss' });
});

test('a client that does not ask beforehand is told that names can be changed, no more', async () => {
  const client = await startInProcess();
  expect(client.initialized.capabilities.renameProvider).toBe(true);
});

test('marks, links, folds and selections', async () => {
  const { connection, open } = await startInProcess({ disk: disk() });
  await open(uri, text);
  const marked = await connection.sendRequest(DocumentHighlightRequest.type, {
    textDocument,
    position: behind(text, '  first'),
  });
  expect(marked).toEqual([{ range: { start: { line: 3, character: 2 }, end: { line: 3, character: 7 } }, kind: 3 }]);
  expect(await connection.sendRequest(DocumentLinkRequest.type, { textDocument })).toMatchObject([{ target: shelf }]);
  expect(await connection.sendRequest(FoldingRangeRequest.type, { textDocument })).toEqual([
    { startLine: 2, endLine: 5 },
    { startLine: 3, endLine: 5 },
  ]);
  const [grown] =
    (await connection.sendRequest(SelectionRangeRequest.type, { textDocument, positions: [onMoss] })) ?? [];
  expect(grown?.range.start).toEqual({ line: 5, character: 12 });
  expect(grown?.parent?.range.end).toEqual({ line: 5, character: 23 });
});

test('entries of all recipes are found, opened or not', async () => {
  const client = await startInProcess({ disk: disk(), lists: true, folders: [root] });
  const found = await client.connection.sendRequest(WorkspaceSymbolRequest.type, { query: 'mo' });
  expect(found).toMatchObject([{ name: 'moss', containerName: 'feeds · shelf.grow.yaml', location: { uri: shelf } }]);
});

test('words are told whole, as changes and in part', async () => {
  const { connection, open, change, initialized } = await startInProcess();
  const legend = initialized.capabilities.semanticTokensProvider?.legend;
  await open(uri, text);
  const whole = await connection.sendRequest(SemanticTokensRequest.type, { textDocument });
  const named = (data: readonly number[]) =>
    Array.from({ length: data.length / 5 }, (_, at) => legend?.tokenTypes[data[at * 5 + 3] ?? -1]);
  expect(named(whole?.data ?? []).slice(-4)).toEqual(['unit', 'property', 'variable', 'enumMember']);
  const spot = behind(text, 'volume:  2');
  await change(uri, [{ range: { start: spot, end: spot }, text: '5' }]);
  const delta = await connection.sendRequest(SemanticTokensDeltaRequest.type, {
    textDocument,
    previousResultId: whole?.resultId ?? '',
  });
  if (delta === null || !('edits' in delta)) throw new Error('a known result has a difference');
  expect(delta.edits.reduce((sum, edit) => sum + (edit.data?.length ?? 0), 0)).toBeLessThan(10);
  const part = await connection.sendRequest(SemanticTokensRangeRequest.type, {
    textDocument,
    range: { start: { line: 0, character: 0 }, end: { line: 0, character: 3 } },
  });
  expect(named(part?.data ?? [])).toEqual(['property', 'number']);
});

test('formatting is the whole file or some lines, and nothing in broken text', async () => {
  const { connection, open, change } = await startInProcess();
  await open(uri, text);
  const options = { tabSize: 4, insertSpaces: true };
  const line = (number: number) => ({ start: { line: number, character: 0 }, end: { line: number, character: 1 } });
  const edits = await connection.sendRequest(DocumentFormattingRequest.type, { textDocument, options });
  const gap = { range: { start: { line: 4, character: 11 }, end: { line: 4, character: 13 } }, newText: ' ' };
  expect(edits).toContainEqual(gap);
  const inLine = (range: ReturnType<typeof line>) =>
    connection.sendRequest(DocumentRangeFormattingRequest.type, { textDocument, options, range });
  expect(await inLine(line(4))).toEqual([gap]);
  expect(await inLine(line(5))).toEqual([]);
  await change(uri, [{ range: { start: onMoss, end: onMoss }, text: '{[' }]);
  expect(await connection.sendRequest(DocumentFormattingRequest.type, { textDocument, options })).toBeNull();
});

test('lenses are offered for commands that the client has, and can be switched off', async () => {
  const none = await startInProcess();
  await none.open(uri, text);
  expect(await none.connection.sendRequest(CodeLensRequest.type, { textDocument })).toEqual([]);
  const options = { commands: ['tidemark.recordReading', 'tidemark.showBenchSheet'] };
  const some = await startInProcess({ initializationOptions: options });
  await some.open(uri, text);
  expect(await some.connection.sendRequest(CodeLensRequest.type, { textDocument })).toMatchObject([
    { command: { command: 'tidemark.showBenchSheet', arguments: [{ batch: 'first' }] } },
    { command: { command: 'tidemark.recordReading', arguments: [{ batch: 'first' }] } },
  ]);
  await some.setSettings({ lenses: false });
  expect(await some.connection.sendRequest(CodeLensRequest.type, { textDocument })).toEqual([]);
});

test('a name that an action makes up is asked for, where the client can ask', async () => {
  const inline = 'recipe: 1\nbatches:\n  é: { water: { pH: 7 }, volume: 2 L }\n';
  const actionsOf = async (commands: readonly string[]) => {
    const client = await startInProcess({ initializationOptions: { commands } });
    await client.open(uri, inline);
    const start = behind(inline, 'water: {');
    const asked = { textDocument, range: { start, end: start }, context: { diagnostics: [] } };
    const found = (await client.connection.sendRequest(CodeActionRequest.type, asked)) ?? [];
    return found.flatMap(one => ('edit' in one && one.title.startsWith('Move this') ? [one.command ?? null] : []));
  };
  expect(await actionsOf([])).toEqual([null]);
  const position = { line: 2, character: '  é: { water: '.length };
  expect(await actionsOf(['tidemark.renameAt'])).toMatchObject([{ arguments: [uri, position] }]);
});

test('comparing with a commit is offered only where there can be one', async () => {
  const client = await startInProcess({ initializationOptions: { commands: ['tidemark.compareWithCommit'] } });
  await client.open(uri, text);
  expect(await client.connection.sendRequest(CodeLensRequest.type, { textDocument })).toHaveLength(1);
  const unsaved = 'untitled:first.grow.yaml';
  await client.open(unsaved, text);
  const asked = { textDocument: { uri: unsaved } };
  expect(await client.connection.sendRequest(CodeLensRequest.type, asked)).toEqual([]);
});

test('findings of all recipes are pulled at once, and then only what is new', async () => {
  const files = disk();
  files.set(other, otherText.replace('moss: label', 'mos: label'));
  const client = await startInProcess({ disk: files, lists: true, folders: [root], capabilities: pulling });
  expect(client.initialized.capabilities.diagnosticProvider).toMatchObject({ workspaceDiagnostics: true });
  const pull = async (previous: readonly { uri: string; value: string }[]) => {
    const { items } = await client.connection.sendRequest(WorkspaceDiagnosticRequest.type, {
      previousResultIds: [...previous],
    });
    return items;
  };
  const first = await pull([]);
  expect(first.map(item => item.uri).sort()).toEqual([uri, other, shelf]);
  const found = first.find(item => item.uri === other);
  expect(found?.kind === 'full' && codesOf(found.items)).toContain('name-unknown');
  const known = first.map(item => ({ uri: item.uri, value: item.resultId ?? '' }));
  expect((await pull(known)).map(item => item.kind)).toEqual(['unchanged', 'unchanged', 'unchanged']);
  // A used file changes on the disk: those that use it are looked at again.
  files.set(shelf, shelfText.replace('moss', 'mos'));
  await client.connection.sendNotification(DidChangeWatchedFilesNotification.type, {
    changes: [{ uri: shelf, type: 2 }],
  });
  const second = await pull(known);
  const kinds = Object.fromEntries(second.map(item => [item.uri, item.kind]));
  expect(kinds).toEqual({ [uri]: 'full', [other]: 'full', [shelf]: 'full' });
  const mended = second.find(item => item.uri === other);
  expect(mended?.kind === 'full' && codesOf(mended.items)).not.toContain('name-unknown');
  // One that is gone has no findings any more, and a new one is found.
  files.delete(other);
  const late = `${root}/late.grow.yaml`;
  files.set(late, 'recipe: 1\n');
  await client.connection.sendNotification(DidChangeWatchedFilesNotification.type, {
    changes: [
      { uri: other, type: 3 },
      { uri: late, type: 1 },
    ],
  });
  const third = await pull(second.map(item => ({ uri: item.uri, value: item.resultId ?? '' })));
  expect(third.find(item => item.uri === other)).toMatchObject({ kind: 'full', items: [] });
  expect(third.map(item => item.uri)).toContain(late);
});

test('how far the look at all recipes is can be followed', async () => {
  const client = await startInProcess({ disk: disk(), lists: true, folders: [root], capabilities: pulling });
  const told: (WorkDoneProgressBegin | WorkDoneProgressReport | WorkDoneProgressEnd)[] = [];
  client.connection.onProgress(WorkDoneProgress.type, 'look', value => {
    told.push(value);
  });
  const params = { previousResultIds: [], workDoneToken: 'look' };
  await client.connection.sendRequest(WorkspaceDiagnosticRequest.type, params);
  expect(told.map(({ kind }) => kind)).toEqual(['begin', 'report', 'report', 'report', 'end']);
  expect(told[3]).toMatchObject({ percentage: 100 });
});

test('a file that is closed says again what the disk holds', async () => {
  const client = await startInProcess({ disk: disk(), lists: true, folders: [root] });
  await client.open(other, otherText.replaceAll('tub', 'vat'));
  const found = () => client.connection.sendRequest(WorkspaceSymbolRequest.type, { query: 'vat' });
  expect(await found()).toHaveLength(1);
  await client.close(other);
  expect(await found()).toHaveLength(0);
  const read = () => client.connection.sendRequest(WorkspaceSymbolRequest.type, { query: 'tub' });
  expect(await read()).toHaveLength(1);
});

test('the client says which recipes its user wants to see, and is asked again when settings change', async () => {
  let uris = [shelf];
  const client = await startInProcess({
    disk: disk(),
    folders: [root],
    initializationOptions: { listsFiles: true },
    answers: new Map([[listFilesRequest, () => ({ uris })]]),
  });
  const named = async () => {
    const found = await client.connection.sendRequest(WorkspaceSymbolRequest.type, { query: '' });
    return found?.map(({ name }) => name);
  };
  expect(await named()).toEqual(['moss']);
  uris = [];
  await client.setSettings({});
  expect(await named()).toEqual([]);
});

test('renaming a used file changes `use` in the files that use it', async () => {
  const client = await startInProcess({ disk: disk(), lists: true, folders: [root] });
  const edit = await client.connection.sendRequest(WillRenameFilesRequest.type, {
    files: [{ oldUri: shelf, newUri: `${root}/bench.grow.yaml` }],
  });
  expect(Object.keys(edit?.changes ?? {}).sort()).toEqual([uri, other]);
  expect(edit?.changes?.[other]).toEqual([
    {
      range: { start: { line: 1, character: 6 }, end: { line: 1, character: 23 } },
      newText: './bench.grow.yaml',
    },
  ]);
});

test('each folder has its own settings', async () => {
  const far = 'file:///far';
  const client = await startInProcess({
    folders: [root, far],
    capabilities: { workspace: { configuration: true } },
    initializationOptions: { commands: ['tidemark.compareWithCommit'] },
    settingsOf: scope => (scope === far ? { lenses: false } : {}),
  });
  const inFar = `${far}/first.grow.yaml`;
  await client.open(uri, text);
  await client.open(inFar, text);
  const offered = (one: string) =>
    client.connection.sendRequest(CodeLensRequest.type, { textDocument: { uri: one } }).then(found => found?.length);
  await client.until(() => client.asked() > 0);
  expect(await offered(uri)).toBe(1);
  expect(await offered(inFar)).toBe(0);
});

test('a question about a place that is not there ends nothing', async () => {
  const client = await startInProcess({ disk: disk() });
  await client.open(uri, text);
  const position = { line: 999, character: 999 };
  expect(await client.connection.sendRequest(DefinitionRequest.type, { textDocument, position })).toBeNull();
  const nowhere = { textDocument: { uri: 'file:///nowhere.grow.yaml' }, position };
  expect(await client.connection.sendRequest(DefinitionRequest.type, nowhere)).toBeNull();
  expect(await client.connection.sendRequest(RenameRequest.type, { ...nowhere, newName: 'fern' })).toBeNull();
  expect(await client.connection.sendRequest(SemanticTokensRequest.type, nowhere)).toEqual({ data: [] });
  expect(await client.connection.sendRequest(DocumentLinkRequest.type, { textDocument })).toHaveLength(1);
});

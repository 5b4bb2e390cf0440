import { expect, test, vi } from 'vitest';
import {
  CodeActionRequest,
  CompletionRequest,
  DidChangeWatchedFilesNotification,
  type DocumentDiagnosticReport,
  DocumentDiagnosticRequest,
  DocumentSymbolRequest,
  FileChangeType,
  HoverRequest,
  InlayHintRequest,
  InlayHintResolveRequest,
} from 'vscode-languageserver/node';
import * as hovers from '../../server/answers/hover/hover.ts';
import * as snapshots from '../../server/workspace/snapshot.ts';
import { behind, codesOf } from './client.ts';
import { startInProcess } from './in-process.ts';

const uri = 'file:///shelf/first.grow.yaml';
const textDocument = { uri };
const text = `recipe: 1
waters: { spring: { pH: 7.8 } }
feeds: { leafy: { label: 2 mL/L } }
batches:
  first:
    water: sprong
    volume: 20 L
    feed: { leafy: label }
`;
const whole = { start: { line: 0, character: 0 }, end: { line: 99, character: 0 } };
const pulling = { textDocument: { diagnostic: {} } };

test('a client that only listens is told the findings, and told when they are gone', async () => {
  const client = await startInProcess();
  expect(client.initialized.capabilities.diagnosticProvider).toBeUndefined();
  await client.open(uri, text);
  expect(await client.pushed(uri)).toContain('name-unknown');
  await client.close(uri);
  await client.until(() => client.published.at(-1)?.diagnostics.length === 0);
});

test('a client that only listens is told of recipes that nobody has open, and of those that use a changed one', async () => {
  const shelf = 'file:///shelf/shelf.grow.yaml';
  const other = 'file:///shelf/other.grow.yaml';
  const disk = new Map([
    [shelf, 'recipe: 1\nwaters: { rain: { pH: 6 } }\n'],
    [other, 'recipe: 1\nuse: [./shelf.grow.yaml]\nbatches: { a: { water: rain, volume: 2 L, feeed: {} } }\n'],
    [uri, text],
  ]);
  const client = await startInProcess({ disk, lists: true, folders: ['file:///shelf'] });
  const codes = (of: string) => codesOf(client.published.filter(one => one.uri === of).at(-1)?.diagnostics ?? []);
  await client.until(() => codes(other).includes('key-unknown') && codes(uri).includes('name-unknown'));
  // Nothing is wrong with the shelf, so that nothing is said of it.
  expect(client.published.some(one => one.uri === shelf)).toBe(false);
  await client.open(shelf, 'recipe: 1\nwaters: { drizzle: { pH: 6 } }\n');
  await client.until(() => codes(other).includes('name-unknown'));
  await client.close(shelf);
  await client.until(() => !codes(other).includes('name-unknown'));
  // Mended on disk, it is taken back; closed in the editor, what the disk holds is told.
  disk.set(other, 'recipe: 1\n');
  await client.connection.sendNotification(DidChangeWatchedFilesNotification.type, {
    changes: [{ uri: other, type: FileChangeType.Changed }],
  });
  await client.until(() => codes(other).length === 0);
  await client.open(uri, 'recipe: 1\n');
  await client.until(() => codes(uri).length === 0);
  await client.close(uri);
  await client.until(() => codes(uri).includes('name-unknown'));
});

test('a client that pulls is not pushed to, and hears when nothing has changed', async () => {
  const client = await startInProcess({ capabilities: pulling });
  await client.open(uri, text);
  const pull = (previousResultId?: string): Promise<DocumentDiagnosticReport> =>
    client.connection.sendRequest(DocumentDiagnosticRequest.type, {
      textDocument,
      ...(previousResultId === undefined ? {} : { previousResultId }),
    });
  const first = await pull();
  if (first.kind !== 'full') throw new Error('a first answer is a full one');
  expect(codesOf(first.items)).toContain('name-unknown');
  expect(await pull(first.resultId)).toEqual({ kind: 'unchanged', resultId: first.resultId });
  await client.change(uri, [{ range: { start: behind(text, 'spr'), end: behind(text, 'spro') }, text: 'i' }]);
  const second = await pull(first.resultId);
  if (second.kind !== 'full') throw new Error('a changed file has a full answer');
  expect(codesOf(second.items)).not.toContain('name-unknown');
  expect(second.resultId).not.toBe(first.resultId);
  expect(client.published).toEqual([]);
});

test('positions count in the units that the client understands first', async () => {
  const odd = `recipe: 1\nwaters: { "😀é": { pH: 7 } }\nbatches: { a: { water: nö, volume: 20 L } } # 😀\n`;
  const ends = { 'utf-8': 26, 'utf-16': 25, 'utf-32': 25 };
  const names = { 'utf-8': [10, 18], 'utf-16': [10, 15], 'utf-32': [10, 14] };
  for (const encoding of ['utf-8', 'utf-16', 'utf-32'] as const) {
    const client = await startInProcess({ capabilities: { general: { positionEncodings: [encoding] } } });
    expect(client.initialized.capabilities.positionEncoding).toBe(encoding);
    await client.open(uri, odd);
    await client.pushed(uri);
    const found = client.published.at(-1)?.diagnostics ?? [];
    const unknown = found.find(({ code }) => code === 'name-unknown');
    expect(unknown?.range.start).toEqual({ line: 2, character: 23 });
    expect(unknown?.range.end.character).toBe(ends[encoding]);
    const invalid = found.find(({ code }) => code === 'name-invalid');
    expect([invalid?.range.start.character, invalid?.range.end.character]).toEqual(names[encoding]);
  }
});

test('a client that names no encoding counts in UTF-16', async () => {
  const client = await startInProcess();
  expect(client.initialized.capabilities.positionEncoding).toBe('utf-16');
});

test('changes count one after the other, in lines that end in CRLF too', async () => {
  const client = await startInProcess({ capabilities: pulling });
  const crlf = text.replaceAll('\n', '\r\n');
  await client.open(uri, crlf);
  const spot = behind(text, 'water: ');
  await client.change(uri, [
    { range: { start: spot, end: behind(text, 'sprong') }, text: 'no' },
    { range: { start: spot, end: { ...spot, character: spot.character + 2 } }, text: 'spring' },
    { range: { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } }, text: '# 😀\r\n' },
  ]);
  const report = await client.connection.sendRequest(DocumentDiagnosticRequest.type, { textDocument });
  expect(report.kind === 'full' && codesOf(report.items)).not.toContain('name-unknown');
  const position = { line: 8, character: behind(text, 'feed: { le').character };
  const hover = await client.connection.sendRequest(HoverRequest.type, { textDocument, position });
  expect(JSON.stringify(hover?.contents)).toContain('40 mL');
});

test('a whole text in place of changes is taken too', async () => {
  const client = await startInProcess();
  await client.open(uri, text);
  await client.change(uri, [{ text: text.replace('sprong', 'spring') }]);
  expect(await client.pushed(uri)).not.toContain('name-unknown');
});

test('of a burst of changes only the last is worked out and told', async () => {
  const taken = vi.spyOn(snapshots, 'takeSnapshot');
  const client = await startInProcess();
  await client.open(uri, text);
  await client.pushed(uri);
  const before = client.published.length;
  taken.mockClear();
  const spot = behind(text, 'volume: ');
  const typed = Array.from('111111111111');
  await Promise.all(typed.map(letter => client.change(uri, [{ range: { start: spot, end: spot }, text: letter }])));
  await client.pushed(uri);
  expect(client.published.length - before).toBeLessThan(typed.length / 2);
  expect(client.published.at(-1)?.version).toBe(typed.length + 1);
  expect(taken.mock.calls.length).toBe(client.published.length - before);
  taken.mockRestore();
});

test('a fault in an answer is an empty answer, and the server goes on', async () => {
  const fault = vi.spyOn(hovers, 'hover').mockImplementationOnce(() => {
    throw new Error('a fault of ours');
  });
  const client = await startInProcess();
  await client.open(uri, text);
  const asked = { textDocument, position: behind(text, 'feed: { le') };
  expect(await client.connection.sendRequest(HoverRequest.type, asked)).toBeNull();
  expect(JSON.stringify(await client.connection.sendRequest(HoverRequest.type, asked))).toContain('40 mL');
  fault.mockRestore();
});

test('questions about a file that is not open have empty answers', async () => {
  const client = await startInProcess({ capabilities: pulling });
  const { connection } = client;
  const position = { line: 0, character: 0 };
  expect(await connection.sendRequest(HoverRequest.type, { textDocument, position })).toBeNull();
  expect(await connection.sendRequest(CompletionRequest.type, { textDocument, position })).toBeNull();
  expect(await connection.sendRequest(InlayHintRequest.type, { textDocument, range: whole })).toEqual([]);
  expect(await connection.sendRequest(DocumentSymbolRequest.type, { textDocument })).toEqual([]);
  expect(
    await connection.sendRequest(CodeActionRequest.type, { textDocument, range: whole, context: { diagnostics: [] } }),
  ).toEqual([]);
  const report = await connection.sendRequest(DocumentDiagnosticRequest.type, { textDocument });
  expect(report).toEqual({ kind: 'full', items: [] });
});

test('messages that make no sense end nothing', async () => {
  const client = await startInProcess({ capabilities: pulling });
  const { connection } = client;
  const odd = { line: -5, character: Number.NaN };
  const senseless = [
    {},
    { textDocument: { uri: 5 } },
    { textDocument, position: odd, range: { start: odd, end: odd } },
  ];
  const asked = [
    'hover',
    'completion',
    'codeAction',
    'definition',
    'references',
    'inlayHint',
    'foldingRange',
    'codeLens',
  ];
  for (const params of senseless) {
    for (const about of asked) {
      const answer = await connection.sendRequest(`textDocument/${about}`, params);
      expect(answer === null || (Array.isArray(answer) && answer.length === 0)).toBe(true);
    }
    for (const what of ['didOpen', 'didChange', 'didClose'])
      await connection.sendNotification(`textDocument/${what}`, params);
  }
  await client.open(uri, text);
  const hover = await connection.sendRequest(HoverRequest.type, { textDocument, position: behind(text, 'feed: { le') });
  expect(JSON.stringify(hover?.contents)).toContain('40 mL');
});

test('places far outside the text have answers too', async () => {
  const client = await startInProcess();
  await client.open(uri, text);
  const position = { line: 9999, character: 9999 };
  const answer = await client.connection.sendRequest(HoverRequest.type, { textDocument, position });
  expect(answer === null || 'contents' in answer).toBe(true);
});

test('settings are asked for, obeyed, and obeyed again when they change', async () => {
  const client = await startInProcess({
    capabilities: { workspace: { configuration: true, didChangeConfiguration: { dynamicRegistration: true } } },
    settings: { hints: { doses: false } },
  });
  await client.until(() => client.registered.includes('workspace/didChangeConfiguration'));
  await client.open(uri, text);
  const hints = async () =>
    (await client.connection.sendRequest(InlayHintRequest.type, { textDocument, range: whole })) ?? [];
  await vi.waitFor(async () => expect(await hints()).toEqual([]));
  await client.setSettings({ hints: { doses: true } });
  await vi.waitFor(async () => expect(await hints()).toHaveLength(1));
});

test('a client that cannot be asked sends its settings', async () => {
  const client = await startInProcess({ initializationOptions: { settings: { hints: { doses: false } } } });
  expect(client.registered).toEqual([]);
  await client.open(uri, text);
  const hints = async () =>
    (await client.connection.sendRequest(InlayHintRequest.type, { textDocument, range: whole })) ?? [];
  expect(await hints()).toEqual([]);
  await client.setSettings({ hints: { doses: true } });
  expect(await hints()).toHaveLength(1);
});

test('the tooltip of a hint comes when it is asked for, where the client can ask', async () => {
  const client = await startInProcess({
    capabilities: { textDocument: { inlayHint: { resolveSupport: { properties: ['tooltip'] } } } },
  });
  await client.open(uri, text);
  const [hint] = (await client.connection.sendRequest(InlayHintRequest.type, { textDocument, range: whole })) ?? [];
  if (hint === undefined) throw new Error('there is no hint');
  expect(hint.tooltip).toBeUndefined();
  const resolved = await client.connection.sendRequest(InlayHintResolveRequest.type, hint);
  expect(JSON.stringify(resolved.tooltip)).toContain('40 mL');
});

test('beside a YAML extension a file of its language gets only what that cannot know', async () => {
  const wrong = `${text}    volumee: 3 L\n  bare: { unclosed\n`;
  const client = await startInProcess({ initializationOptions: { settings: { yamlIntegration: 'semanticOnly' } } });
  await client.open(uri, wrong, 'yaml');
  const codes = await client.pushed(uri);
  expect(codes).toContain('name-unknown');
  expect(codes).not.toContain('key-unknown');
  expect(codes).not.toContain('yaml-invalid');
  const asked = { textDocument, position: { line: 0, character: 2 } };
  const offered = await client.connection.sendRequest(CompletionRequest.type, asked);
  expect(Array.isArray(offered) ? offered : offered?.items).toEqual([]);
  const hover = (part: string) =>
    client.connection.sendRequest(HoverRequest.type, { textDocument, position: behind(wrong, part) });
  expect(await hover('reci')).toBeNull();
  expect(await hover('volumee')).toBeNull();
  expect(JSON.stringify(await hover('feed: { le'))).toContain('40 mL');

  const own = 'file:///shelf/own.grow.yaml';
  await client.open(own, wrong);
  expect(await client.pushed(own)).toEqual(expect.arrayContaining(['key-unknown', 'yaml-invalid']));
  const key = { textDocument: { uri: own }, position: behind(wrong, 'reci') };
  expect(await client.connection.sendRequest(HoverRequest.type, key)).not.toBeNull();
});

test('a change in a used file is told to those that use it', async () => {
  const shelf = 'file:///shelf/shelf.grow.yaml';
  const user = 'recipe: 1\nuse: [./shelf.grow.yaml]\nbatches: { a: { water: rain, volume: 2 L } }\n';
  const disk = new Map([[shelf, 'recipe: 1\nwaters: { rain: { pH: 6 } }\n']]);
  const reads: string[] = [];
  const client = await startInProcess({ disk, onRead: read => reads.push(read) });
  await client.open(uri, user);
  const codes = () => codesOf(client.published.filter(one => one.uri === uri).at(-1)?.diagnostics ?? []);
  await client.until(() => client.published.length > 0 && !codes().includes('name-unknown'));
  expect(reads).toEqual([shelf]);
  // What an editor holds open counts, whatever the disk says; closed again, the disk counts.
  await client.open(shelf, 'recipe: 1\nwaters: { drizzle: { pH: 6 } }\n');
  await client.until(() => codes().includes('name-unknown'));
  await client.close(shelf);
  await client.until(() => !codes().includes('name-unknown'));
});

test('a client that pulls is asked to pull again when a used file changes', async () => {
  const shelf = 'file:///shelf/shelf.grow.yaml';
  const client = await startInProcess({
    capabilities: { ...pulling, workspace: { diagnostics: { refreshSupport: true } } },
    disk: new Map([[shelf, 'recipe: 1\nwaters: { rain: { pH: 6 } }\n']]),
  });
  await client.open(uri, 'recipe: 1\nuse: [./shelf.grow.yaml]\n');
  await client.open(shelf, 'recipe: 1\nwaters: { rain: { pH: 6 } }\n');
  const before = client.refreshes();
  await client.change(shelf, [{ text: 'recipe: 1\nwaters: { rain: { pH: 5 } }\n' }]);
  await client.until(() => client.refreshes() > before);
});

test('a client that pulls is asked to pull again when a used file has been read after the answer', async () => {
  const shelf = 'file:///shelf/shelf.grow.yaml';
  const client = await startInProcess({
    capabilities: { ...pulling, workspace: { diagnostics: { refreshSupport: true } } },
    disk: new Map([[shelf, 'recipe: 1\n']]),
  });
  await client.open(uri, 'recipe: 1\nuse: [./shelf.grow.yaml]\n');
  await client.until(() => client.refreshes() > 0);
});

test('further lines of a snippet are indented by the editor, or by us where it cannot', async () => {
  const section = 'recipe: 1\nbatches:\n  ';
  const offered = async (modes: readonly (1 | 2)[]) => {
    const client = await startInProcess({
      capabilities: {
        textDocument: {
          completion: { completionItem: { snippetSupport: true, insertTextModeSupport: { valueSet: [...modes] } } },
        },
      },
    });
    await client.open(uri, section);
    const position = { line: 2, character: 2 };
    const all = await client.connection.sendRequest(CompletionRequest.type, { textDocument, position });
    const [item] = Array.isArray(all) ? all : (all?.items ?? []);
    return item?.textEdit?.newText.split('\n')[1]?.search(/\S/);
  };
  expect(await offered([1, 2])).toBe(2);
  expect(await offered([])).toBe(4);
});

test('a client without snippets is offered plain text', async () => {
  const client = await startInProcess();
  await client.open(uri, 'recipe: 1\nbatches:\n  first: { $ }\n'.replace('$', ''));
  const position = { line: 2, character: 11 };
  const all = await client.connection.sendRequest(CompletionRequest.type, { textDocument, position });
  const items = Array.isArray(all) ? all : (all?.items ?? []);
  expect(items.find(({ label }) => label === 'volume')?.textEdit?.newText).toBe('volume: ');
});

// A small editor for the tests of the protocol: it opens and changes files, keeps what the server pushes, and answers what the
// server asks.

import {
  type ClientCapabilities,
  ConfigurationRequest,
  createProtocolConnection,
  DiagnosticRefreshRequest,
  DidChangeConfigurationNotification,
  DidChangeTextDocumentNotification,
  DidCloseTextDocumentNotification,
  DidOpenTextDocumentNotification,
  InitializedNotification,
  InitializeRequest,
  type InitializeResult,
  InlayHintRefreshRequest,
  type Position,
  type ProtocolConnection,
  PublishDiagnosticsNotification,
  type PublishDiagnosticsParams,
  RegistrationRequest,
  StreamMessageReader,
  StreamMessageWriter,
  type TextDocumentContentChangeEvent,
} from 'vscode-languageserver/node';

export interface Client {
  readonly connection: ProtocolConnection;
  readonly initialized: InitializeResult;
  /** Everything pushed, in order. */
  readonly published: readonly PublishDiagnosticsParams[];
  /** Methods that the server registered for. */
  readonly registered: readonly string[];
  /** How often the server asked to pull findings again. */
  readonly refreshes: () => number;
  /** How often the server asked for settings. */
  readonly asked: () => number;
  readonly open: (uri: string, text: string, languageId?: string) => Promise<void>;
  readonly change: (uri: string, changes: readonly TextDocumentContentChangeEvent[]) => Promise<void>;
  readonly close: (uri: string) => Promise<void>;
  /** The codes pushed last for a file, once its newest version has been pushed. */
  readonly pushed: (uri: string) => Promise<readonly string[]>;
  /** Waits until something is so; fails the test by its time limit. */
  readonly until: (isSo: () => boolean) => Promise<void>;
  readonly setSettings: (tidemark: unknown) => Promise<void>;
}

export interface ClientOptions {
  readonly capabilities?: ClientCapabilities;
  readonly folders?: readonly string[];
  /** What `workspace/configuration` answers at first. */
  readonly settings?: unknown;
  readonly initializationOptions?: unknown;
  /** The settings of one folder, in place of those for all. */
  readonly settingsOf?: (scopeUri: string | undefined) => unknown;
  /** Answers to questions of our own. */
  readonly answers?: ReadonlyMap<string, () => unknown>;
}

/** Connects to a server over its two streams and says hello. */
export async function startClient(
  output: NodeJS.ReadableStream,
  input: NodeJS.WritableStream,
  options: ClientOptions = {},
): Promise<Client> {
  const connection = createProtocolConnection(new StreamMessageReader(output), new StreamMessageWriter(input));
  const published: PublishDiagnosticsParams[] = [];
  const registered: string[] = [];
  const versions = new Map<string, number>();
  let refreshes = 0;
  let settings = options.settings;
  const waiting = new Set<() => void>();
  const look = (): void => {
    for (const check of [...waiting]) check();
  };
  connection.onNotification(PublishDiagnosticsNotification.type, params => {
    published.push(params);
    look();
  });
  let asked = 0;
  connection.onRequest(ConfigurationRequest.type, ({ items }) => {
    asked += 1;
    setImmediate(look);
    return items.map(({ scopeUri }) => options.settingsOf?.(scopeUri) ?? settings);
  });
  for (const [method, answer] of options.answers ?? []) connection.onRequest(method, answer);
  connection.onRequest(RegistrationRequest.type, ({ registrations }) => {
    registered.push(...registrations.map(({ method }) => method));
    look();
  });
  connection.onRequest(DiagnosticRefreshRequest.type, () => {
    refreshes += 1;
    look();
  });
  connection.onRequest(InlayHintRefreshRequest.type, () => {});
  connection.listen();
  const until = (isSo: () => boolean): Promise<void> =>
    new Promise(done => {
      const check = (): void => {
        if (!isSo()) return;
        waiting.delete(check);
        done();
      };
      waiting.add(check);
      check();
    });
  const initialized = await connection.sendRequest(InitializeRequest.type, {
    processId: process.pid,
    rootUri: null,
    workspaceFolders: (options.folders ?? []).map(uri => ({ uri, name: 'folder' })),
    capabilities: options.capabilities ?? {},
    initializationOptions: options.initializationOptions,
  });
  await connection.sendNotification(InitializedNotification.type, {});
  const lastOf = (uri: string) => published.filter(one => one.uri === uri).at(-1);
  return {
    connection,
    initialized,
    published,
    registered,
    refreshes: () => refreshes,
    asked: () => asked,
    open: (uri, text, languageId = 'grow-recipe') => {
      versions.set(uri, 1);
      const textDocument = { uri, languageId, version: 1, text };
      return connection.sendNotification(DidOpenTextDocumentNotification.type, { textDocument });
    },
    change: (uri, changes) => {
      const version = (versions.get(uri) ?? 0) + 1;
      versions.set(uri, version);
      const params = { textDocument: { uri, version }, contentChanges: [...changes] };
      return connection.sendNotification(DidChangeTextDocumentNotification.type, params);
    },
    close: uri => connection.sendNotification(DidCloseTextDocumentNotification.type, { textDocument: { uri } }),
    pushed: async uri => {
      const version = versions.get(uri);
      const from = published.length;
      // A server that tells no versions is taken at its word.
      await until(() => {
        const last = lastOf(uri);
        return last?.version === version || (last?.version === undefined && published.length > from);
      });
      return codesOf(lastOf(uri)?.diagnostics ?? []);
    },
    until,
    setSettings: tidemark => {
      settings = tidemark;
      return connection.sendNotification(DidChangeConfigurationNotification.type, { settings: { tidemark } });
    },
  };
}

export function codesOf(diagnostics: readonly { readonly code?: string | number | undefined }[]): readonly string[] {
  return diagnostics.map(({ code }) => String(code));
}

/** The position of the end of the first place where a text stands, in UTF-16 units. */
export function behind(text: string, part: string): Position {
  const at = text.indexOf(part) + part.length;
  const before = text.slice(0, at);
  return { line: before.split('\n').length - 1, character: at - (before.lastIndexOf('\n') + 1) };
}

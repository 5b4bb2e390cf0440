// What the server holds while it serves one client: the workspace, what the client can do, the settings, the open files.

import {
  type ClientCapabilities,
  type Connection,
  type InitializeParams,
  InsertTextMode,
  type PositionEncodingKind,
} from 'vscode-languageserver';
import { type InitialOptions, readSettings, type Settings } from '../../schema/settings.ts';
import type { Encoding } from '../syntax/position.ts';
import type { FileText } from '../workspace/files.ts';
import { Workspace } from '../workspace/workspace.ts';

/** What the place where the server runs provides. */
export interface Surroundings {
  /** Reads a file that recipes use, where their folders allow it. */
  readonly read: (uri: string, within: Within) => Promise<FileText>;
  /** The recipes below a folder, where there is something that can be listed. */
  readonly list?: (root: string) => Promise<readonly string[]>;
  /** Runs something a little later, with room for a message that has arrived in between. */
  readonly later: (run: () => void) => void;
}

/** What decides whether a file may be read. */
export interface Within {
  /** The folders that are open, as URIs. */
  readonly folders: readonly string[];
  /** The recipes that use the file. */
  readonly users: readonly string[];
}

export interface OpenFile {
  readonly languageId: string;
  version: number;
}

export interface Session {
  readonly connection: Connection;
  readonly surroundings: Surroundings;
  readonly workspace: Workspace;
  readonly open: Map<string, OpenFile>;
  readonly can: ClientAbilities;
  readonly encoding: Encoding;
  roots: readonly string[];
  /** The settings outside any folder. */
  settings: Settings;
  /** The settings of each folder, by its URI. */
  folderSettings: ReadonlyMap<string, Settings>;
  /** Done when the recipes of the open folders have been read. */
  indexed: Promise<void>;
  /** The recipes that the last listing of the open folders named. */
  listed: ReadonlySet<string>;
  /** The commands of ours that the client knows. */
  readonly commands: ReadonlySet<string>;
}

/** The abilities of a client that change what the server does. */
export interface ClientAbilities {
  readonly pullDiagnostics: boolean;
  readonly refreshDiagnostics: boolean;
  readonly refreshHints: boolean;
  readonly configuration: boolean;
  readonly configurationRegistration: boolean;
  readonly watchRegistration: boolean;
  readonly folderChanges: boolean;
  readonly nestedSymbols: boolean;
  readonly versionedEdits: boolean;
  readonly snippets: boolean;
  /** Indents the further lines of what is inserted like the first. */
  readonly adjustsIndentation: boolean;
  /** Asks for a hint's tooltip only when it is looked at. */
  readonly lateTooltips: boolean;
  /** Takes a definition with the range that was asked about. */
  readonly definitionLinks: boolean;
  readonly refreshLenses: boolean;
  /** Asks whether something can be renamed before it asks for the new name. */
  readonly prepareRename: boolean;
  /** Lists the recipes of a folder itself. */
  readonly listsFiles: boolean;
}

export function startSession(connection: Connection, surroundings: Surroundings, params: InitializeParams): Session {
  const options: InitialOptions | undefined = params.initializationOptions ?? undefined;
  const folders = params.workspaceFolders?.map(folder => folder.uri) ?? [];
  // Older clients name one root in place of folders.
  const root: string | undefined = params.rootUri ?? undefined;
  return {
    connection,
    surroundings,
    workspace: new Workspace(),
    open: new Map(),
    can: abilitiesOf(params.capabilities, options),
    encoding: encodingFor(params.capabilities.general?.positionEncodings),
    roots: folders.length > 0 || root === undefined ? folders : [root],
    settings: readSettings(options?.settings),
    folderSettings: new Map(),
    indexed: Promise.resolve(),
    listed: new Set(),
    commands: new Set(Array.isArray(options?.commands) ? options.commands : []),
  };
}

function abilitiesOf(client: ClientCapabilities, options: InitialOptions | undefined): ClientAbilities {
  const { workspace, textDocument } = client;
  return {
    pullDiagnostics: textDocument?.diagnostic !== undefined,
    refreshDiagnostics: workspace?.diagnostics?.refreshSupport === true,
    refreshHints: workspace?.inlayHint?.refreshSupport === true,
    configuration: workspace?.configuration === true,
    configurationRegistration: workspace?.didChangeConfiguration?.dynamicRegistration === true,
    watchRegistration: workspace?.didChangeWatchedFiles?.dynamicRegistration === true,
    folderChanges: workspace?.workspaceFolders === true,
    nestedSymbols: textDocument?.documentSymbol?.hierarchicalDocumentSymbolSupport === true,
    versionedEdits: workspace?.workspaceEdit?.documentChanges === true,
    snippets: textDocument?.completion?.completionItem?.snippetSupport === true,
    adjustsIndentation:
      textDocument?.completion?.completionItem?.insertTextModeSupport?.valueSet.includes(
        InsertTextMode.adjustIndentation,
      ) === true,
    lateTooltips: textDocument?.inlayHint?.resolveSupport?.properties.includes('tooltip') === true,
    definitionLinks: textDocument?.definition?.linkSupport === true,
    prepareRename: textDocument?.rename?.prepareSupport === true,
    refreshLenses: workspace?.codeLens?.refreshSupport === true,
    listsFiles: options?.listsFiles === true,
  };
}

const encodings: readonly string[] = ['utf-16', 'utf-8', 'utf-32'] satisfies Encoding[];

/** The client's first choice among those we count in; UTF-16 is what every client understands. */
function encodingFor(offered: readonly PositionEncodingKind[] | undefined): Encoding {
  return (offered?.find(kind => encodings.includes(kind)) as Encoding | undefined) ?? 'utf-16';
}

/** Whether the findings of a file are told: it is open, or a recipe of the open folders. */
export function isTold({ open, listed }: Session, uri: string): boolean {
  return open.has(uri) || listed.has(uri);
}

/** Every recipe of the open folders and every open one, as far as they are held. */
export function allRecipes(session: Session): readonly string[] {
  return session.workspace.uris.filter(uri => isTold(session, uri));
}

/** Whether another extension already says what is wrong with the YAML and the keys of a file, and completes its keys. */
export function leftToOthers(session: Session, uri: string): boolean {
  const isYaml = session.open.get(uri)?.languageId === 'yaml';
  return isYaml && settingsFor(session, uri).yamlIntegration === 'semanticOnly';
}

/** The settings of the innermost open folder that holds a file. */
export function settingsFor({ settings, folderSettings }: Session, uri: string): Settings {
  let best: { readonly root: string; readonly settings: Settings } | undefined;
  for (const [root, own] of folderSettings) {
    if (isBelow(root, uri) && root.length >= (best?.root.length ?? 0)) best = { root, settings: own };
  }
  return best?.settings ?? settings;
}

/** Whether a file lies in a folder. */
export function isBelow(root: string, uri: string): boolean {
  return uri.startsWith(root.endsWith('/') ? root : `${root}/`);
}

// What a file held at the last commit, through the editor's own Git extension. It stands apart because it is the one place that knows
// that extension, of which only the few functions used here are described.
import * as vscode from 'vscode';

export type Committed =
  | { readonly kind: 'text'; readonly text: string }
  /** The file is not in the last commit. */
  | { readonly kind: 'absent' }
  /** Nothing can be asked, and why, in a sentence. */
  | { readonly kind: 'none'; readonly says: string };

/** Version 1 of what the Git extension offers, as far as it is used. */
interface GitApi {
  readonly state: 'uninitialized' | 'initialized';
  readonly onDidChangeState: vscode.Event<unknown>;
  getRepository(uri: vscode.Uri): Repository | null;
  openRepository?(root: vscode.Uri): Promise<Repository | null>;
}

interface Repository {
  readonly state: { readonly onDidChange: vscode.Event<void> };
  show(revision: string, path: string): Promise<string>;
  getCommit(revision: string): Promise<object>;
}

interface GitExtension {
  readonly enabled: boolean;
  getAPI(version: 1): GitApi;
}

export async function committedText(uri: vscode.Uri): Promise<Committed> {
  const found = await repositoryOf(uri);
  if (typeof found === 'string') return { kind: 'none', says: found };
  const text = await settled(found.show('HEAD', uri.fsPath));
  if (text !== undefined) return { kind: 'text', text };
  // Git is asked whether there is a commit: what the extension knows of a repository just opened may be nothing yet.
  const head = await settled(found.getCommit('HEAD'));
  if (head !== undefined) return { kind: 'absent' };
  return { kind: 'none', says: 'The repository has no commit yet, so there is nothing to compare with.' };
}

/** Calls back whenever the repository of a file changes, as by a commit. Nothing where there is none. */
export async function onCommit(uri: vscode.Uri, changed: () => void): Promise<vscode.Disposable | undefined> {
  const found = await repositoryOf(uri);
  return typeof found === 'string' ? undefined : found.state.onDidChange(changed);
}

async function repositoryOf(uri: vscode.Uri): Promise<Repository | string> {
  if (uri.scheme === 'untitled') return 'This recipe is not saved yet, so it is in no commit to compare with.';
  // The Git extension runs git on a disk; it sees nothing of file systems that other extensions or a browser make up.
  if (uri.scheme !== 'file') {
    return `This recipe is not on a disk that git can read (its address begins with ${uri.scheme}:), so it cannot be compared here. In a clone of its repository it can, and so can tidemark diff.`;
  }
  const extension = vscode.extensions.getExtension<GitExtension>('vscode.git');
  if (extension === undefined) return 'The Git extension of the editor is switched off, so no commit can be read.';
  let api: GitApi;
  try {
    const git = await extension.activate();
    if (!git.enabled) return 'Git is switched off in the settings (git.enabled), so no commit can be read.';
    api = git.getAPI(1);
  } catch {
    return 'The Git extension finds no git on this computer, so no commit can be read.';
  }
  await isReady(api);
  const repository = api.getRepository(uri) ?? (await opened(api, uri));
  return repository ?? 'This recipe is in no Git repository, so there is no commit to compare with.';
}

/** A folder deep in a repository, or one opened just now, may not have been looked at yet. */
async function opened(api: GitApi, uri: vscode.Uri): Promise<Repository | null> {
  const found = await settled(api.openRepository?.(vscode.Uri.joinPath(uri, '..')) ?? Promise.resolve(null));
  return found ?? api.getRepository(uri);
}

/** What a promise gives; undefined where git failed, which is all that it tells. */
function settled<T>(asked: Promise<T>): Promise<T | undefined> {
  return asked.catch(() => undefined);
}

/** Repositories are looked for when the editor starts; who asks too early would be told that there is none. */
function isReady(api: GitApi): Promise<void> {
  if (api.state === 'initialized') return Promise.resolve();
  return new Promise(done => {
    const timer = setTimeout(finish, mostWait);
    const waiting = api.onDidChangeState(() => {
      if (api.state === 'initialized') finish();
    });
    function finish(): void {
      clearTimeout(timer);
      waiting.dispose();
      done();
    }
  });
}

const mostWait = 5000;

// Tidemark: Compare With Last Commit. A page beside the recipe that tells what has changed in all that is computed, and keeps telling
// while the recipe changes.
import * as vscode from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { type ReviewParams, type ReviewResult, reviewRequest } from '../../server/protocol/requests.ts';
import { activeRecipe, whenRecipesChange } from './beside.ts';
import { type Committed, committedText, onCommit } from './committed.ts';

/** Addresses of pages: the path is that of the recipe, so that its name stands on the tab. */
export const reviewScheme = 'tidemark-review';

/** Registers the command and the pages. The returned object goes when the extension goes. */
export function compareWithCommit(server: BaseLanguageClient): vscode.Disposable {
  const changed = new vscode.EventEmitter<vscode.Uri>();
  /** The pages that are open, by their address, with what watches the repository of each. */
  const open = new Map<string, vscode.Disposable>();
  const refreshing = whenRecipesChange(() => {
    for (const page of open.keys()) changed.fire(vscode.Uri.parse(page));
  });
  return vscode.Disposable.from(
    changed,
    refreshing,
    vscode.commands.registerCommand('tidemark.compareWithCommit', () => show()),
    vscode.workspace.registerTextDocumentContentProvider(reviewScheme, {
      onDidChange: changed.event,
      provideTextDocumentContent: page => pageText(server, recipeOf(page)),
    }),
    vscode.workspace.onDidCloseTextDocument(({ uri }) => {
      open.get(uri.toString())?.dispose();
      open.delete(uri.toString());
    }),
    new vscode.Disposable(() => {
      for (const watching of open.values()) watching.dispose();
    }),
  );

  async function show(): Promise<boolean> {
    const recipe = activeRecipe('to compare it with the last commit');
    if (recipe === undefined) return false;
    const page = recipe.with({
      scheme: reviewScheme,
      path: `${recipe.path} since the last commit`,
      query: recipe.toString(),
    });
    const key = page.toString();
    // First watched, then read: a commit in between is not missed.
    if (open.has(key)) changed.fire(page);
    else open.set(key, (await onCommit(recipe, refreshing.soon)) ?? new vscode.Disposable(() => undefined));
    const text = await vscode.workspace.openTextDocument(page);
    await vscode.window.showTextDocument(text, {
      viewColumn: vscode.ViewColumn.Beside,
      preserveFocus: true,
      preview: false,
    });
    return true;
  }
}

function recipeOf(page: vscode.Uri): vscode.Uri {
  return vscode.Uri.parse(page.query);
}

async function pageText(server: BaseLanguageClient, recipe: vscode.Uri): Promise<string> {
  const old = await committedText(recipe);
  if (old.kind === 'none') return `${old.says}\n`;
  if (old.kind === 'absent') return 'This recipe is not in the last commit, so there is nothing to compare it with.\n';
  if (!server.isRunning()) return 'The language server is not running, so nothing is computed.\n';
  const texts = new Map<string, Committed>([[recipe.toString(), old]]);
  for (let round = 0; round < mostRounds; round++) {
    const result = await server.sendRequest<ReviewResult>(reviewRequest, paramsOf(recipe, texts));
    if (result.kind === 'review') return result.text;
    if (result.kind === 'unknown') break;
    for (const uri of result.uris) texts.set(uri, await committedText(vscode.Uri.parse(uri)));
  }
  return 'This recipe is not open any more, so it is not compared.\n';
}

/** Files that use files that use files: each round asks for one more step of the chain. */
const mostRounds = 50;

function paramsOf(recipe: vscode.Uri, texts: ReadonlyMap<string, Committed>): ReviewParams {
  return {
    uri: recipe.toString(),
    before: 'the last commit',
    texts: [...texts].map(([uri, found]) => ({ uri, text: found.kind === 'text' ? found.text : null })),
  };
}

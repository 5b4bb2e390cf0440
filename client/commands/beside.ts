// What pages beside a recipe have in common: they are asked for from the recipe in the active editor, and are worked out anew while
// recipes change.
import * as vscode from 'vscode';
import { recipeFiles } from '../start.ts';

/** The recipe in the active editor; undefined where there is none, which the reader has then been told. */
export function activeRecipe(whatFor: string): vscode.Uri | undefined {
  const document = vscode.window.activeTextEditor?.document;
  if (document !== undefined && isRecipe(document)) return document.uri;
  void vscode.window.showInformationMessage(`Open a recipe (*.grow.yaml) ${whatFor}.`);
  return undefined;
}

export interface Refreshing extends vscode.Disposable {
  /** Something else has changed than the text of a recipe. */
  readonly soon: () => void;
}

/** Runs `refresh` whenever recipes have changed. */
export function whenRecipesChange(refresh: () => void): Refreshing {
  let waiting: ReturnType<typeof setTimeout> | undefined;
  const soon = (): void => {
    clearTimeout(waiting);
    // A little after the last key, as the server then has the text and has computed it.
    waiting = setTimeout(refresh, quiet);
  };
  const soonFor = (document: vscode.TextDocument): void => {
    if (isRecipe(document)) soon();
  };
  const watching = vscode.Disposable.from(
    vscode.workspace.onDidChangeTextDocument(({ document }) => soonFor(document)),
    vscode.workspace.onDidSaveTextDocument(soonFor),
  );
  const dispose = (): void => {
    clearTimeout(waiting);
    watching.dispose();
  };
  return { soon, dispose };
}

const quiet = 200;

function isRecipe(document: vscode.TextDocument): boolean {
  return vscode.languages.match([...recipeFiles], document) > 0;
}

// The extension wakes up for recipes and says so.
import * as assert from 'node:assert/strict';
import * as vscode from 'vscode';
import { eventually, openRecipe } from './recipe-file.ts';
import type { Test } from './test.ts';

export const activation: readonly Test[] = [
  {
    name: 'a recipe has the language Grow Recipe and wakes the extension',
    async run() {
      const document = await openRecipe('stairwell.grow.yaml');
      assert.equal(document.languageId, 'grow-recipe');
      const extension = vscode.extensions.getExtension('tidemark.tidemark');
      assert.ok(extension, 'the extension is installed');
      await eventually(
        () => extension.isActive,
        active => active,
      );
    },
  },
  {
    name: 'both commands exist and a restarted server answers again',
    async run() {
      const commands = await vscode.commands.getCommands(true);
      assert.ok(commands.includes('tidemark.showLog'));
      // What the editor asks of a recipe on the screen while the server stops is logged as failed, and rightly so.
      await vscode.commands.executeCommand('workbench.action.closeAllEditors');
      await new Promise(resolve => setTimeout(resolve, 1000));
      await vscode.commands.executeCommand('tidemark.restartServer');
      const document = await openRecipe('stairwell.grow.yaml');
      await eventually(
        () => symbolsOf(document),
        symbols => symbols.length > 0,
      );
    },
  },
  {
    name: 'settings and indentation of recipes come with the extension',
    async run() {
      const document = await openRecipe('stairwell.grow.yaml');
      const settings = vscode.workspace.getConfiguration('tidemark', document);
      assert.equal(settings.get('hints.doses'), true);
      assert.equal(settings.get('yamlIntegration'), 'auto');
      assert.equal(vscode.workspace.getConfiguration('editor', document).get('tabSize'), 2);
    },
  },
];

async function symbolsOf(document: vscode.TextDocument): Promise<readonly vscode.DocumentSymbol[]> {
  const symbols = await vscode.commands.executeCommand<vscode.DocumentSymbol[] | undefined>(
    'vscode.executeDocumentSymbolProvider',
    document.uri,
  );
  return symbols ?? [];
}

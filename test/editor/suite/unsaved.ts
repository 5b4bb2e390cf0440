// A recipe that was never saved: computed like any other, and clear about what it cannot have.
import * as assert from 'node:assert/strict';
import * as vscode from 'vscode';
import { eventually, findingsIn } from './recipe-file.ts';
import type { Test } from './test.ts';

const content = `recipe: 1
feeds: { fen: { label: 2 mL/L } }
batches:
  first: { water: nowhere, volume: 10 L, feed: { fen: label } }
`;

export const unsaved: readonly Test[] = [
  {
    name: 'an unsaved recipe is computed',
    async run() {
      const document = await openUnsaved();
      await eventually(
        () => findingsIn(document),
        found => found.includes('name-unknown: nowhere'),
      );
      const all = new vscode.Range(0, 0, document.lineCount, 0);
      const hints = await eventually(
        () => vscode.commands.executeCommand<vscode.InlayHint[]>('vscode.executeInlayHintProvider', document.uri, all),
        found => found.length > 0,
      );
      assert.ok(hints.some(({ label }) => String(label).includes('20 mL')));
      await close();
    },
  },
  {
    name: 'an unsaved recipe cannot be compared with a commit, and the page says why',
    async run() {
      await openUnsaved();
      assert.equal(await vscode.commands.executeCommand('tidemark.compareWithCommit'), true);
      await eventually(
        () =>
          vscode.workspace.textDocuments
            .filter(({ uri }) => uri.scheme === 'tidemark-review')
            .map(page => page.getText()),
        pages => pages.some(text => text.includes('not saved yet')),
      );
      await close();
    },
  },
];

async function openUnsaved(): Promise<vscode.TextDocument> {
  const document = await vscode.workspace.openTextDocument({ language: 'grow-recipe', content });
  await vscode.window.showTextDocument(document);
  return document;
}

async function close(): Promise<void> {
  await vscode.commands.executeCommand('workbench.action.revertAndCloseActiveEditor');
  await vscode.commands.executeCommand('workbench.action.closeAllEditors');
}

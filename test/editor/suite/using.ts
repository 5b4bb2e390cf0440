// A recipe that uses a file nobody has opened: it is read through the editor's file system, whatever that is.
import * as assert from 'node:assert/strict';
import * as vscode from 'vscode';
import { eventually, findingsIn, openRecipe, placeOf, replaceOnce } from './recipe-file.ts';
import type { Test } from './test.ts';

export const using: readonly Test[] = [
  {
    name: 'what a used file says counts',
    async run() {
      // 10 L at the 3 mL/L that the used file names.
      const document = await openRecipe('cellar.grow.yaml');
      const told = await eventually(
        () => hoverText(document, 'fen: label'),
        text => /\b30 mL\b/.test(text),
      );
      assert.match(told, /bottles\.grow\.yaml/);
      assert.deepEqual(
        findingsIn(document).filter(finding => /^(name-unknown|file-missing)/.test(finding)),
        [],
      );
    },
  },
  {
    name: 'a used file that is not there is found',
    async run() {
      const document = await openRecipe('cellar.grow.yaml');
      await replaceOnce(document, 'bottles', 'botles');
      await eventually(
        () => findingsIn(document),
        findings => findings.some(finding => finding.startsWith('file-missing')),
      );
      await vscode.commands.executeCommand('workbench.action.files.revert');
    },
  },
];

async function hoverText(document: vscode.TextDocument, text: string): Promise<string> {
  const hovers = await vscode.commands.executeCommand<vscode.Hover[]>(
    'vscode.executeHoverProvider',
    document.uri,
    placeOf(document, text),
  );
  return hovers
    .flatMap(hover => hover.contents)
    .map(content => (typeof content === 'string' ? content : content.value))
    .join('\n');
}

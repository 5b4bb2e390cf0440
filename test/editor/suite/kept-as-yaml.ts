// Recipes whose language somebody set to YAML: served as well, and silent about what another extension says already.
import * as assert from 'node:assert/strict';
import * as vscode from 'vscode';
import { eventually, findingsIn, openRecipe, placeOf, replaceOnce } from './recipe-file.ts';
import type { Test } from './test.ts';

export const keptAsYaml: readonly Test[] = [
  {
    name: 'a recipe that stays YAML gets all findings where nobody else checks it',
    async run() {
      const document = await openAsYaml();
      await replaceOnce(document, 'volume: 12 L', 'volme: 12 L');
      await eventually(
        () => findingsIn(document),
        findings => findings.includes('key-unknown: volme'),
      );
    },
  },
];

export const besideYamlExtension: readonly Test[] = [
  {
    name: 'beside an extension that checks all YAML, a recipe that stays YAML gets findings about meaning only',
    async run() {
      const document = await openAsYaml();
      await replaceOnce(document, 'volume: 12 L', 'volume: 12 L\n    volme: 1 L');
      await replaceOnce(document, 'water: cistern', 'water: cistren');
      const findings = await eventually(
        () => findingsIn(document),
        found => found.includes('name-unknown: cistren'),
      );
      assert.ok(!findings.includes('key-unknown: volme'), findings.join('\n'));
      const hoversAt = (text: string) =>
        vscode.commands.executeCommand<vscode.Hover[]>(
          'vscode.executeHoverProvider',
          document.uri,
          placeOf(document, text),
        );
      assert.equal((await hoversAt('title: Stairwell')).length, 0);
      assert.equal((await hoversAt('meadow: label')).length, 1);
    },
  },
  {
    name: 'beside such an extension, a recipe in its own language still gets all findings',
    async run() {
      const document = await openRecipe('stairwell.grow.yaml');
      await vscode.languages.setTextDocumentLanguage(document, 'grow-recipe');
      await vscode.commands.executeCommand('workbench.action.files.revert');
      await replaceOnce(document, 'volume: 12 L', 'volume: 12 L\n    volme: 1 L');
      await eventually(
        () => findingsIn(document),
        findings => findings.includes('key-unknown: volme'),
      );
    },
  },
];

async function openAsYaml(): Promise<vscode.TextDocument> {
  const document = await openRecipe('stairwell.grow.yaml');
  return vscode.languages.setTextDocumentLanguage(document, 'yaml');
}

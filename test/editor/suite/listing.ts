// Which recipes of a folder count: not those that the editor is told to hide. Apart from the other suites, as the file system of the
// host in a browser lists what is hidden too.
import * as vscode from 'vscode';
import { eventually, openRecipe } from './recipe-file.ts';
import type { Test } from './test.ts';

export const listing: readonly Test[] = [
  {
    name: 'what the editor is told to hide is not listed, from then on',
    async run() {
      const document = await openRecipe('stairwell.grow.yaml');
      const files = vscode.workspace.getConfiguration('files', document);
      const named = async (wanted: number) => {
        await eventually(
          () =>
            vscode.commands.executeCommand<vscode.SymbolInformation[]>('vscode.executeWorkspaceSymbolProvider', 'fen'),
          found => found.length === wanted,
        );
      };
      await named(1);
      await files.update('exclude', { '**/shelf': true }, vscode.ConfigurationTarget.Workspace);
      await named(0);
      await files.update('exclude', undefined, vscode.ConfigurationTarget.Workspace);
      await named(1);
    },
  },
];

// The language status item: whether the server runs, shown only beside recipes. It stands apart because it is the one
// place where the state of the server becomes words.
import * as vscode from 'vscode';
import { State } from 'vscode-languageclient';
import { recipeFiles } from './start.ts';

/** Puts the item beside recipes; the returned function tells it the server's state. */
export function serverStatus(context: vscode.ExtensionContext): (state: State) => void {
  const item = vscode.languages.createLanguageStatusItem('tidemark.server', [...recipeFiles]);
  item.name = 'Tidemark';
  context.subscriptions.push(item);
  const version: string = context.extension.packageJSON.version;
  return state => {
    const words = wordsFor(state);
    item.text = words.text;
    item.severity = words.severity;
    item.busy = state === State.Starting;
    item.detail = `Tidemark ${version}`;
    item.command = words.command;
  };
}

interface Words {
  readonly text: string;
  readonly severity: vscode.LanguageStatusSeverity;
  readonly command: vscode.Command;
}

function wordsFor(state: State): Words {
  const { Error: failed, Information: fine } = vscode.LanguageStatusSeverity;
  const restart = { command: 'tidemark.restartServer', title: 'Restart' };
  const showLog = { command: 'tidemark.showLog', title: 'Show log' };
  switch (state) {
    case State.Running:
      return { text: 'Recipe is computed', severity: fine, command: showLog };
    case State.Starting:
      return { text: 'Starting', severity: fine, command: showLog };
    default:
      return { text: 'Not running: nothing is computed', severity: failed, command: restart };
  }
}

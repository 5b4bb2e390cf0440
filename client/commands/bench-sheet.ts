// Tidemark: Show Bench Sheet, and Save Bench Sheet. What to do at the bench for a batch or on a day, on a page beside the recipe that
// follows its text, and as a file to print.
import * as vscode from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import {
  type Recordable,
  type RecordableParams,
  recordableRequest,
  type SheetAbout,
  type SheetParams,
  type SheetResult,
  sheetRequest,
} from '../../server/protocol/requests.ts';
import { activeRecipe, whenRecipesChange } from './beside.ts';
import { today } from './recording.ts';

/** A sheet on the screen. */
interface Shown {
  readonly recipe: vscode.Uri;
  readonly about: SheetAbout;
  readonly panel: vscode.WebviewPanel;
}

export interface BenchSheets extends vscode.Disposable {
  /** The HTML of each sheet on the screen. */
  readonly shown: () => readonly string[];
}

/** Registers the commands and their pages. The returned object goes when the extension goes. */
export function benchSheets(server: BaseLanguageClient): BenchSheets {
  const open = new Map<string, Shown>();
  const refreshing = whenRecipesChange(() => {
    for (const key of open.keys()) void fill(key);
  });
  const registered = vscode.Disposable.from(
    refreshing,
    server.onDidChangeState(refreshing.soon),
    vscode.commands.registerCommand('tidemark.showBenchSheet', async (known?: unknown) => {
      const recipe = activeRecipe('to see a bench sheet of it');
      const about = recipe && (aboutIn(known) ?? (await chooseAbout(server, recipe)));
      if (recipe === undefined || about === undefined) return false;
      await show(recipe, about);
      return true;
    }),
    vscode.commands.registerCommand('tidemark.saveBenchSheet', (known?: unknown) => {
      // The button and the palette of a sheet mean that sheet.
      const active = [...open.values()].find(({ panel }) => panel.active);
      return save(server, known, aboutIn(known) === undefined ? active : undefined);
    }),
  );
  const shown = (): readonly string[] => [...open.values()].map(({ panel }) => panel.webview.html);
  const dispose = (): void => {
    registered.dispose();
    for (const { panel } of open.values()) panel.dispose();
  };
  return { shown, dispose };

  async function show(recipe: vscode.Uri, about: SheetAbout): Promise<void> {
    const key = JSON.stringify([recipe.toString(), about]);
    const sheet = open.get(key) ?? { recipe, about, panel: newPanel(recipe, about) };
    if (!open.has(key)) sheet.panel.onDidDispose(() => open.delete(key));
    open.set(key, sheet);
    sheet.panel.reveal(undefined, true);
    await fill(key);
  }

  async function fill(key: string): Promise<void> {
    const sheet = open.get(key);
    if (sheet === undefined) return;
    const result = await ask(server, sheet.recipe, sheet.about);
    const html = onScreen(result.kind === 'sheet' ? result.html : `<p>${escaped(result.says)}</p>`);
    // What is ticked and written on the page stays for as long as it says the same; it may be closed by now.
    if (open.get(key) === sheet && sheet.panel.webview.html !== html) sheet.panel.webview.html = html;
  }
}

/** Nothing on the page runs: it is text, with boxes to tick and lines to write on. */
function newPanel(recipe: vscode.Uri, about: SheetAbout): vscode.WebviewPanel {
  const title = `${nameOf(about)} · ${recipe.path.replace(/^.*\//, '')}`;
  const where = { viewColumn: vscode.ViewColumn.Beside, preserveFocus: true };
  return vscode.window.createWebviewPanel('tidemark.sheet', title, where, { enableFindWidget: true });
}

/** A sheet is black on white in every theme, like the paper that it is for; editors give pages colours of their own. */
function onScreen(html: string): string {
  return `${html}<style>html, body { background: #fff; color: #000; font: 10pt/1.35 system-ui, sans-serif; }</style>`;
}

function escaped(text: string): string {
  return text.replaceAll(/[&<>"']/gu, sign => `&#${sign.charCodeAt(0)};`);
}

async function save(server: BaseLanguageClient, known: unknown, active: Shown | undefined): Promise<boolean> {
  const recipe = active?.recipe ?? activeRecipe('to save a bench sheet of it');
  const about = active?.about ?? (recipe && (aboutIn(known) ?? (await chooseAbout(server, recipe))));
  if (recipe === undefined || about === undefined) return false;
  const result = await ask(server, recipe, about);
  if (result.kind === 'refused') {
    void vscode.window.showErrorMessage(result.says);
    return false;
  }
  const target = targetIn(known) ?? (await chooseTarget(recipe, about));
  if (target === undefined) return false;
  await vscode.workspace.fs.writeFile(target, new TextEncoder().encode(result.html));
  void tellSaved(target);
  return true;
}

async function ask(server: BaseLanguageClient, recipe: vscode.Uri, about: SheetAbout): Promise<SheetResult> {
  if (!server.isRunning()) return { kind: 'refused', says: 'The language server is not running: nothing is computed.' };
  const params: SheetParams = { uri: server.code2ProtocolConverter.asUri(recipe), about };
  return server.sendRequest<SheetResult>(sheetRequest, params);
}

/** What another command or a key binding gives; a menu gives the address of its file, which is none of it. */
function aboutIn(known: unknown): SheetAbout | undefined {
  if (typeof known !== 'object' || known === null) return undefined;
  if ('batch' in known && typeof known.batch === 'string') return { batch: known.batch };
  return 'day' in known && typeof known.day === 'string' ? { day: known.day } : undefined;
}

function targetIn(known: unknown): vscode.Uri | undefined {
  const given = typeof known === 'object' && known !== null && 'to' in known && typeof known.to === 'string';
  return given ? vscode.Uri.parse(String(known.to)) : undefined;
}

async function chooseAbout(server: BaseLanguageClient, recipe: vscode.Uri): Promise<SheetAbout | undefined> {
  if (!server.isRunning()) {
    void vscode.window.showErrorMessage('Tidemark’s language server is not running, so there is no bench sheet.');
    return undefined;
  }
  const params: RecordableParams = { uri: server.code2ProtocolConverter.asUri(recipe) };
  const choices = await server.sendRequest<Recordable | null>(recordableRequest, params);
  const separator = (label: string) => ({ label, kind: vscode.QuickPickItemKind.Separator, about: undefined });
  const items = [
    separator('Batches'),
    ...(choices?.batches ?? []).map(({ name, detail }) => ({
      label: name,
      description: detail,
      about: (): SheetAbout => ({ batch: name }),
    })),
    separator('Days'),
    { label: 'Today', description: today(), about: (): SheetAbout => ({ day: today() }) },
    { label: 'Tomorrow', description: today(1), about: (): SheetAbout => ({ day: today(1) }) },
    { label: 'Another Day…', about: () => chooseDay(server, recipe) },
  ];
  const picked = await vscode.window.showQuickPick(items, {
    title: 'Bench Sheet',
    placeHolder: 'Of which batch, or for which day?',
    matchOnDescription: true,
  });
  return picked?.about?.();
}

async function chooseDay(server: BaseLanguageClient, recipe: vscode.Uri): Promise<SheetAbout | undefined> {
  const text = await vscode.window.showInputBox({
    title: 'Bench Sheet',
    prompt: 'Day',
    value: today(),
    validateInput: async typed => {
      const result = await ask(server, recipe, { day: typed.trim() });
      return result.kind === 'refused' ? result.says : undefined;
    },
  });
  return text === undefined ? undefined : { day: text.trim() };
}

function nameOf(about: SheetAbout): string {
  return `Bench sheet: ${'batch' in about ? about.batch : about.day}`;
}

function chooseTarget(recipe: vscode.Uri, about: SheetAbout): Thenable<vscode.Uri | undefined> {
  const name = recipe.path.replace(/^.*\//, '').replace(/\.grow\.ya?ml$/, '');
  const file = `${name}-${'batch' in about ? about.batch : about.day}.html`;
  return vscode.window.showSaveDialog({
    title: 'Save Bench Sheet',
    filters: { 'Page to print': ['html'] },
    // A recipe that was never saved is nowhere.
    ...(recipe.scheme === 'untitled' ? {} : { defaultUri: vscode.Uri.joinPath(recipe, '..', file) }),
  });
}

/** A browser can open what lies on the reader's own disk. */
async function tellSaved(target: vscode.Uri): Promise<void> {
  const isHere =
    target.scheme === 'file' && vscode.env.uiKind === vscode.UIKind.Desktop && vscode.env.remoteName === undefined;
  const name = target.path.replace(/^.*\//, '');
  const says = `Saved ${name}: a page for a browser to show and print.`;
  const picked = await vscode.window.showInformationMessage(says, ...(isHere ? ['Open'] : []));
  if (picked === 'Open') await vscode.env.openExternal(target);
}

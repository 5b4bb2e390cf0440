// The language server in the browser: a worker. It stands apart because nothing else of the client knows workers.
import * as vscode from 'vscode';
import {
  type BaseLanguageClient,
  BrowserMessageReader,
  BrowserMessageWriter,
  LanguageClient,
  type LanguageClientOptions,
} from 'vscode-languageclient/browser';

/** What a browser provides, as far as it is used; its types as a whole would make its names known everywhere. */
declare class Worker {
  constructor(address: string);
  terminate(): void;
}

export function browserClient(context: vscode.ExtensionContext, options: LanguageClientOptions): BaseLanguageClient {
  let running: Worker | undefined;
  const end = (): void => running?.terminate();
  context.subscriptions.push(new vscode.Disposable(end));
  return new LanguageClient(
    'tidemark',
    'Tidemark',
    async () => {
      // A worker whose server has stopped goes on living until it is ended.
      end();
      running = await serverWorker(context);
      // The worker itself will not do: hosts wrap it in objects that the client does not know for workers.
      return { reader: new BrowserMessageReader(running), writer: new BrowserMessageWriter(running) };
    },
    options,
  );
}

/** The file is the one that Node runs, so that the package holds the server once; a server of the web may refuse its name as a script. */
async function serverWorker(context: vscode.ExtensionContext): Promise<Worker> {
  const script = await vscode.workspace.fs.readFile(vscode.Uri.joinPath(context.extensionUri, 'dist', 'server.cjs'));
  const address = URL.createObjectURL(new Blob([script.slice()], { type: 'text/javascript' }));
  return new Worker(address);
}

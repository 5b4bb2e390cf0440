// The language server in a worker, where there is no disk: the client reads the files.

import { BrowserMessageReader, BrowserMessageWriter, createConnection } from 'vscode-languageserver/browser';
import packageJson from '../package.json' with { type: 'json' };
import { readByClient } from './protocol/client-files.ts';
import { dropCancelled } from './protocol/guard.ts';
import { serve } from './protocol/serve.ts';

// In a worker the global object is the port to whoever made it.
const port = globalThis;
const connection = createConnection(new BrowserMessageReader(port), new BrowserMessageWriter(port), {
  connectionStrategy: dropCancelled,
});
serve(
  connection,
  { read: (uri, within) => readByClient(connection, uri, within), later: laterHere() },
  packageJson.version,
);

/** A message to oneself comes behind those that have arrived; a timer would come late, as browsers slow them down. */
function laterHere(): (run: () => void) => void {
  const { port1, port2 } = new MessageChannel();
  const waiting: (() => void)[] = [];
  port1.addEventListener('message', () => waiting.shift()?.());
  port1.start();
  return run => {
    waiting.push(run);
    port2.postMessage(null);
  };
}

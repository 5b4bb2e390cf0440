// A server in the test's own process, with files that the test makes up, for what needs no process of its own.

import { PassThrough } from 'node:stream';
import { createConnection, ProposedFeatures } from 'vscode-languageserver/node';
import { serve } from '../../server/protocol/serve.ts';
import type { Within } from '../../server/protocol/session.ts';
import type { FileText } from '../../server/workspace/files.ts';
import { type Client, type ClientOptions, startClient } from './client.ts';

export interface Made extends ClientOptions {
  /** The texts on the made-up disk, by URI. */
  readonly disk?: Map<string, string>;
  /** The folders of the disk can be listed. */
  readonly lists?: boolean;
  readonly onRead?: (uri: string, within: Within) => void;
}

export async function startInProcess(made: Made = {}): Promise<Client> {
  const toServer = new PassThrough();
  const toClient = new PassThrough();
  const read = (uri: string, within: Within): Promise<FileText> => {
    made.onRead?.(uri, within);
    const text = made.disk?.get(uri);
    return Promise.resolve(text === undefined ? { kind: 'none', why: 'absent' } : { kind: 'text', text });
  };
  const connection = createConnection(ProposedFeatures.all, toServer, toClient);
  const list = (root: string): Promise<readonly string[]> =>
    Promise.resolve([...(made.disk ?? new Map()).keys()].filter(uri => uri.startsWith(root)));
  const files = made.lists === true ? { read, list } : { read };
  serve(connection, { ...files, later: run => setImmediate(run) }, '0.0.0');
  return startClient(toClient, toServer, made);
}

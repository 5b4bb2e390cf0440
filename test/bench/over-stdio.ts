// What an editor waits for: a server in a process of its own, spoken to over its standard streams. Drives any language server that
// pushes its findings, so that ours and another are asked the same.

import { spawn } from 'node:child_process';
import {
  CompletionRequest,
  ExitNotification,
  HoverRequest,
  LogMessageNotification,
  MessageType,
  ShutdownRequest,
} from 'vscode-languageserver/node';
import { type Client, startClient } from '../protocol/client.ts';
import { type Kind, keystrokesIn, kinds } from './keystrokes.ts';
import { cpuOfProcess, memoryOfProcess, type Spread, spreadOf } from './measure.ts';
import { randomFrom } from './random.ts';

export interface ServerTimes {
  /** From the start of the process to the answer to `initialize`, and to the first findings. */
  readonly initialize: number;
  readonly firstFindings: number;
  readonly keystroke: Spread;
  readonly byKind: Readonly<Record<Kind, Spread>>;
  /** Processor time of one keystroke; undefined where the system does not tell. */
  readonly keystrokeCpu: number | undefined;
  /** From the last of ten letters typed at once to its findings. */
  readonly burst: Spread;
  readonly hover: Spread;
  readonly completion: Spread;
  readonly memoryMB: number | undefined;
}

export interface Served {
  readonly command: readonly [string, ...string[]];
  readonly languageId: string;
  readonly settings?: unknown;
}

const uri = 'file:///bench/recipe.grow.yaml';

export async function measureServer(served: Served, text: string, count: number): Promise<ServerTimes> {
  const started = performance.now();
  const [program, ...args] = served.command;
  const server = spawn(program, args, { stdio: ['pipe', 'pipe', 'ignore'] });
  const client = await startClient(server.stdout, server.stdin, {
    capabilities: {
      workspace: { configuration: true },
      textDocument: { publishDiagnostics: { versionSupport: true } },
    },
    settings: served.settings,
  });
  // A fault of the server would otherwise be waited for without end.
  client.connection.onNotification(LogMessageNotification.type, ({ type, message }) => {
    if (type === MessageType.Error) throw new Error(message);
  });
  const initialize = performance.now() - started;
  let seen = client.published.length;
  const findings = async (): Promise<void> => {
    await client.until(() => client.published.length > seen);
    seen = client.published.length;
  };
  await client.open(uri, text, served.languageId);
  await findings();
  const firstFindings = performance.now() - started;
  const lines = linesOf(text);
  const random = randomFrom(3);

  const keystrokes = async (many: number): Promise<readonly Typed[]> => {
    const typed: Typed[] = [];
    for (const { kind, at, letter } of keystrokesIn(text, many, random)) {
      const here = positionIn(lines, at);
      const behind = { ...here, character: here.character + 1 };
      for (const change of [
        { range: { start: here, end: here }, text: letter },
        { range: { start: here, end: behind }, text: '' },
      ]) {
        seen = client.published.length;
        const start = performance.now();
        await client.change(uri, [change]);
        await findings();
        typed.push({ kind, took: performance.now() - start });
      }
    }
    return typed;
  };
  await keystrokes(Math.min(20, count));
  const before = server.pid === undefined ? undefined : cpuOfProcess(server.pid);
  const typed = await keystrokes(count);
  const after = server.pid === undefined ? undefined : cpuOfProcess(server.pid);
  const bursts: number[] = [];
  for (const { at } of keystrokesIn(text, Math.max(4, Math.floor(count / 10)), random)) {
    bursts.push(await burst(client, positionIn(lines, at)));
  }
  const textDocument = { uri };
  const ask = async (request: typeof HoverRequest | typeof CompletionRequest): Promise<Spread> => {
    const times: number[] = [];
    for (const { at } of keystrokesIn(text, count, random)) {
      const start = performance.now();
      await client.connection.sendRequest(request.method, { textDocument, position: positionIn(lines, at) });
      times.push(performance.now() - start);
    }
    return spreadOf(times);
  };
  const hover = await ask(HoverRequest);
  const completion = await ask(CompletionRequest);
  const memoryMB = server.pid === undefined ? undefined : memoryOfProcess(server.pid);
  const gone = new Promise(done => server.once('exit', done));
  await client.connection.sendRequest(ShutdownRequest.type);
  await client.connection.sendNotification(ExitNotification.type);
  await gone;
  return {
    initialize,
    firstFindings,
    keystroke: spreadOf(typed.map(({ took }) => took)),
    byKind: byKindOf(typed),
    keystrokeCpu: before === undefined || after === undefined ? undefined : (after - before) / typed.length,
    burst: spreadOf(bursts),
    hover,
    completion,
    memoryMB,
  };
}

interface Typed {
  readonly kind: Kind;
  readonly took: number;
}

function byKindOf(typed: readonly Typed[]): Readonly<Record<Kind, Spread>> {
  const of = (kind: string) => spreadOf(typed.flatMap(one => (one.kind === kind ? [one.took] : [])));
  return Object.fromEntries(Object.keys(kinds).map(kind => [kind, of(kind)])) as Record<Kind, Spread>;
}

/** Ten letters at once, and out again. */
async function burst(client: Client, here: Position): Promise<number> {
  const letters = 10;
  const start = performance.now();
  for (let letter = 0; letter < letters; letter++) {
    const spot = { ...here, character: here.character + letter };
    await client.change(uri, [{ range: { start: spot, end: spot }, text: '1' }]);
  }
  await client.pushed(uri);
  const wall = performance.now() - start;
  const end = { ...here, character: here.character + letters };
  await client.change(uri, [{ range: { start: here, end }, text: '' }]);
  await client.pushed(uri);
  return wall;
}

interface Position {
  readonly line: number;
  readonly character: number;
}

/** Where the lines of a text begin. */
function linesOf(text: string): readonly number[] {
  return [0, ...[...text.matchAll(/\n/gu)].map(found => found.index + 1)];
}

function positionIn(lines: readonly number[], offset: number): Position {
  let line = 0;
  while ((lines[line + 1] ?? Number.POSITIVE_INFINITY) <= offset) line++;
  return { line, character: offset - (lines[line] ?? 0) };
}

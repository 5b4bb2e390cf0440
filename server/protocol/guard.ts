// Keeps one bad message from ending the server: what goes wrong becomes one line in the log and an empty answer.

import {
  type CancellationToken,
  type ConnectionStrategy,
  LSPErrorCodes,
  Message,
  ResponseError,
  type ResponseMessage,
} from 'vscode-languageserver';
import type { Session } from './session.ts';

/** A request that is given up while it waits its turn is answered without being looked at. */
export const dropCancelled: ConnectionStrategy = {
  cancelUndispatched: message => {
    if (!Message.isRequest(message)) return undefined;
    const error = { code: LSPErrorCodes.RequestCancelled, message: 'cancelled' };
    return { jsonrpc: message.jsonrpc, id: message.id, error } as ResponseMessage;
  },
};

/**
 * Wraps the handler of a request. One that was cancelled while it waited is answered as cancelled without any work; a fault is
 * logged and answered by `empty`.
 */
export function asked<P, R>(
  session: Session,
  what: string,
  empty: (params: P) => R,
  handle: (params: P) => R,
): (params: P, token: CancellationToken) => R | ResponseError<never> {
  return (params, token) => {
    if (token.isCancellationRequested) return new ResponseError<never>(LSPErrorCodes.RequestCancelled, 'cancelled');
    return guarded(
      session,
      what,
      () => empty(params),
      () => handle(params),
    );
  };
}

/** What `run` gives; where it throws, that is logged and it is `instead`. */
export function guarded<R>(session: Session, what: string, instead: () => R, run: () => R): R {
  try {
    return run();
  } catch (fault) {
    logFault(session, what, fault);
    return instead();
  }
}

/** The same for a request that waits for something first; whether it was cancelled is looked at again after the wait. */
export function askedAfter<P, R>(
  session: Session,
  what: string,
  wait: () => Promise<void>,
  empty: (params: P) => R,
  handle: (params: P) => R | ResponseError<never>,
): (params: P, token: CancellationToken) => Promise<R | ResponseError<never>> {
  const answer = asked<P, R | ResponseError<never>>(session, what, empty, handle);
  return async (params, token) => {
    if (!token.isCancellationRequested) await wait();
    return answer(params, token);
  };
}

/** Wraps the handler of a notification. */
export function told<P>(session: Session, what: string, handle: (params: P) => void): (params: P) => void {
  return params =>
    guarded(
      session,
      what,
      () => undefined,
      () => handle(params),
    );
}

/** Runs what nobody waits for. */
export async function unattended(session: Session, what: string, work: () => Promise<void>): Promise<void> {
  try {
    await work();
  } catch (fault) {
    logFault(session, what, fault);
  }
}

function logFault(session: Session, what: string, fault: unknown): void {
  const text = fault instanceof Error ? (fault.stack ?? fault.message) : String(fault);
  session.connection.console.error(`${what}: ${text.split('\n').slice(0, 4).join(' | ')}`);
}

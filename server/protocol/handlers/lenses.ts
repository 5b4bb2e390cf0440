// What can be done with a batch, as code lenses: only what the client has a command for.

import type { CodeLens, Command } from 'vscode-languageserver';
import { type Lens, lenses } from '../../answers/lenses.ts';
import { asked } from '../guard.ts';
import { type Session, settingsFor } from '../session.ts';
import { toRange } from '../to-lsp.ts';

export function handleLenses(session: Session): void {
  const { connection, workspace } = session;
  connection.onCodeLens(
    asked(
      session,
      'lenses',
      () => [],
      ({ textDocument: { uri } }): CodeLens[] => {
        const snapshot = workspace.snapshot(uri);
        if (snapshot === undefined || !settingsFor(session, uri).lenses) return [];
        return lenses(snapshot).flatMap(lens => {
          const command = commandFor(lens);
          if (!session.commands.has(command.command)) return [];
          // What lies on no disk has no commit.
          if (lens.kind === 'compare' && !uri.startsWith('file:')) return [];
          return [{ range: toRange(session, snapshot.document, lens.range), command }];
        });
      },
    ),
  );
}

function commandFor(lens: Lens): Command {
  switch (lens.kind) {
    case 'sheet':
      return { title: 'Bench sheet', command: 'tidemark.showBenchSheet', arguments: [{ batch: lens.batch }] };
    case 'record-reading':
      return { title: 'Record a reading', command: 'tidemark.recordReading', arguments: [{ batch: lens.batch }] };
    case 'compare':
      return { title: 'Compare with the last commit', command: 'tidemark.compareWithCommit' };
  }
}

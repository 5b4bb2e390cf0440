// Tidemark: Record Top-up. Asks which planting was topped up, from what and with how much, and writes it down.
import * as vscode from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { askFor, type Desk, openDesk, today, writeDown } from './recording.ts';

/** What is known already, as a key binding or another command gives it; what is given is not asked for. */
export interface TopUpKnown {
  readonly planting?: string;
  readonly batch?: string;
  readonly water?: string;
  readonly volume?: string;
  readonly on?: string;
}

const title = 'Record Top-up';

export async function recordTopUp(server: BaseLanguageClient, known: TopUpKnown = {}): Promise<boolean> {
  const desk = await openDesk(server);
  const planting = desk && (known.planting ?? (await choosePlanting(desk)));
  if (desk === undefined || planting === undefined) return false;
  const from = await chooseSource(desk, known);
  if (from === undefined) return false;
  const start = { kind: 'planting', planting, on: today() } as const;
  const heading = `${title}: ${planting}`;
  const volume =
    known.volume ??
    (await askFor(
      desk,
      'volume',
      {
        title: heading,
        prompt: 'How much went into each container, as 400 mL.',
        needed: 'How much went into each container?',
      },
      text => ({ ...start, topUp: { ...from, volume: text } }),
    ));
  if (volume === undefined) return false;
  const on =
    known.on ??
    (await askFor(desk, 'on', { title: heading, prompt: 'Day', value: today(), needed: 'A day is needed.' }, text => ({
      ...start,
      on: text,
      topUp: { ...from, volume },
    })));
  if (on === undefined) return false;
  return writeDown(desk, { ...start, on, topUp: { ...from, volume } });
}

async function choosePlanting({ choices }: Desk): Promise<string | undefined> {
  const items = choices.plantings.map(({ name, detail }) => ({ label: name, description: detail }));
  const picked = await vscode.window.showQuickPick(items, { title, placeHolder: 'What was topped up?' });
  return picked?.label;
}

type Source = { readonly batch: string } | { readonly water: string };

async function chooseSource({ choices }: Desk, { batch, water }: TopUpKnown): Promise<Source | undefined> {
  if (batch !== undefined) return { batch };
  if (water !== undefined) return { water };
  const separator = (label: string) => ({ label, kind: vscode.QuickPickItemKind.Separator, source: undefined });
  const items = [
    separator('Batches'),
    ...choices.batches.map(({ name, detail }) => ({ label: name, description: detail, source: { batch: name } })),
    separator('Plain waters'),
    ...choices.waters.map(({ name, detail }) => ({ label: name, description: detail, source: { water: name } })),
  ];
  const picked = await vscode.window.showQuickPick(items, { title, placeHolder: 'What was it topped up with?' });
  return picked?.source;
}

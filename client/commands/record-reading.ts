// Tidemark: Record Reading. Asks what was measured, on a planting or on a batch, and writes it down.
import * as vscode from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { askFor, type Desk, openDesk, today, writeDown } from './recording.ts';

/** What is known already, as a key binding or another command gives it; what is given is not asked for. */
export interface ReadingKnown {
  readonly planting?: string;
  readonly batch?: string;
  readonly on?: string;
  readonly pH?: string;
  readonly EC?: string;
  readonly level?: string;
  readonly note?: string;
  /** What was added to the batch before it was measured. */
  readonly add?: readonly Added[];
  /** Whether to write it down without asking for what is not given. */
  readonly ask?: false;
}

interface Added {
  readonly name: string;
  readonly amount: string;
}

const title = 'Record Reading';

export async function recordReading(server: BaseLanguageClient, known: ReadingKnown = {}): Promise<boolean> {
  const desk = await openDesk(server);
  if (desk === undefined) return false;
  const about = await chooseSubject(desk, known);
  if (about === undefined) return false;
  return about.kind === 'planting' ? ofPlanting(desk, about.name, known) : ofBatch(desk, about.name, known);
}

interface Subject {
  readonly kind: 'planting' | 'batch';
  readonly name: string;
}

async function chooseSubject({ choices }: Desk, { planting, batch }: ReadingKnown): Promise<Subject | undefined> {
  if (planting !== undefined) return { kind: 'planting', name: planting };
  if (batch !== undefined) return { kind: 'batch', name: batch };
  const separator = (label: string) => ({ label, kind: vscode.QuickPickItemKind.Separator, subject: undefined });
  const items = [
    separator('Plantings'),
    ...choices.plantings.map(({ name, detail }) => item('planting', name, detail)),
    separator('Batches'),
    ...choices.batches.map(({ name, detail }) => item('batch', name, detail)),
  ];
  const picked = await vscode.window.showQuickPick(items, { title, placeHolder: 'What was measured?' });
  return picked?.subject;
}

function item(kind: Subject['kind'], name: string, detail: string) {
  return { label: name, description: detail, subject: { kind, name } };
}

async function ofPlanting(desk: Desk, planting: string, known: ReadingKnown): Promise<boolean> {
  const start = { kind: 'planting', planting, on: today() } as const;
  const on = await answer(known, 'on', () =>
    askFor(
      desk,
      'on',
      { title: `${title}: ${planting}`, prompt: 'Day', value: today(), needed: 'A day is needed.' },
      text => ({ ...start, on: text, note: 'x' }),
    ),
  );
  if (on === undefined) return false;
  const box = (prompt: string) => ({
    title: `${title}: ${planting}, ${on}`,
    prompt: `${prompt} Leave empty what was not measured.`,
  });
  const pH = await answer(known, 'pH', () => askFor(desk, 'pH', box('pH, as 6.2.'), text => ({ ...start, pH: text })));
  if (pH === undefined) return false;
  const EC = await answer(known, 'EC', () =>
    askFor(desk, 'EC', box('EC at 25 °C, as 1.3 mS/cm.'), text => ({ ...start, EC: text })),
  );
  if (EC === undefined) return false;
  const level = await answer(known, 'level', () =>
    askFor(desk, 'level', box('Level above the floor of the container, as 11.5 cm.'), text => ({
      ...start,
      level: text,
    })),
  );
  if (level === undefined) return false;
  const note = await answer(known, 'note', () =>
    askFor(desk, 'note', { title: `${title}: ${planting}, ${on}`, prompt: 'A remark, or nothing.' }, text => ({
      ...start,
      note: text,
    })),
  );
  if (note === undefined) return false;
  return writeDown(desk, { ...start, on: on === '' ? today() : on, ...written({ pH, EC, level, note }) });
}

async function ofBatch(desk: Desk, batch: string, known: ReadingKnown): Promise<boolean> {
  const start = { kind: 'batch', batch } as const;
  const add = known.add ?? (known.ask === false ? [] : await askAdded(desk, batch));
  if (add === undefined) return false;
  const box = (prompt: string) => ({
    title: `${title}: ${batch}`,
    prompt: `${prompt} Leave empty what was not measured.`,
  });
  const pH = await answer(known, 'pH', () => askFor(desk, 'pH', box('pH, as 6.2.'), text => ({ ...start, pH: text })));
  if (pH === undefined) return false;
  const EC = await answer(known, 'EC', () =>
    askFor(desk, 'EC', box('EC at 25 °C, as 1.3 mS/cm.'), text => ({ ...start, EC: text })),
  );
  if (EC === undefined) return false;
  return writeDown(desk, { ...start, add, ...written({ pH, EC }) });
}

/** What was added before the measurement; an empty list for nothing, undefined for giving up. */
async function askAdded(desk: Desk, batch: string): Promise<readonly Added[] | undefined> {
  const nothing = { label: 'Nothing', description: 'measured as it stood', adder: undefined };
  const items = [
    nothing,
    ...desk.choices.adders.map(({ name, detail }) => ({ label: name, description: detail, adder: name })),
  ];
  const heading = `${title}: ${batch}`;
  const picked = await vscode.window.showQuickPick(items, {
    title: heading,
    placeHolder: 'What was added before it was measured?',
  });
  if (picked === undefined) return undefined;
  const name = picked.adder;
  if (name === undefined) return [];
  const box = { title: heading, prompt: `How much ${name} was added, as 4 mL.`, needed: `How much ${name} was added?` };
  const amount = await askFor(desk, 'add', box, text => ({ kind: 'batch', batch, add: [{ name, amount: text }] }));
  return amount === undefined ? undefined : [{ name, amount }];
}

/** What is given, or what the box says; nothing at all where nobody is to be asked. */
async function answer(
  known: ReadingKnown,
  key: 'on' | 'pH' | 'EC' | 'level' | 'note',
  box: () => Promise<string | undefined>,
): Promise<string | undefined> {
  return known[key] ?? (known.ask === false ? '' : await box());
}

/** The answers without those that were left empty. */
function written<K extends string>(answers: Readonly<Record<K, string>>): { readonly [P in K]?: string } {
  const given = Object.entries<string>(answers).filter(([, text]) => text !== '');
  return Object.fromEntries(given) as { [P in K]?: string };
}

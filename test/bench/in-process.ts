// What the core takes, without a protocol round it: opening, keystrokes by kind, hovers and completions after a change.

import { completion } from '../../server/answers/completion/completion.ts';
import { hover } from '../../server/answers/hover/hover.ts';
import type { Snapshot } from '../../server/workspace/snapshot.ts';
import { Workspace } from '../../server/workspace/workspace.ts';
import { type Keystroke, type Kind, keystrokesIn, kinds } from './keystrokes.ts';
import { cpuOf, type Spread, spreadOf, wallOf } from './measure.ts';
import { randomFrom } from './random.ts';

export interface CoreTimes {
  readonly open: number;
  /** From a change to all findings, in milliseconds. */
  readonly keystroke: Spread;
  readonly byKind: Readonly<Record<Kind, Spread>>;
  /** Processor time of one change, the mean. */
  readonly keystrokeCpu: number;
  readonly hover: Spread;
  readonly completion: Spread;
}

const uri = 'file:///bench/recipe.grow.yaml';

export function measureCore(text: string, count: number): CoreTimes {
  const workspace = new Workspace();
  const look = (): Snapshot => {
    workspace.wanted();
    const snapshot = workspace.snapshot(uri);
    if (snapshot === undefined) throw new Error('the recipe is not held');
    return snapshot;
  };
  /** Findings are worked out when they are asked for, as an editor does after each change. */
  const findAll = (): void => void look().findings.length;
  const open = wallOf(() => {
    workspace.open(uri, text);
    findAll();
  });
  const type = ({ at, letter }: Keystroke, times?: number[]): void => {
    for (const change of [
      { from: at, to: at, text: letter },
      { from: at, to: at + 1, text: '' },
    ]) {
      const wall = wallOf(() => {
        workspace.change(uri, [change]);
        findAll();
      });
      times?.push(wall);
    }
  };
  const random = randomFrom(2);
  for (const keystroke of keystrokesIn(text, Math.min(count, 80), random)) type(keystroke);
  const byKind = new Map<Kind, number[]>();
  const keystrokes = keystrokesIn(text, count, random);
  const cpu = cpuOf(() => {
    for (const keystroke of keystrokes) {
      const times = byKind.get(keystroke.kind) ?? [];
      byKind.set(keystroke.kind, times);
      type(keystroke, times);
    }
  });
  const ask = (answer: (snapshot: Snapshot, offset: number) => unknown): Spread => {
    const times = keystrokesIn(text, count, random).map(({ at }) => wallOf(() => void answer(look(), at)));
    return spreadOf(times);
  };
  ask(hover);
  ask(completion);
  const spreads = Object.keys(kinds).map(kind => [kind, spreadOf(byKind.get(kind as Kind) ?? [])]);
  return {
    open,
    keystroke: spreadOf([...byKind.values()].flat()),
    byKind: Object.fromEntries(spreads) as Readonly<Record<Kind, Spread>>,
    keystrokeCpu: cpu / (2 * keystrokes.length),
    hover: ask(hover),
    completion: ask(completion),
  };
}

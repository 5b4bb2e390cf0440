// What may be written at the cursor: keys by place, names with what they stand for, units by dimension, fixed words.

import { placeAt } from '../../syntax/cursor.ts';
import { entryAt } from '../../syntax/document.ts';
import type { Range } from '../../syntax/tree.ts';
import type { Snapshot } from '../../workspace/snapshot.ts';
import { entryCompletions } from './entries.ts';
import { keyCompletions } from './keys.ts';
import { nameCompletions } from './names.ts';
import { spotOf } from './spot.ts';
import { unitCompletions } from './units.ts';
import { valueCompletions } from './values.ts';

export interface Completion {
  readonly kind: 'key' | 'name' | 'unit' | 'value';
  readonly label: string;
  /** What is put in place of `replaces`. */
  readonly text: string;
  /** The same with places to fill in, for editors that can step through them. Further lines are indented as from the first. */
  readonly snippet?: string;
  readonly detail?: string;
  /** What is compared with the text typed so far; the label where left out. */
  readonly filter?: string;
  readonly replaces: Range;
  /** Names what `describe` can say more about. */
  readonly about: string;
}

/** What to offer, the likeliest first. Works in broken text, since most text that is being typed is. */
export function completion(snapshot: Snapshot, offset: number): readonly Completion[] {
  const cursor = placeAt(snapshot.document, offset);
  if (cursor === undefined) return [];
  const spot = spotOf(cursor, lineBefore(snapshot, offset));
  const { value, keys, lead } = spot;
  const found = [
    ...(value === undefined ? [] : nameCompletions(snapshot, value)),
    ...(value === undefined ? [] : unitCompletions(snapshot, value)),
    ...(value === undefined ? [] : valueCompletions(snapshot, value)),
    ...(keys === undefined ? [] : keyCompletions(snapshot, keys)),
    ...(keys === undefined ? [] : entryCompletions(snapshot, keys)),
  ];
  const labels = new Set<string>();
  return found.filter(({ label }) => !labels.has(label) && labels.add(label)).map(item => withLead(item, lead));
}

function lineBefore({ document }: Snapshot, offset: number): string {
  const { entry, start } = entryAt(document, offset);
  const at = offset - start;
  return entry.text.slice(entry.text.lastIndexOf('\n', at - 1) + 1, at);
}

/** A value right behind its colon needs the blank that YAML wants there, an item its dash. */
function withLead(item: Completion, lead: string): Completion {
  if (lead === '') return item;
  const text = lead + item.text;
  return item.snippet === undefined ? { ...item, text } : { ...item, text, snippet: lead + item.snippet };
}

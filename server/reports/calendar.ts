// The tasks of a plan as the events of a calendar: whole days with a name that stays, in words.

import type { Day } from '../../schema/date.ts';
import { seasonOf } from '../plan/season.ts';
import type { Task } from '../plan/timeline.ts';
import type { Snapshot } from '../workspace/snapshot.ts';
import { hash } from './findings/fingerprint.ts';
import { takenText } from './task-text.ts';

export interface Calendar {
  readonly name: string;
  readonly events: readonly CalendarEvent[];
}

export interface CalendarEvent {
  /** The same for the same task of a plan that has changed. */
  readonly uid: string;
  readonly date: Day;
  readonly summary: string;
  /** Lines; none where there is nothing more to say. */
  readonly description: readonly string[];
  readonly category: string;
}

/**
 * Every task as an event. A UID is made of `home`, where the recipe lies wherever it is called from, what the task is about, its kind,
 * and its number among those of that kind, and of no date: when a date of the plan moves, the event of a calendar moves with it in
 * place of standing there twice. `file` is how a reader would name the recipe.
 */
export function calendar(snapshot: Snapshot, file: string, home: string): Calendar {
  const seen = new Map<string, number>();
  const events = seasonOf(snapshot.plan).tasks.map((task): CalendarEvent => {
    // Whoever gets the calendar need not know the folders of who made it.
    const key = `${hash(home)}/${encodeURIComponent(task.about)}/${task.kind}`;
    const ordinal = (seen.get(key) ?? 0) + 1;
    seen.set(key, ordinal);
    return {
      uid: `${key}/${ordinal}@tidemark`,
      date: task.date,
      summary: task.what,
      description: describe(task, snapshot, file),
      category: task.kind,
    };
  });
  return { name: snapshot.recipe.title ?? file, events };
}

function describe(task: Task, snapshot: Snapshot, file: string): readonly string[] {
  const taken = takenText(task, snapshot);
  const estimate = task.kind === 'top-up' ? ['The day and the amount are estimates: measure the level first.'] : [];
  const sheet = task.kind === 'mix' ? [`tidemark sheet ${file} --batch ${task.about} prints what to do.`] : [];
  return [...(taken === undefined ? [] : [taken]), ...estimate, ...sheet];
}

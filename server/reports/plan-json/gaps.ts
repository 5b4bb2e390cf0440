// Numbers for programs, and the list of those that cannot be had. Apart from the parts of the plan, which all fill it.

import type { Place } from '../../../schema/place.ts';
import type { PlanJson } from '../../../schema/plan-json.ts';
import type { Figure, Want } from '../../plan/figure.ts';
import { nearestRange } from '../../syntax/place.ts';
import { positionAt } from '../../syntax/position.ts';
import type { Snapshot } from '../../workspace/snapshot.ts';

type Gap = PlanJson['unknown'][number];
/** The keys that lead to a number from the top of the JSON. */
export type Key = readonly Gap['key'][number][];

/** Names a file's URI as the reader named it. */
export type NameFile = (uri: string) => string;

export interface Gaps {
  /** A figure's number in base units times `times`; null where it is unknown, which is then listed under `key`. */
  number(key: Key, figure: Figure, times?: number): number | null;
  /** Lists a number, or a list, that cannot be had, and gives null. */
  wants(key: Key, wants: readonly Want[]): null;
  /** Lists one whose reason is no place in a recipe. */
  says(key: Key, says: string): null;
  readonly all: readonly Gap[];
}

export function gapsOf(snapshot: Snapshot, nameFile: NameFile): Gaps {
  const all: Gap[] = [];
  const placed = placesIn(snapshot, nameFile);
  const gaps: Gaps = {
    all,
    number(key, figure, times = 1) {
      if (figure.kind === 'unknown') return gaps.wants(key, figure.wants);
      const value = figure.quantity.value * times;
      return Number.isFinite(value) ? tidy(value) : gaps.says(key, beyondNumbers);
    },
    wants(key, wants) {
      all.push({ key: [...key], wants: wants.map(want => want.says), places: wants.map(want => placed(want.at)) });
      return null;
    },
    says(key, says) {
      all.push({ key: [...key], wants: [says], places: [] });
      return null;
    },
  };
  return gaps;
}

/** Where something is written, for programs: its file as the reader named it, its path, its line. */
export type PlaceJson = Gap['places'][number];

export function placesIn(snapshot: Snapshot, nameFile: NameFile): (at: Place) => PlaceJson {
  return at => {
    const uri = at.file ?? snapshot.uri;
    const document = at.file === undefined ? snapshot.document : snapshot.documentOf(at.file);
    const line = document === undefined ? null : positionAt(document, nearestRange(document, at).from).line;
    return { file: nameFile(uri), path: [...at.path], line };
  };
}

/** What is said of a number too large to be one, so that no JSON holds what is none. */
export const beyondNumbers = 'amounts that can be: with these the number has no end';

/** A number without the noise of its last digits. */
export function tidy(value: number): number {
  return Number(value.toPrecision(12));
}

// What a completion is about, as a string that travels to the editor and back, so that words are made only for the item in view.

import type { Path } from '../../../schema/place.ts';
import { type SectionName, sectionNames } from '../../../schema/section-names.ts';
import type { Snapshot } from '../../workspace/snapshot.ts';
import { keyWords } from '../hover/key.ts';
import { nameWords } from '../hover/name.ts';

export function aboutKey(path: Path): string {
  return JSON.stringify(['key', ...path]);
}

export function aboutName(section: SectionName, name: string): string {
  return JSON.stringify(['name', section, name]);
}

/** More about a completion, in markdown; undefined where there is nothing to add. */
export function describe(snapshot: Snapshot, about: string): string | undefined {
  if (about === '') return undefined;
  const [kind, ...rest]: Path = JSON.parse(about);
  if (kind === 'key') return keyWords(rest);
  const [section, name] = rest;
  return isSection(section) ? nameWords(snapshot, section, String(name)) : undefined;
}

function isSection(key: unknown): key is SectionName {
  return typeof key === 'string' && Object.hasOwn(sectionNames, key);
}

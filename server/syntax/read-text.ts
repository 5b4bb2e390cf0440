// The text of one entry -> its tree and what is wrong with it: the fast way where the text is usual, else by the `yaml` package.

import { readUsual } from './read-usual.ts';
import { type Reading, readYaml } from './read-yaml.ts';

/** Reads one entry, or a whole file; of several documents the first. Never throws, whatever the text. */
export function readText(text: string): Reading {
  const tree = readUsual(text);
  return tree === undefined ? readYaml(text) : { tree, notes: [] };
}

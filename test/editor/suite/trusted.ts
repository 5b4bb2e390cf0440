// The suite for an ordinary window.
import { activation } from './activation.ts';
import { benchSheet } from './bench-sheet.ts';
import { comparing } from './comparing.ts';
import { keptAsYaml } from './kept-as-yaml.ts';
import { listing } from './listing.ts';
import { navigation } from './navigation.ts';
import { reading } from './reading.ts';
import { recording } from './recording.ts';
import { runTests } from './test.ts';
import { unsaved } from './unsaved.ts';
import { using } from './using.ts';
import { writing } from './writing.ts';

export function run(): Promise<void> {
  return runTests(
    [
      ...activation,
      ...reading,
      ...using,
      ...writing,
      ...recording,
      ...benchSheet,
      ...keptAsYaml,
      ...navigation,
      ...listing,
      ...comparing,
      ...unsaved,
    ],
    `${__filename}.json`,
  );
}

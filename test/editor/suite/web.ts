// The suite for the host in a browser: what any window does, through a worker and a virtual file system. Its results leave in one line
// of the console, as nothing can be written there.
import { activation } from './activation.ts';
import { benchSheet } from './bench-sheet.ts';
import { navigation } from './navigation.ts';
import { reading } from './reading.ts';
import { openRecipe } from './recipe-file.ts';
import { recording } from './recording.ts';
import { rejectFailures, resultsOf } from './results.ts';
import { unsaved } from './unsaved.ts';
import { using } from './using.ts';
import { marker } from './web-marker.ts';
import { writing } from './writing.ts';

export async function run(): Promise<void> {
  const results = await resultsOf([
    ...activation,
    ...reading,
    ...using,
    ...writing,
    ...recording,
    ...benchSheet,
    ...unsaved,
    ...navigation,
  ]);
  await openRecipe('stairwell.grow.yaml');
  // biome-ignore lint/suspicious/noConsole: the console is the only way out of a browser.
  console.log(`${marker}${JSON.stringify(results)}`);
  // The extension ends with this function, and a picture is taken of it first.
  await new Promise(resolve => setTimeout(resolve, 4000));
  rejectFailures(results);
}

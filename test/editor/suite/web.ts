// The suite for the host in a browser: what any window does, through a worker and a virtual file system. Its results leave in one line
// of the console, as nothing can be written there.
import { activation } from './activation.ts';
import { navigation } from './navigation.ts';
import { reading } from './reading.ts';
import { recording } from './recording.ts';
import { rejectFailures, resultsOf } from './results.ts';
import { using } from './using.ts';
import { marker } from './web-marker.ts';
import { writing } from './writing.ts';

export async function run(): Promise<void> {
  const results = await resultsOf([...activation, ...reading, ...using, ...writing, ...recording, ...navigation]);
  // biome-ignore lint/suspicious/noConsole: the console is the only way out of a browser.
  console.log(`${marker}${JSON.stringify(results)}`);
  rejectFailures(results);
}

// How much memory the server takes beside what it holds. What a keystroke leaves behind is little and soon gone, but left to itself
// Node lets it lie until it is several times what is held; an editor shares the machine with everything else.

import { setFlagsFromString } from 'node:v8';

/** Collects what is no longer needed early. To be called before there is much. */
export function keepHeapSmall(): void {
  // Young objects stay within the megabyte that they begin with.
  setFlagsFromString('--semi-space-growth-factor=1');
  // Old ones may grow by this share of what is held before they are looked through.
  setFlagsFromString('--heap-growing-percent=20');
}

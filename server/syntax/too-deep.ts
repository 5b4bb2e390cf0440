// Where lists and maps stand too deep inside each other for any reader.

import { closeList, closeMap, openList, openMap } from './code-units.ts';
import { limits } from './limits.ts';

/** Where brackets first stand deeper than the limit. Those in quotes count too: nobody writes as many. */
export function firstTooDeep(text: string): number | undefined {
  let depth = 0;
  for (let at = 0; at < text.length; at++) {
    const unit = text.charCodeAt(at);
    if (unit === openList || unit === openMap) depth++;
    else if ((unit === closeList || unit === closeMap) && depth > 0) depth--;
    if (depth > limits.depth) return at;
  }
  return undefined;
}

// A tool that says neither what it measures nor what it holds.

import type { FindingOf } from '../../schema/findings.ts';
import { keyAt } from '../../schema/place.ts';
import { eachOwn } from './each.ts';

export const toolMeasuresNothing = eachOwn(
  'tools',
  ({ name, value, path }): readonly FindingOf<'tool-measures-nothing'>[] => {
    const { smallest, steps, holds } = value;
    if (smallest !== undefined || (steps ?? []).length > 0 || holds !== undefined) return [];
    return [{ code: 'tool-measures-nothing', params: { tool: name }, at: keyAt(path) }];
  },
);

// A container that is said to let light in. Where nothing is said, nothing is found.

import type { FindingOf } from '../../schema/findings.ts';
import { valueAt } from '../../schema/place.ts';
import { eachOwn } from './each.ts';

export const lightGetsIn = eachOwn('containers', ({ name, value, path }): readonly FindingOf<'light-gets-in'>[] =>
  value.opaque === false
    ? [{ code: 'light-gets-in', params: { container: name }, at: valueAt([...path, 'opaque']) }]
    : [],
);

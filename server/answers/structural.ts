// What any check of YAML against the schema finds too: left to such a check where another extension makes it, so that nothing is said
// twice.

import { type FindingCode, findings } from '../../schema/findings.ts';

export function isStructural(code: FindingCode): boolean {
  return findings[code].from === 'syntax' || code === 'key-unknown' || code === 'value-missing';
}

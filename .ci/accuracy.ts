// Compares the solution chemistry with every reference case, prints what misses, and writes schema/reference/accuracy.md. The page is
// among the generated files, so that a stale one fails the tests.

import { writeFileSync } from 'node:fs';
import { accuracyPage, measureAccuracy, missesOf } from './generate/accuracy-page.ts';

const accuracy = measureAccuracy();
writeFileSync(new URL('../schema/reference/accuracy.md', import.meta.url), accuracyPage(accuracy));
const rows = [...accuracy.solver, ...accuracy.recipe];
const misses = missesOf(rows);
for (const { id, what, reference, ours, tolerance } of misses) {
  process.stdout.write(`${id}: ${what}: theirs ${reference}, ours ${ours}, within ${tolerance}\n`);
}
process.stdout.write(`${accuracy.cases} cases, ${rows.length} comparisons, ${misses.length} outside their tolerance\n`);

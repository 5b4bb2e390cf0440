import { expect, test } from 'vitest';
import { commandLinePart } from './report.ts';

const took = (wall: number, cpu: number, memory = 40) => ({ wall, cpu, memory });

test('the command line is held against its floors, beside what is aimed at', () => {
  const kinds = [
    {
      kind: 'drawn',
      lines: 127,
      node: took(50, 60),
      one: took(75, 120),
      bareParse: took(2000, 2200),
      all: took(2500, 3300, 150),
      few: took(400, 500, 149),
    },
  ];
  expect(commandLinePart({ recipes: 1000, kinds })).toMatchInlineSnapshot(`
    "## The command line

    What \`tidemark check\` takes from the start of its process to the end. One recipe is held against \`node -e 0\`; 1,000 of a kind against
    a bare parse of the same files by the \`yaml\` package, bundled the same way. Processor time is that of all threads together.

    |  | aim | drawn, 127 lines |
    | --- | --- | --- |
    | one recipe | at most 1.7 x | 1.50 x of 50 ms |
    | one recipe, processor time | at most 1.7 x | 2.00 x of 60 ms |
    | 1,000 recipes | at most 1.5 x | 1.25 x of 2000 ms |
    | 1,000 recipes, processor time | at most 1.5 x | 1.50 x of 2200 ms |
    | 1,000 recipes, as a time | at most 3 s for 1,000 | 2.5 s |
    | memory at 100 recipes |  | 149 MB |
    | memory at 1,000 recipes | no more | 150 MB |
    "
  `);
});

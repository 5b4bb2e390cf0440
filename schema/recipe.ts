// The whole file: its keys in the order in which a grower reads them, each with its schema.

import * as z from 'zod/mini';
import { parseDate } from './date.ts';
import { choice, group, listOf, parsed, plainText, words } from './field.ts';
import { adjuster } from './sections/adjuster.ts';
import { batch } from './sections/batch.ts';
import { container } from './sections/container.ts';
import { feed } from './sections/feed.ts';
import { log } from './sections/log.ts';
import { planting } from './sections/planting.ts';
import { stage } from './sections/stage.ts';
import { target } from './sections/target.ts';
import { tool } from './sections/tool.ts';
import { water } from './sections/water.ts';

/** The one version of the format that this Tidemark reads and writes. */
export const formatVersion = 1;

function section<S extends z.core.SomeType>(entry: S, says: string) {
  return z.optional(z.record(z.string(), entry).register(words, { says, called: 'The section' }));
}

export const recipe = group(
  {
    recipe: z.literal(formatVersion).register(words, { says: 'The version of the format: 1.', examples: ['1'] }),
    title: z.optional(plainText({ says: 'What the recipe is called.', examples: ['Reading-room greens'] })),
    start: z.optional(
      parsed(parseDate, {
        says: 'Day 0: the day of every entry that gives none of its own.',
        examples: ['2027-02-01'],
      }),
    ),
    show: z.optional(
      choice(['metric', 'us'], {
        says: 'In which units amounts are shown. It never changes what is computed.',
        examples: ['metric'],
      }),
    ),
    use: z.optional(
      listOf(plainText({ says: 'A file beside this one, by its relative path.', examples: ['./shelf.grow.yaml'] }), {
        says: 'Files from which waters, feeds, adjusters, tools, containers, targets and stages are borrowed.',
        examples: ['[./shelf.grow.yaml]'],
      }),
    ),
    waters: section(water, 'Source waters, by name.'),
    feeds: section(feed, 'Feeds, by name.'),
    adjusters: section(adjuster, 'Acids and bases that move the pH, by name.'),
    tools: section(tool, 'What can be measured on the bench, and mixing vessels, by name.'),
    containers: section(container, 'Containers, by name.'),
    targets: section(target, 'Targets, by name.'),
    stages: section(stage, 'Stages of growth, by name.'),
    plantings: section(planting, 'Plantings, by name.'),
    batches: section(batch, 'Batches, by name.'),
    log: z.optional(log),
  },
  { says: 'A grow recipe.', called: 'A recipe' },
);

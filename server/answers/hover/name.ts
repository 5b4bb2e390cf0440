// What a name stands for: the entry of that name, wherever it is written and whatever file it is borrowed from.

import { words } from '../../../schema/field.ts';
import { recipe } from '../../../schema/recipe.ts';
import { type SectionName, sectionNames } from '../../../schema/section-names.ts';
import { targetElements } from '../../../schema/sections/target.ts';
import { gathered } from '../../plan/gather.ts';
import { schemaAt } from '../../recipe/form.ts';
import type { Target } from '../../recipe/seen.ts';
import { nameOfFile } from '../../recipe/use.ts';
import { type Reader, rangeText } from '../../words/amount.ts';
import type { Snapshot } from '../../workspace/snapshot.ts';
import { detailOf } from '../detail.ts';
import { adjusterBlock } from './adjuster.ts';
import { batchHover } from './batch.ts';
import { blocks, code, plain, row } from './blocks.ts';
import { containerBlock } from './container.ts';
import { feedBlock } from './feed.ts';
import { fillBlock } from './planting.ts';
import { seasonBlock } from './season.ts';
import { stageSeasonBlock } from './stage.ts';
import { toolBlock } from './tool.ts';
import { waterBlock } from './water.ts';

/** All that is known of an entry; undefined where nothing that the recipe sees has the name. */
export function nameWords(snapshot: Snapshot, section: SectionName, name: string): string | undefined {
  const found = gathered(snapshot.plan.scope, section, name);
  if (found === undefined) return undefined;
  const batch = section === 'batches' ? snapshot.plan.batches.get(name) : undefined;
  if (batch !== undefined) return batchHover(batch, snapshot.plan.scope, snapshot.recipe.show);
  const detail = detailOf(snapshot, section, name);
  const head = `**${code(name)}**, ${called(section)}${detail === '' ? '' : `: ${plain(detail)}`}`;
  const from = found.file === undefined ? undefined : `Borrowed from ${code(nameOfFile(found.file))}.`;
  return blocks(head, blockOf(snapshot, section, name), from, detail === '' ? saysOf(section) : undefined);
}

function blockOf(snapshot: Snapshot, section: SectionName, name: string): string | undefined {
  const { plan } = snapshot;
  const reader = snapshot.recipe.show;
  switch (section) {
    case 'waters': {
      const water = gathered(plan.scope, 'waters', name);
      return water === undefined ? undefined : waterBlock(water, reader);
    }
    case 'feeds': {
      const feed = plan.feeds.get(name);
      return feed === undefined ? undefined : feedBlock(feed, plan, reader);
    }
    case 'adjusters': {
      const adjuster = gathered(plan.scope, 'adjusters', name);
      return adjuster === undefined ? undefined : adjusterBlock(adjuster, plan, reader);
    }
    case 'containers': {
      const container = plan.containers.get(name);
      return container === undefined ? undefined : containerBlock(container, reader);
    }
    case 'targets':
      return bandsLine(gathered(plan.scope, 'targets', name)?.value, reader);
    case 'plantings': {
      const planting = plan.plantings.get(name);
      if (planting === undefined) return undefined;
      return blocks(seasonBlock(plan, planting, reader), fillBlock(planting, reader));
    }
    case 'stages':
      return stageBlock(snapshot, name);
    case 'tools':
      return toolBlock(name, plan, reader);
    case 'batches':
      return undefined;
  }
}

/** `a water`, `an adjuster`. */
function called(section: SectionName): string {
  const name = sectionNames[section];
  return `${/^[aeiou]/u.test(name) ? 'an' : 'a'} ${name}`;
}

function bandsLine(target: Target | undefined, reader: Reader): string | undefined {
  return row(
    ...targetElements.map(element => {
      const band = target?.[element];
      return band === undefined ? undefined : `${element} ${rangeText(band, reader)}`;
    }),
  );
}

function stageBlock(snapshot: Snapshot, name: string): string {
  const target = gathered(snapshot.plan.scope, 'stages', name)?.value.target;
  const aims = target === undefined ? undefined : `Aims at ${code(target)}: ${detailOf(snapshot, 'targets', target)}`;
  return blocks(aims, stageSeasonBlock(snapshot.plan, name, snapshot.recipe.show));
}

/** What an entry of the section is, for those of which nothing else is known. */
function saysOf(section: SectionName): string | undefined {
  const schema = schemaAt(recipe, [section, '']);
  return schema === undefined ? undefined : words.get(schema)?.says;
}

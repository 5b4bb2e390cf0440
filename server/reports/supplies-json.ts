// What a plan uses, for programs.

import type { SuppliesJson } from '../../schema/supplies-json.ts';
import { seasonOf } from '../plan/season.ts';
import { moneyText } from '../words/season.ts';
import type { Snapshot } from '../workspace/snapshot.ts';
import { gapsOf, type NameFile } from './plan-json/gaps.ts';
import { supplyJson } from './plan-json/supply.ts';
import { totalCosts } from './supplies-cost.ts';

export function suppliesJson(snapshot: Snapshot, nameFile: NameFile): SuppliesJson {
  const gaps = gapsOf(snapshot, nameFile);
  const { supplies } = seasonOf(snapshot.plan);
  return {
    formatVersion: 1,
    file: nameFile(snapshot.uri),
    supplies: Object.fromEntries([...supplies].map(([name, supply]) => [name, supplyJson(name, supply, gaps)])),
    cost: totalCosts([...supplies.values()]).map(moneyText),
    // Read last: the supplies fill it.
    unknown: [...gaps.all],
  };
}

// What a plan uses, for programs.

import { formatDate } from '../../schema/date.ts';
import { type SuppliesJson, suppliesJsonVersion } from '../../schema/supplies-json.ts';
import { seasonOf } from '../plan/season.ts';
import type { Supply } from '../plan/supplies.ts';
import { cautionsFor } from '../words/cautions.ts';
import { moneyText } from '../words/season.ts';
import type { Snapshot } from '../workspace/snapshot.ts';
import { perBase } from './plan-json/dose.ts';
import { type Gaps, gapsOf, type NameFile, tidy } from './plan-json/gaps.ts';
import { adjusterOf, totalCosts } from './supplies-cost.ts';

export function suppliesJson(snapshot: Snapshot, nameFile: NameFile): SuppliesJson {
  const gaps = gapsOf(snapshot, nameFile);
  const { supplies } = seasonOf(snapshot.plan);
  const listed = Object.fromEntries([...supplies].map(([name, supply]) => [name, supplyJson(name, supply, gaps)]));
  return {
    formatVersion: suppliesJsonVersion,
    file: nameFile(snapshot.uri),
    supplies: listed,
    cost: totalCosts([...supplies.values()]).map(moneyText),
    unknown: gaps.all.map(({ key, wants }) => ({ key, wants })),
  };
}

function supplyJson(name: string, supply: Supply, gaps: Gaps): SuppliesJson['supplies'][string] {
  const { kind, uses, packages, cost, firstPackageEnds, of } = supply;
  const key = ['supplies', name];
  const unit = uses.kind === 'known' && uses.quantity.dimension === 'mass' ? 'g' : 'mL';
  const pack = of.value.package;
  const { hazards, sentences } = cautionsFor(adjusterOf(supply));
  return {
    kind,
    [`uses_${unit}`]: gaps.number([...key, `uses_${unit}`], uses, perBase[unit]),
    ...(pack === undefined
      ? { [`package_${unit}`]: null }
      : pack.dimension === 'mass'
        ? { package_g: tidy(pack.value) }
        : { package_mL: tidy(pack.value * perBase.mL) }),
    packages: gaps.number([...key, 'packages'], packages),
    cost: cost === undefined ? null : moneyText(cost),
    firstPackageEnds: firstPackageEnds === undefined ? null : formatDate(firstPackageEnds),
    cautions: kind === 'adjuster' ? [...hazards.map(({ says }) => says), ...sentences] : [],
  };
}

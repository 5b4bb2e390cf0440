// What a plan uses of a feed or an adjuster, for programs: the amount, the packages, the cost.

import { formatDate } from '../../../schema/date.ts';
import { valueAt } from '../../../schema/place.ts';
import type { SuppliesJson } from '../../../schema/supplies-json.ts';
import type { Supply } from '../../plan/supplies.ts';
import { cautionsFor } from '../../words/cautions.ts';
import { moneyText } from '../../words/season.ts';
import { adjusterOf } from '../supplies-cost.ts';
import { type DoseUnit, perBase } from './dose.ts';
import { type Gaps, tidy } from './gaps.ts';

type SupplyJson = SuppliesJson['supplies'][string];

export function supplyJson(name: string, supply: Supply, gaps: Gaps): SupplyJson {
  const key = ['supplies', name];
  const { uses, packages, firstPackageEnds, kind } = supply;
  const unit = unitOf(supply);
  const { hazards, sentences } = cautionsFor(adjusterOf(supply));
  return {
    kind,
    [`uses_${unit}`]: gaps.number([...key, `uses_${unit}`], uses, perBase[unit]),
    ...packageJson(key, supply, unit, gaps),
    packages: gaps.number([...key, 'packages'], packages),
    cost: costJson([...key, 'cost'], supply, gaps),
    firstPackageEnds: firstPackageEnds === undefined ? null : formatDate(firstPackageEnds),
    cautions: kind === 'adjuster' ? [...hazards.map(({ says }) => says), ...sentences] : [],
  };
}

function packageJson(
  key: readonly string[],
  { of }: Supply,
  unit: DoseUnit,
  gaps: Gaps,
): Pick<SupplyJson, 'package_g' | 'package_mL'> {
  const { package: holds } = of.value;
  if (holds?.dimension === 'mass') return { package_g: tidy(holds.value) };
  if (holds !== undefined) return { package_mL: tidy(holds.value * perBase.mL) };
  const at = valueAt([...of.path, 'package'], of.file);
  return {
    [`package_${unit}`]: gaps.wants([...key, `package_${unit}`], [{ says: `what a package of ${of.name} holds`, at }]),
  };
}

function costJson(key: readonly string[], { cost, packages, of }: Supply, gaps: Gaps): string | null {
  if (cost !== undefined) return moneyText(cost);
  if (packages.kind === 'unknown') return gaps.wants(key, packages.wants);
  return gaps.wants(key, [{ says: `the price of ${of.name}`, at: valueAt([...of.path, 'price'], of.file) }]);
}

/** What it is measured in, known even where its amount is not: what has a density is poured. */
function unitOf({ uses, of }: Supply): DoseUnit {
  if (uses.kind === 'known') return uses.quantity.dimension === 'mass' ? 'g' : 'mL';
  const { density, package: holds } = of.value;
  return density === undefined && holds?.dimension === 'mass' ? 'g' : 'mL';
}

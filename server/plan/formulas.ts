// Every formula by its id: for the reference page, for `explain` and for the laws. A test finds those that are missing.

import { adjustFormulas } from './adjust-formulas.ts';
import { lastMass, lastVolume, restOfMass, restOfVolume } from './adjust-steps.ts';
import { centimetreUnder, netCupLevel, volumeAtLevel } from './container.ts';
import { cropNeed } from './crop-need.ts';
import {
  afterTopUp,
  airGap,
  daysUntilLow,
  drawnDown,
  learnedUse,
  levelOfVolume,
  topUpTo,
  topUpVolume,
} from './day-figures.ts';
import { beyondPrediction, driftInAir } from './difference.ts';
import { doseByMass, doseByVolume, rateOfMass, rateOfVolume, shareOfMassRate, shareOfVolumeRate } from './dose.ts';
import {
  elementFromMass,
  elementFromVolume,
  elementOfIon,
  elementOfOxide,
  elementOfSalt,
  sumOf,
  sumOfShares,
} from './elements.ts';
import { elementAtMassRate, elementAtVolumeRate } from './feed.ts';
import type { FormulaRow } from './figure.ts';
import { belowNetCup, intoNetCup } from './fill.ts';
import { ionGap, ionGapShare } from './ion-gap.ts';
import { amountOfCharge, amountOfMass } from './ions.ts';
import { lifeUsed } from './life-use.ts';
import { loads, perLoadDose, perLoadVolume } from './loads.ts';
import { timesMixed, topUpsTogether } from './mixing.ts';
import { nitrogenTotal } from './nitrogen.ts';
import { errorOfMass, errorOfVolume, measuredMass, measuredVolume } from './pour.ts';
import { fillsTogether, leftOver, sumOfFills, volumeAsNeeded } from './serving.ts';
import { solutionAlkalinity, solutionEC, solutionIonicStrength, solutionPH, solutionSaturation } from './solution.ts';
import { pHAfterAdding, shiftedPH } from './state.ts';
import { learnedShare, reagentMolarity, strengthPerUnit } from './strength.ts';
import { packagesByMass, packagesByVolume, usedMass, usedVolume } from './supplies.ts';
import { containerUse, publishedUse } from './use-rate.ts';
import { carbonForm, unlistedConductivity } from './water.ts';
import { alkalinityOfBicarbonate } from './water-report.ts';

const declared: readonly { readonly row: FormulaRow }[] = [
  shareOfVolumeRate,
  shareOfMassRate,
  doseByVolume,
  doseByMass,
  rateOfVolume,
  rateOfMass,
  loads,
  perLoadVolume,
  perLoadDose.volume,
  perLoadDose.mass,
  measuredVolume,
  measuredMass,
  errorOfVolume,
  errorOfMass,
  elementOfOxide,
  elementOfSalt,
  sumOfShares,
  elementFromVolume,
  elementFromMass,
  elementAtVolumeRate,
  elementAtMassRate,
  nitrogenTotal,
  amountOfMass,
  amountOfCharge,
  elementOfIon,
  sumOf,
  carbonForm,
  unlistedConductivity,
  alkalinityOfBicarbonate,
  solutionPH,
  solutionEC,
  solutionIonicStrength,
  solutionAlkalinity,
  solutionSaturation,
  pHAfterAdding,
  shiftedPH,
  beyondPrediction,
  driftInAir,
  ionGap,
  ionGapShare,
  reagentMolarity,
  strengthPerUnit,
  learnedShare,
  ...adjustFormulas,
  restOfVolume,
  restOfMass,
  lastVolume,
  lastMass,
  netCupLevel,
  volumeAtLevel,
  centimetreUnder,
  intoNetCup,
  belowNetCup,
  fillsTogether,
  sumOfFills,
  volumeAsNeeded,
  leftOver,
  publishedUse,
  containerUse,
  drawnDown,
  learnedUse,
  afterTopUp,
  topUpTo,
  topUpVolume,
  levelOfVolume,
  airGap,
  daysUntilLow,
  cropNeed,
  lifeUsed,
  topUpsTogether,
  timesMixed,
  usedVolume,
  usedMass,
  packagesByVolume,
  packagesByMass,
];

/** In the order of the work: dose, load, measure, elements, pH, container, fill, use, supplies. */
export const formulas: ReadonlyMap<string, FormulaRow> = new Map(declared.map(({ row }) => [row.id, row]));

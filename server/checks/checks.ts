// All checks, complete by type: a row of the catalogue that is `from: 'check'` and has no check here does not compile.

import type { Finding, FindingCode, findings } from '../../schema/findings.ts';
import type { Plan } from '../plan/plan.ts';
import { acidHazard } from './acid-hazard.ts';
import { acidWithBase } from './acid-with-base.ts';
import { adjusterWithoutStrength } from './adjuster-without-strength.ts';
import { adjusterWrongWay } from './adjuster-wrong-way.ts';
import { aimOutOfBand } from './aim-out-of-band.ts';
import { airRootsDrowned } from './air-roots-drowned.ts';
import { analysisOver100 } from './analysis-over-100.ts';
import { batchTooSmall } from './batch-too-small.ts';
import { containerImpossible } from './container-impossible.ts';
import { containerOverfilled } from './container-overfilled.ts';
import { datesReversed } from './dates-reversed.ts';
import { densityMissing } from './density-missing.ts';
import { doseBelowTool } from './dose-below-tool.ts';
import { doseRounded } from './dose-rounded.ts';
import { type Check, type Look, runner } from './each.ts';
import { ecOutOfBand } from './ec-out-of-band.ts';
import { elementOutOfBand } from './element-out-of-band.ts';
import { feedDescribedTwice } from './feed-described-twice.ts';
import { feedWrongStage } from './feed-wrong-stage.ts';
import { fillTooSmallForCrop } from './fill-too-small-for-crop.ts';
import { formulaInvalid } from './formula-invalid.ts';
import { ionTwice } from './ion-twice.ts';
import { keepApart } from './keep-apart.ts';
import { labelRateExceeded } from './label-rate-exceeded.ts';
import { levelAboveRim } from './level-above-rim.ts';
import { levelRisen } from './level-risen.ts';
import { lightGetsIn } from './light-gets-in.ts';
import { logAfterEnd } from './log-after-end.ts';
import { logBeforeStart } from './log-before-start.ts';
import { logECOutOfBand } from './log-ec-out-of-band.ts';
import { logPHOutOfBand } from './log-ph-out-of-band.ts';
import { nameShadowed } from './name-shadowed.ts';
import { nameUnknown } from './name-unknown.ts';
import { nameUnused } from './name-unused.ts';
import { netCupDrowned } from './net-cup-drowned.ts';
import { netCupDry } from './net-cup-dry.ts';
import { netCupTooDeep } from './net-cup-too-deep.ts';
import { netCupTooWide } from './net-cup-too-wide.ts';
import { nitrogenMismatch } from './nitrogen-mismatch.ts';
import { nitrogenUnsplit } from './nitrogen-unsplit.ts';
import { notAVessel } from './not-a-vessel.ts';
import { notComputed } from './not-computed.ts';
import { phDrifts } from './ph-drifts.ts';
import { phOutOfBand } from './ph-out-of-band.ts';
import { precipitates } from './precipitates.ts';
import { readingOutOfOrder } from './reading-out-of-order.ts';
import { runsDry } from './runs-dry.ts';
import { stageRepeated } from './stage-repeated.ts';
import { stageUnfed } from './stage-unfed.ts';
import { temperatureOutside } from './temperature-outside.ts';
import { toolMeasuresNothing } from './tool-measures-nothing.ts';
import { useEmptiesAtOnce } from './use-empties-at-once.ts';
import { vesselOverfilled } from './vessel-overfilled.ts';
import { waterImpossible } from './water-impossible.ts';
import { waterUnbalanced } from './water-unbalanced.ts';

/** The codes that are found by checks of a plan; those of `use` are found while files are followed. */
export type CheckedCode = {
  [C in FindingCode]: (typeof findings)[C]['from'] extends 'check' ? C : never;
}[FindingCode];

const checks = {
  'name-unknown': nameUnknown,
  'name-unused': nameUnused,
  'name-shadowed': nameShadowed,
  'not-computed': notComputed,
  'label-rate-exceeded': labelRateExceeded,
  'dose-below-tool': doseBelowTool,
  'dose-rounded': doseRounded,
  'batch-too-small': batchTooSmall,
  'vessel-overfilled': vesselOverfilled,
  'container-overfilled': containerOverfilled,
  'net-cup-drowned': netCupDrowned,
  'net-cup-dry': netCupDry,
  'net-cup-too-deep': netCupTooDeep,
  'net-cup-too-wide': netCupTooWide,
  'container-impossible': containerImpossible,
  'light-gets-in': lightGetsIn,
  'feed-wrong-stage': feedWrongStage,
  'analysis-over-100': analysisOver100,
  'nitrogen-mismatch': nitrogenMismatch,
  'feed-described-twice': feedDescribedTwice,
  'formula-invalid': formulaInvalid,
  'ion-twice': ionTwice,
  'tool-measures-nothing': toolMeasuresNothing,
  'not-a-vessel': notAVessel,
  'adjuster-without-strength': adjusterWithoutStrength,
  'acid-with-base': acidWithBase,
  'aim-out-of-band': aimOutOfBand,
  'stage-unfed': stageUnfed,
  'stage-repeated': stageRepeated,
  'dates-reversed': datesReversed,
  'log-before-start': logBeforeStart,
  'reading-out-of-order': readingOutOfOrder,
  'acid-hazard': acidHazard,
  'ph-out-of-band': phOutOfBand,
  'ec-out-of-band': ecOutOfBand,
  'element-out-of-band': elementOutOfBand,
  precipitates,
  'keep-apart': keepApart,
  'ph-drifts': phDrifts,
  'adjuster-wrong-way': adjusterWrongWay,
  'water-unbalanced': waterUnbalanced,
  'water-impossible': waterImpossible,
  'temperature-outside': temperatureOutside,
  'nitrogen-unsplit': nitrogenUnsplit,
  'density-missing': densityMissing,
  'air-roots-drowned': airRootsDrowned,
  'runs-dry': runsDry,
  'fill-too-small-for-crop': fillTooSmallForCrop,
  'use-empties-at-once': useEmptiesAtOnce,
  'level-above-rim': levelAboveRim,
  'level-risen': levelRisen,
  'log-after-end': logAfterEnd,
  'log-ph-out-of-band': logPHOutOfBand,
  'log-ec-out-of-band': logECOutOfBand,
} satisfies { readonly [C in CheckedCode]: Check<C> };

/** Every finding of every check. */
export const checkPlan: (plan: Plan) => readonly Finding[] = runner(
  Object.values(checks).flatMap(({ looks }): readonly Look<Finding>[] => looks),
);

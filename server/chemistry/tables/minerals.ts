// The solids a nutrient solution may drop, with their solubility products. Separate from the dissolved forms because a
// solid is only compared with the solution, never dissolved or formed by the solver.

import type { SourceKey } from '../../../schema/sources.ts';
import type { LogK } from './reactions.ts';
import type { Species } from './species.ts';

interface MineralRow {
  readonly formula: string;
  readonly title: string;
  /** What one formula unit dissolves to; protons taken up are negative. Water is left out. */
  readonly gives: Readonly<Partial<Record<Species, number>>>;
  readonly logK: LogK;
  readonly source: SourceKey;
}

export const minerals = {
  gypsum: {
    formula: 'CaSO4·2H2O',
    title: 'calcium sulfate',
    gives: { 'Ca+2': 1, 'SO4-2': 1 },
    logK: { kind: 'analytic', a: 68.2401, c: -3221.51, d: -25.0627 },
    source: 'usgs-phreeqc-database',
  },
  brushite: {
    formula: 'CaHPO4·2H2O',
    title: 'calcium hydrogen phosphate',
    gives: { 'Ca+2': 1, 'HPO4-2': 1 },
    // Gregory, Moreno and Brown (1970) measured -6.59 at 25 °C and less change with temperature; within 0.05 above 18 °C.
    logK: { kind: 'van-t-hoff', at25: -6.62, enthalpy_kJ_per_mol: 8 },
    source: 'minteq-v4',
  },
  struvite: {
    formula: 'MgNH4PO4·6H2O',
    title: 'magnesium ammonium phosphate',
    gives: { 'Mg+2': 1, 'NH4+': 1, 'PO4-3': 1 },
    logK: { kind: 'van-t-hoff', at25: -13.26, enthalpy_kJ_per_mol: 0 },
    source: 'ohlinger-1998',
  },
  calcite: {
    formula: 'CaCO3',
    title: 'calcium carbonate',
    gives: { 'Ca+2': 1, 'CO3-2': 1 },
    logK: { kind: 'analytic', a: -171.9065, b: -0.077993, c: 2839.319, d: 71.595 },
    source: 'plummer-busenberg-1982',
  },
  hydroxyapatite: {
    formula: 'Ca5(PO4)3OH',
    title: 'hydroxyapatite',
    gives: { 'Ca+2': 5, 'HPO4-2': 3, 'H+': -4 },
    logK: { kind: 'van-t-hoff', at25: -3.421, enthalpy_kJ_per_mol: -151.27 },
    source: 'usgs-phreeqc-database',
  },
  silica: {
    formula: 'SiO2',
    title: 'amorphous silica',
    gives: { H4SiO4: 1 },
    logK: { kind: 'van-t-hoff', at25: -2.71, enthalpy_kJ_per_mol: 13.97 },
    source: 'usgs-phreeqc-database',
  },
} as const satisfies Record<string, MineralRow>;

export type Mineral = keyof typeof minerals;

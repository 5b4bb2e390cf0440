// How strongly each dissolved form is held together, as published, with its change with temperature. Separate because
// these rows are the chemistry; the solver only counts.

import type { SourceKey } from '../../../schema/sources.ts';
import type { Species } from './species.ts';

/** log10 of an equilibrium constant against temperature; at 25 °C only, where no enthalpy is known. */
export type LogK =
  /** a + b T + c/T + d log10 T + e/T², T in kelvin. */
  | {
      readonly kind: 'analytic';
      readonly a: number;
      readonly b?: number;
      readonly c?: number;
      readonly d?: number;
      readonly e?: number;
    }
  /** log10 K at 25 °C and the reaction enthalpy in kJ/mol, for van 't Hoff's equation. */
  | { readonly kind: 'van-t-hoff'; readonly at25: number; readonly enthalpy_kJ_per_mol: number };

export interface ReactionRow {
  readonly makes: Species;
  /** Reactants and their numbers; what is set free (a proton) is negative. Water is left out: its activity is one. */
  readonly of: Readonly<Partial<Record<Species, number>>>;
  readonly logK: LogK;
  readonly source: SourceKey;
}

const vanTHoff = (at25: number, enthalpy_kJ_per_mol: number): LogK => ({
  kind: 'van-t-hoff',
  at25,
  enthalpy_kJ_per_mol,
});
const analytic = (a: number, b: number, c: number, d: number, e: number): LogK => ({ kind: 'analytic', a, b, c, d, e });

/** Formation reactions, each from species that stand above it or are themselves components. */
export const reactions: readonly ReactionRow[] = [
  {
    makes: 'OH-',
    of: { 'H+': -1 },
    logK: analytic(-283.971, -0.05069842, 13323, 102.24447, -1119669),
    source: 'plummer-busenberg-1982',
  },
  {
    makes: 'HCO3-',
    of: { 'CO3-2': 1, 'H+': 1 },
    logK: analytic(107.8871, 0.03252849, -5151.79, -38.92561, 563713.9),
    source: 'plummer-busenberg-1982',
  },
  {
    makes: 'CO2',
    of: { 'CO3-2': 1, 'H+': 2 },
    logK: analytic(464.1965, 0.09344813, -26986.16, -165.75951, 2248628.9),
    source: 'plummer-busenberg-1982',
  },
  { makes: 'HPO4-2', of: { 'PO4-3': 1, 'H+': 1 }, logK: vanTHoff(12.346, -14.77), source: 'usgs-phreeqc-database' },
  {
    makes: 'H2PO4-',
    of: { 'HPO4-2': 1, 'H+': 1 },
    logK: analytic(-5.3566, 0.01984, 1979.5, 0, 0),
    source: 'bates-phosphoric',
  },
  {
    makes: 'H3PO4',
    of: { 'H2PO4-': 1, 'H+': 1 },
    logK: analytic(-4.5535, 0.013486, 799.31, 0, 0),
    source: 'bates-phosphoric',
  },
  { makes: 'NH3', of: { 'NH4+': 1, 'H+': -1 }, logK: analytic(-0.09018, 0, -2729.92, 0, 0), source: 'emerson-1975' },
  {
    makes: 'HSO4-',
    of: { 'SO4-2': 1, 'H+': 1 },
    logK: analytic(-56.889, 0.006473, 2307.9, 19.8858, 0),
    source: 'usgs-phreeqc-database',
  },
  { makes: 'B(OH)4-', of: { 'B(OH)3': 1, 'H+': -1 }, logK: vanTHoff(-9.24, 13.49), source: 'usgs-phreeqc-database' },
  { makes: 'H3SiO4-', of: { H4SiO4: 1, 'H+': -1 }, logK: vanTHoff(-9.83, 25.61), source: 'usgs-phreeqc-database' },
  { makes: 'H2SiO4-2', of: { H4SiO4: 1, 'H+': -2 }, logK: vanTHoff(-23, 73.64), source: 'usgs-phreeqc-database' },
  { makes: 'HCit-2', of: { 'Cit-3': 1, 'H+': 1 }, logK: vanTHoff(6.396, 3.38), source: 'goldberg-2002' },
  { makes: 'H2Cit-', of: { 'HCit-2': 1, 'H+': 1 }, logK: vanTHoff(4.761, -2.23), source: 'goldberg-2002' },
  { makes: 'H3Cit', of: { 'H2Cit-': 1, 'H+': 1 }, logK: vanTHoff(3.128, -4.07), source: 'goldberg-2002' },
  { makes: 'HAc', of: { 'Ac-': 1, 'H+': 1 }, logK: vanTHoff(4.756, 0.41), source: 'goldberg-2002' },
  { makes: 'HPht-', of: { 'Pht-2': 1, 'H+': 1 }, logK: vanTHoff(5.408, 2.17), source: 'goldberg-2002' },
  { makes: 'H2Pht', of: { 'HPht-': 1, 'H+': 1 }, logK: vanTHoff(2.95, 2.7), source: 'goldberg-2002' },

  { makes: 'CaOH+', of: { 'Ca+2': 1, 'H+': -1 }, logK: vanTHoff(-12.78, 0), source: 'usgs-phreeqc-database' },
  {
    makes: 'CaCO3',
    of: { 'Ca+2': 1, 'CO3-2': 1 },
    logK: analytic(-1228.732, -0.29944, 35512.75, 485.818, 0),
    source: 'plummer-busenberg-1982',
  },
  {
    makes: 'CaHCO3+',
    of: { 'Ca+2': 1, 'HCO3-': 1 },
    logK: analytic(1209.12, 0.31294, -34765.05, -478.782, 0),
    source: 'plummer-busenberg-1982',
  },
  { makes: 'CaSO4', of: { 'Ca+2': 1, 'SO4-2': 1 }, logK: vanTHoff(2.25, 5.54), source: 'usgs-phreeqc-database' },
  { makes: 'CaHSO4+', of: { 'Ca+2': 1, 'HSO4-': 1 }, logK: vanTHoff(1.08, 0), source: 'usgs-phreeqc-database' },
  { makes: 'CaPO4-', of: { 'Ca+2': 1, 'PO4-3': 1 }, logK: vanTHoff(6.459, 12.97), source: 'usgs-phreeqc-database' },
  { makes: 'CaHPO4', of: { 'Ca+2': 1, 'HPO4-2': 1 }, logK: vanTHoff(2.739, 13.81), source: 'usgs-phreeqc-database' },
  { makes: 'CaH2PO4+', of: { 'Ca+2': 1, 'H2PO4-': 1 }, logK: vanTHoff(1.408, 14.23), source: 'usgs-phreeqc-database' },
  { makes: 'CaCit-', of: { 'Ca+2': 1, 'Cit-3': 1 }, logK: vanTHoff(4.87, 0), source: 'nist-46' },
  { makes: 'CaHCit', of: { 'Ca+2': 1, 'Cit-3': 1, 'H+': 1 }, logK: vanTHoff(9.26, 0), source: 'nist-46' },
  { makes: 'CaAc+', of: { 'Ca+2': 1, 'Ac-': 1 }, logK: vanTHoff(1.18, 4), source: 'from-memory' },

  { makes: 'MgOH+', of: { 'Mg+2': 1, 'H+': -1 }, logK: vanTHoff(-11.44, 66.74), source: 'usgs-phreeqc-database' },
  {
    makes: 'MgCO3',
    of: { 'Mg+2': 1, 'CO3-2': 1 },
    logK: analytic(0.991, 0.00667, 0, 0, 0),
    source: 'usgs-phreeqc-database',
  },
  {
    makes: 'MgHCO3+',
    of: { 'Mg+2': 1, 'HCO3-': 1 },
    logK: analytic(-59.215, 0, 2537.455, 20.92298, 0),
    source: 'usgs-phreeqc-database',
  },
  { makes: 'MgSO4', of: { 'Mg+2': 1, 'SO4-2': 1 }, logK: vanTHoff(2.37, 19.04), source: 'usgs-phreeqc-database' },
  { makes: 'MgPO4-', of: { 'Mg+2': 1, 'PO4-3': 1 }, logK: vanTHoff(6.589, 12.97), source: 'usgs-phreeqc-database' },
  { makes: 'MgHPO4', of: { 'Mg+2': 1, 'HPO4-2': 1 }, logK: vanTHoff(2.87, 13.81), source: 'usgs-phreeqc-database' },
  { makes: 'MgH2PO4+', of: { 'Mg+2': 1, 'H2PO4-': 1 }, logK: vanTHoff(1.513, 14.23), source: 'usgs-phreeqc-database' },
  { makes: 'MgCit-', of: { 'Mg+2': 1, 'Cit-3': 1 }, logK: vanTHoff(4.89, 0), source: 'nist-46' },
  { makes: 'MgHCit', of: { 'Mg+2': 1, 'Cit-3': 1, 'H+': 1 }, logK: vanTHoff(8.91, 0), source: 'nist-46' },
  { makes: 'MgAc+', of: { 'Mg+2': 1, 'Ac-': 1 }, logK: vanTHoff(1.27, 0), source: 'from-memory' },

  {
    makes: 'KSO4-',
    of: { 'K+': 1, 'SO4-2': 1 },
    logK: analytic(3.106, 0, -673.6, 0, 0),
    source: 'usgs-phreeqc-database',
  },
  { makes: 'KHPO4-', of: { 'K+': 1, 'HPO4-2': 1 }, logK: vanTHoff(0.29, 0), source: 'usgs-phreeqc-database' },
  { makes: 'NaCO3-', of: { 'Na+': 1, 'CO3-2': 1 }, logK: vanTHoff(1.27, 37.28), source: 'usgs-phreeqc-database' },
  { makes: 'NaHCO3', of: { 'Na+': 1, 'HCO3-': 1 }, logK: vanTHoff(-0.25, -4.18), source: 'usgs-phreeqc-database' },
  { makes: 'NaSO4-', of: { 'Na+': 1, 'SO4-2': 1 }, logK: vanTHoff(0.7, 4.69), source: 'usgs-phreeqc-database' },
  { makes: 'NaHPO4-', of: { 'Na+': 1, 'HPO4-2': 1 }, logK: vanTHoff(0.29, 0), source: 'usgs-phreeqc-database' },
  { makes: 'NH4SO4-', of: { 'NH4+': 1, 'SO4-2': 1 }, logK: vanTHoff(1.11, 0), source: 'usgs-phreeqc-database' },
];

/** log10 K of a row at a temperature, kelvin. */
export function logKAt(logK: LogK, temperature_K: number): number {
  if (logK.kind === 'van-t-hoff') {
    const gasConstant_kJ = 0.008314462618;
    return logK.at25 + (logK.enthalpy_kJ_per_mol / (Math.LN10 * gasConstant_kJ)) * (1 / 298.15 - 1 / temperature_K);
  }
  const { a, b = 0, c = 0, d = 0, e = 0 } = logK;
  const T = temperature_K;
  return a + b * T + c / T + (d === 0 ? 0 : d * Math.log10(T)) + e / (T * T);
}

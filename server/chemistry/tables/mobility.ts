// How well each ion carries current in pure water. Separate because conductivity is the only reader of these rows.

import type { SourceKey } from '../../../schema/sources.ts';
import type { Species } from './species.ts';

export interface MobilityRow {
  /** Limiting conductivity at 25 °C, S cm² per equivalent. */
  readonly limiting: number;
  /** Power of water's fluidity by which it changes with temperature; 1 is Walden's rule. */
  readonly fluidityPower: number;
  readonly source: SourceKey;
}

const row = (limiting: number, fluidityPower: number, source: SourceKey): MobilityRow => ({
  limiting,
  fluidityPower,
  source,
});
const handbook = (limiting: number, fluidityPower = 0.9): MobilityRow =>
  row(limiting, fluidityPower, 'crc-ionic-conductivity');
/** From a diffusion coefficient by Nernst and Einstein: 37.55 S cm²/eq for each 1e-9 m²/s and charge. */
const diffusion = (limiting: number): MobilityRow => row(limiting, 1, 'usgs-phreeqc-database');
/** Not measured: an ion of like size stands in. Such ions are few in a nutrient solution. */
const guessed = (limiting: number): MobilityRow => row(limiting, 1, 'from-memory');

/** Charged species only; the powers follow limiting conductivities at 0, 18 and 35 °C (Robinson and Stokes 1959, from memory). */
export const mobility: Readonly<Partial<Record<Species, MobilityRow>>> = {
  'H+': handbook(349.65, 0.64),
  'OH-': handbook(198, 0.75),
  'K+': handbook(73.48, 0.85),
  'Na+': handbook(50.08, 0.94),
  'NH4+': handbook(73.5, 0.86),
  'Ca+2': handbook(59.47, 0.94),
  'Mg+2': handbook(53, 0.93),
  'Cl-': handbook(76.31, 0.885),
  'NO3-': handbook(71.42, 0.83),
  'SO4-2': handbook(80, 0.945),
  'HCO3-': handbook(44.5),
  'CO3-2': handbook(69.3),
  'H2PO4-': handbook(33),
  'HPO4-2': handbook(57),
  'PO4-3': handbook(69),
  'HSO4-': handbook(50),
  'Cit-3': handbook(70.2),
  'Ac-': handbook(40.9),
  'Pht-2': handbook(52.3),
  'CaHCO3+': diffusion(19),
  'MgHCO3+': diffusion(17.9),
  'KSO4-': diffusion(28),
  'NaSO4-': diffusion(23.2),
  'NaCO3-': diffusion(22),
  'H2Cit-': guessed(30),
  'HCit-2': guessed(50),
  'HPht-': guessed(35),
  'B(OH)4-': guessed(35),
  'H3SiO4-': guessed(30),
  'H2SiO4-2': guessed(45),
  'CaOH+': guessed(30),
  'CaHSO4+': guessed(19),
  'CaPO4-': guessed(19),
  'CaH2PO4+': guessed(19),
  'CaCit-': guessed(25),
  'CaAc+': guessed(20),
  'MgOH+': guessed(30),
  'MgPO4-': guessed(18),
  'MgH2PO4+': guessed(18),
  'MgCit-': guessed(25),
  'MgAc+': guessed(20),
  'KHPO4-': guessed(28),
  'NaHPO4-': guessed(23),
  'NH4SO4-': guessed(28),
};

/** For ions whose kind is not known (`unknownCharge`): the middle of common ions, S cm² per equivalent. */
export const unknownIon: MobilityRow = guessed(50);

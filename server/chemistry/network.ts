// The reaction table turned into arrays the solver can run through: each species as so many protons, one ligand and one
// cation. Separate because it is worked out once, and the solver reads it thousands of times.

import { debyeHueckelSlope } from './activity.ts';
import type { Solvent } from './solvent.ts';
import { solventAt } from './solvent.ts';
import { gases } from './tables/gases.ts';
import { logKAt, reactions } from './tables/reactions.ts';
import type { Component, Species } from './tables/species.ts';
import { componentKeys, components, isSpecies, species, speciesKeys } from './tables/species.ts';

/** A species written in components: protons taken up (negative: given off), at most one cation and one ligand. */
export interface Member {
  readonly key: Species;
  readonly charge: number;
  readonly protons: number;
  /** Place in `cations`, or -1. */
  readonly cation: number;
  /** Place in `ligands`, or -1. */
  readonly ligand: number;
  /** What its conditional constant is multiplied by: gamma of charge one to this power. */
  readonly gammaPower: number;
  /** And gamma of the uncharged to this power. */
  readonly neutralPower: number;
  /** Alkalinity it carries, equivalents a mole. */
  readonly alkalinity: number;
  /** Rows of the reaction table that lead to it, as often as they count. */
  readonly rows: readonly number[];
}

export const cations: readonly Component[] = componentKeys.filter(key => components[key].role === 'cation');
export const ligands: readonly Component[] = componentKeys.filter(key => components[key].role === 'ligand');
export const inerts: readonly Component[] = componentKeys.filter(key => components[key].role === 'inert');

/** All species of the network but the proton and the inert ions. */
export const members: readonly Member[] = buildMembers();

/** Everything about a temperature that the solver needs. */
export interface Medium {
  readonly temperature_C: number;
  readonly solvent: Solvent;
  readonly slope: number;
  /** Formation constant from components, for each member. */
  readonly constants: Float64Array;
  /** Activity of carbonate in balance with air is this over the square of the proton's activity. */
  readonly carbonateInAir: (pressure_atm: number) => number;
}

/** Constants at a temperature; the tables hold between 0 and about 60 °C. Few temperatures are asked for, again and again. */
export function mediumAt(temperature_C: number): Medium {
  const known = media.get(temperature_C);
  if (known !== undefined) return known;
  if (media.size >= mostMedia) media.clear();
  const medium = makeMedium(temperature_C);
  media.set(temperature_C, medium);
  return medium;
}

const media = new Map<number, Medium>();
const mostMedia = 100;

function makeMedium(temperature_C: number): Medium {
  const solvent = solventAt(temperature_C);
  const T = solvent.temperature_K;
  const logKs = reactions.map(row => logKAt(row.logK, T));
  const constants = new Float64Array(members.length);
  members.forEach((member, i) => {
    constants[i] = 10 ** member.rows.reduce((sum, row) => sum + (logKs[row] ?? 0), 0);
  });
  const co2 = constants[members.findIndex(member => member.key === 'CO2')] ?? 1;
  const henry = 10 ** logKAt(gases.CO2.logHenry, T);
  return {
    temperature_C,
    solvent,
    slope: debyeHueckelSlope(solvent),
    constants,
    carbonateInAir: pressure_atm => (pressure_atm * henry) / co2,
  };
}

function buildMembers(): Member[] {
  const asComponent = new Map<Species, Component>();
  for (const key of componentKeys) asComponent.set(speciesOf(key), key);
  const rowOf = new Map(reactions.map((row, i) => [row.makes, i]));
  const inertSpecies = new Set(inerts.map(speciesOf));
  return speciesKeys
    .filter(key => key !== 'H+' && !inertSpecies.has(key))
    .map((key): Member => {
      let protons = 0;
      let cation = -1;
      let ligand = -1;
      const rows: number[] = [];
      const take = (part: Species, times: number): void => {
        const component = asComponent.get(part);
        const row = rowOf.get(part);
        if (part === 'H+') protons += times;
        else if (component !== undefined) {
          if (components[component].role === 'cation') cation = cations.indexOf(component);
          else ligand = ligands.indexOf(component);
        } else if (row !== undefined) {
          rows.push(row);
          for (const [of, number = 0] of Object.entries(reactions[row]?.of ?? {}))
            if (isSpecies(of)) take(of, number * times);
        } else throw new Error(`The reaction table does not make ${part}.`);
      };
      take(key, 1);
      const parts = [cations[cation], ligands[ligand]].filter(part => part !== undefined).map(part => components[part]);
      const charge = species[key].charge;
      return {
        key,
        charge,
        protons,
        cation,
        ligand,
        rows,
        // The proton enters by its activity, so it has no coefficient here.
        gammaPower: parts.reduce((sum, part) => sum + part.charge ** 2, 0) - charge ** 2,
        neutralPower: parts.filter(part => part.charge === 0).length - (charge === 0 ? 1 : 0),
        alkalinity: parts.reduce((sum, part) => sum + part.alkalinity, 0) - protons,
      };
    });
}

function speciesOf(key: Component): Species {
  const name = components[key].species;
  if (!isSpecies(name)) throw new Error(`${name} is no species.`);
  return name;
}

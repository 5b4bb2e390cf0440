// What a compound becomes in water: the solver's components, the ions it does not follow, and the charge they carry.
// Separate from reading the formula because the same atoms can be different ions (nitrate, ammonium, urea).

import type { Compound, Token } from './compound.ts';
import type { ElementCounts, ElementSymbol } from './tables/elements.ts';
import { elementEntries } from './tables/elements.ts';
import type { Component } from './tables/species.ts';
import { components, isComponent } from './tables/species.ts';
import type { Totals } from './totals.ts';

export interface DissolvedSalt {
  /** Components per mole of the compound; `unknownCharge` is the charge of `other`, so that the sum is neutral. */
  readonly totals: Totals;
  /** Atoms of ions the solver does not follow (iron, manganese, chelates), and the charge that neutrality leaves them. */
  readonly other: { readonly elements: ElementCounts; readonly charge: number };
  /** Protons it sets free as it dissolves to the components' own forms; negative: hydroxide. */
  readonly protons: number;
  /** How sure the reading is: `ions` where every atom is accounted for, `in-part` where `other` holds some. */
  readonly kind: 'ions' | 'in-part' | 'inconsistent';
}

/**
 * Nitrogen and carbon are told apart by how they are written; all else by the atoms. Hydrogen and oxygen left after
 * the components are water and protons, which also reads oxides, hydroxides, acids, borates and silicates rightly.
 * `inconsistent`: the atoms are ions we know, but their charges do not add up (nitrites, sulfides): not to be trusted.
 */
export function dissolve(compound: Compound): DissolvedSalt {
  const left = new Map<ElementSymbol, number>(elementEntries(compound.elements));
  const amounts: Partial<Record<Component, number>> = {};
  const take = (component: Component, moles: number): void => {
    if (moles <= 0) return;
    amounts[component] = (amounts[component] ?? 0) + moles;
    for (const [symbol, count] of elementEntries(components[component].elements))
      left.set(symbol, (left.get(symbol) ?? 0) - count * moles);
  };
  for (const part of compound.parts) takeWritten(part.tokens, part.count, take);
  for (const [symbol, component] of singles) take(component, left.get(symbol) ?? 0);

  const other: Partial<Record<ElementSymbol, number>> = {};
  for (const [symbol, count] of left) if (symbol !== 'H' && symbol !== 'O' && count > 1e-9) other[symbol] = count;
  // Molybdenum is an oxyanion on every label; its oxygen would else be read as base.
  if (other.Mo !== undefined) left.set('O', (left.get('O') ?? 0) - 4 * other.Mo);
  const hasChelate = other.C !== undefined || other.N !== undefined;
  let protons = 0;
  if (hasChelate) {
    for (const symbol of ['H', 'O'] as const) if ((left.get(symbol) ?? 0) > 0) other[symbol] = left.get(symbol) ?? 0;
  } else protons = (left.get('H') ?? 0) - 2 * (left.get('O') ?? 0);

  const known = Object.entries(amounts).reduce(
    (sum, [key, moles]) => sum + (isComponent(key) ? components[key].charge * moles : 0),
    protons,
  );
  const charge = Math.abs(known) < 1e-9 ? 0 : -known;
  const isPartial = Object.keys(other).length > 0;
  if (!isPartial && charge !== 0)
    return { kind: 'inconsistent', totals: amounts, other: { elements: {}, charge }, protons };
  return {
    kind: isPartial ? 'in-part' : 'ions',
    totals: charge === 0 ? amounts : { ...amounts, unknownCharge: charge },
    other: { elements: other, charge },
    protons,
  };
}

/** Elements that, outside the groups below, can only be one component in a fertilizer. */
const singles: readonly (readonly [ElementSymbol, Component])[] = [
  ['Ca', 'Ca'],
  ['Mg', 'Mg'],
  ['K', 'K'],
  ['Na', 'Na'],
  ['Cl', 'Cl'],
  ['S', 'SO4'],
  ['P', 'PO4'],
  ['B', 'B'],
  ['Si', 'Si'],
];

/** Groups that hold nitrogen or carbon, as they are written; the longer ones first. */
const written: readonly { readonly pattern: RegExp; readonly component: Component }[] = [
  { pattern: /^C6H[5-8]O7(?![0-9])/, component: 'citrate' },
  { pattern: /^(?:C8H[4-6]O4|C6H4\(COO[HK]?\)2)(?![0-9])/, component: 'phthalate' },
  { pattern: /^(?:C2H[34]O2|CH3COO|CH3CO2)(?![0-9])/, component: 'acetate' },
  { pattern: /^(?:CO\(NH2\)2|\(NH2\)2CO|CH4N2O|CON2H4)(?![0-9])/, component: 'urea' },
  { pattern: /^CO3(?![0-9])/, component: 'CO3' },
  { pattern: /^NO3(?![0-9])/, component: 'NO3' },
  { pattern: /^N2O6(?![0-9])/, component: 'NO3' },
  { pattern: /^NH[34](?![0-9])/, component: 'NH4' },
];

/** Finds written groups in a run of tokens and inside its brackets; `times` multiplies them. */
function takeWritten(
  tokens: readonly Token[],
  times: number,
  take: (component: Component, moles: number) => void,
): void {
  for (let i = 0; i < tokens.length; i += 1) {
    const rest = tokens.slice(i).map(spell);
    const text = rest.join('');
    const match = written.find(({ pattern }) => pattern.test(text));
    const length = match?.pattern.exec(text)?.[0].length;
    if (match !== undefined && length !== undefined) {
      take(match.component, times * (text.startsWith('N2O6') ? 2 : 1));
      let covered = 0;
      for (; covered < length && i < tokens.length; i += 1) covered += rest.shift()?.length ?? 0;
      i -= 1;
      continue;
    }
    const token = tokens[i];
    if (token?.kind === 'group') takeWritten(token.tokens, times * token.count, take);
  }
}

function spell(token: Token): string {
  const count = token.count === 1 ? '' : String(token.count);
  return token.kind === 'atom' ? `${token.symbol}${count}` : `(${token.tokens.map(spell).join('')})${count}`;
}

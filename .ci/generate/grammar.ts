// The TextMate grammar, made from the rows of schema/units.ts so that every unit that is read is coloured too. YAML's own
// grammar is included whole: other extensions replace it, and parts of it may then be gone.
import { unitRows } from '../../schema/units.ts';

const number = String.raw`-?\d+(?:\.\d+)?`;
/** No number begins inside a word or behind a decimal point: `K2O`, `1.5`. */
const begins = String.raw`(?<![\w.])`;

/** The text of client/language/grow-recipe.tmLanguage.json. */
export function grammarText(): string {
  const amount = { name: 'constant.numeric.amount.grow-recipe' };
  const dots = { name: 'keyword.operator.range.grow-recipe' };
  const unit = { name: 'keyword.other.unit.grow-recipe' };
  const rules = {
    elementKey: {
      comment: 'Keys that YAML 1.1 reads as yes and no: N is nitrogen here.',
      match: String.raw`(?<=^|[\s{,])([NnYy]|[Nn]o|NO|[Yy]es|YES|[Oo]n|ON|[Oo]ff|OFF)(?=\s*:(?:\s|$))`,
      name: 'entity.name.tag.yaml',
    },
    date: {
      match: String.raw`(?<![\w.-])\d{4}-\d{2}-\d{2}(?![\w-])`,
      name: 'constant.numeric.date.grow-recipe',
    },
    quantity: {
      comment: 'The units are spelt out, since a title may hold a number before an ordinary word.',
      match: `${begins}(${number})(?:(\\s*\\.\\.\\s*)(${number}))?(?:(\\s*)(${units()}))(?![\\p{L}\\p{N}_/·])`,
      captures: { 1: amount, 2: dots, 3: amount, 4: unit, 5: unit },
    },
    range: {
      match: String.raw`${begins}(${number})(\.\.)(${number})(?![\w.])`,
      captures: { 1: amount, 2: dots, 3: amount },
    },
  };
  const grammar = {
    comment: 'Generated from schema/units.ts by .ci/generate/grammar.ts.',
    name: 'Grow Recipe',
    scopeName: 'source.grow-recipe',
    patterns: [{ include: 'source.yaml' }],
    injections: {
      'L:source.grow-recipe -comment': { patterns: Object.keys(rules).map(rule => ({ include: `#${rule}` })) },
    },
    repository: rules,
  };
  return `${JSON.stringify(grammar, null, 2)}\n`;
}

/** One unit, or one divided by another: `mL`, `mL/L`, `mg/L CaCO3`. */
function units(): string {
  const spellings = unitRows
    .flatMap(([symbol, row]) => [symbol, ...row.aliases])
    // The marks for feet and inches are quotation marks to YAML.
    .filter(spelling => !/^["'″”′’]$/u.test(spelling))
    // The longest first: `mg/L CaCO3` before `mg`.
    .sort((a, b) => b.length - a.length || (a < b ? -1 : 1))
    .map(spelling => spelling.replace(/[.*+?^${}()|[\]\\]/g, '\\$&').replaceAll(' ', '\\s+'));
  const one = `(?:${spellings.join('|')})`;
  return `${one}(?:/${one})?(?:\\s+of\\s+label\\b)?`;
}

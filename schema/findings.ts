// The catalogue of findings: one row per code. Types, messages, documentation pages, editor severities and tests come from it.

import { type Dimension, dimensions } from './dimensions.ts';
import type { Edit } from './edit.ts';
import type { Place } from './place.ts';
import type { Quantity } from './quantity.ts';
import type { SectionName } from './section-names.ts';
import type { SourceKey } from './sources.ts';

export type Severity = 'error' | 'warning' | 'information' | 'hint';

/** How a message shows amounts: in the units the recipe's reader asked for. */
export interface Show {
  amount(quantity: Quantity): string;
}

interface Row<P> {
  readonly severity: Severity;
  /** Who finds it: the syntax of the file, the reading of its values, the following of `use`, or a check of what they mean. */
  readonly from: 'syntax' | 'reading' | 'use' | 'check';
  readonly title: string;
  /** What is wrong, said with the case's own names and amounts. */
  readonly what: (params: P, show: Show) => string;
  readonly why: string;
  readonly fix: string;
  readonly sources: readonly SourceKey[];
  /** A sentence for the hurt it may do, where it may. */
  readonly caution?: string;
}

function row<P>(is: Row<P>): Row<P> {
  return is;
}

const list = (words: readonly string[]): string =>
  words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} or ${words[words.length - 1] ?? ''}`;
/** 20,000 for 20000. */
const grouped = (number: number): string => String(number).replace(/(?<=\d)(?=(?:\d{3})+$)/gu, ',');
const quoted = (words: readonly string[]): string => list(words.map(word => `\`${word}\``));
const titled = (wanted: readonly Dimension[]): string => list(wanted.map(dimension => dimensions[dimension].title));
const orNearest = (nearest: string | undefined): string =>
  nearest === undefined ? '' : ` Did you mean \`${nearest}\`?`;

export const findings = {
  'yaml-invalid': row<{ reason: string }>({
    severity: 'error',
    from: 'syntax',
    title: 'The text is not valid YAML here',
    what: ({ reason }) => `This is not YAML: ${reason}${reason.endsWith('?') ? '' : '.'}`,
    why: 'What stands in the broken entry cannot be read, so nothing in it is computed. Other entries are not affected.',
    fix: 'Close the quote, bracket or brace that is open, or mend the indentation.',
    sources: ['yaml-1.2'],
  }),
  'tab-indent': row<object>({
    severity: 'error',
    from: 'syntax',
    title: 'A tab indents this line',
    what: () => 'A tab stands in the indentation; YAML indents by spaces only.',
    why: 'Editors show tabs at different widths, so YAML does not let them decide what belongs to what.',
    fix: 'Put two spaces in place of the tab.',
    sources: ['yaml-1.2'],
  }),
  'conflict-marker': row<{ marker: string }>({
    severity: 'error',
    from: 'syntax',
    title: 'A merge conflict is not resolved',
    what: ({ marker }) =>
      `The line \`${marker}\` was left by a merge: the file holds two versions of the lines around it.`,
    why: 'Both versions stand in the file, so doses from either could be shown.',
    fix: 'Keep the version you want and take out the marker lines.',
    sources: ['tidemark-design'],
  }),
  'second-document': row<object>({
    severity: 'error',
    from: 'syntax',
    title: 'A second document begins here',
    what: () => 'A file holds one recipe; what follows this mark is not read.',
    why: 'Names are looked up within one recipe, so a second document in the file would be invisible.',
    fix: 'Move what follows to a file of its own, and borrow from it by `use`.',
    sources: ['tidemark-design'],
  }),
  'alias-limit': row<{ limit: number }>({
    severity: 'error',
    from: 'syntax',
    title: 'Aliases unfold to too much',
    what: ({ limit }) => `The aliases here unfold to more than ${grouped(limit)} values, so they are left out.`,
    why: 'A few lines of nested aliases can unfold to millions of values.',
    fix: 'Write the values out, or nest fewer aliases.',
    sources: ['tidemark-design'],
  }),
  'file-too-large': row<{ limit: number }>({
    severity: 'error',
    from: 'syntax',
    title: 'The file is too large to read',
    what: ({ limit }) =>
      `The file is longer than the ${grouped(limit)} characters that Tidemark reads, so nothing in it is computed.`,
    why: 'Answers at each key press would have to wait, and a file of this size is most often no recipe.',
    fix: 'Split the recipe into files, and borrow from them by `use`.',
    sources: ['tidemark-design'],
  }),
  'not-yaml': row<object>({
    severity: 'error',
    from: 'syntax',
    title: 'This is not a text file',
    what: () => 'This is not text that Tidemark can read, so nothing in the file is computed.',
    why: 'A recipe is text in UTF-8. A picture, an archive or a text in another encoding says nothing as one.',
    fix: 'Save the recipe as UTF-8 text, or name the right file.',
    sources: ['tidemark-design'],
  }),
  'name-duplicate': row<{ name: string }>({
    severity: 'error',
    from: 'syntax',
    title: 'A key stands twice',
    what: ({ name }) =>
      name === ''
        ? 'A second entry without a name stands here; only the first is read.'
        : `\`${name}\` stands here a second time; only the first is read.`,
    why: 'Two entries of one name cannot both be meant: a dose may be taken from the wrong one.',
    fix: 'Give one of them another name, or take it out.',
    sources: ['yaml-1.2'],
  }),
  'key-unknown': row<{ key: string; inside: string; nearest?: string | undefined }>({
    severity: 'error',
    from: 'reading',
    title: 'The format has no such key',
    what: ({ key, inside, nearest }) => `${inside} has no key \`${key}\`.${orNearest(nearest)}`,
    why: 'A misspelt key would be left out of the reckoning without a word.',
    fix: 'Correct the spelling. Begin the key with `x-` to keep a note of your own.',
    sources: ['tidemark-design'],
  }),
  'value-invalid': row<{ reason: string; suggestion?: string | undefined }>({
    severity: 'error',
    from: 'reading',
    title: 'The value cannot be read',
    what: ({ reason, suggestion }) => (suggestion === undefined ? reason : `${reason} Write \`${suggestion}\`?`),
    why: 'What is not understood is not computed; a guess could be a wrong dose.',
    fix: 'Write the value in the form that the key takes.',
    sources: ['tidemark-design'],
  }),
  'value-missing': row<{ key: string; inside: string; needed: string }>({
    severity: 'error',
    from: 'reading',
    title: 'A value is missing',
    what: ({ key, inside, needed }) => `${inside} needs \`${key}\`: ${needed}.`,
    why: 'Everything that depends on it stays unknown.',
    fix: 'Add the key with its value.',
    sources: ['tidemark-design'],
  }),
  'unit-missing': row<{ number: string; wanted: readonly Dimension[]; units: readonly string[] }>({
    severity: 'error',
    from: 'reading',
    title: 'A number without its unit',
    what: ({ number, wanted, units }) =>
      `\`${number}\` has no unit; ${titled(wanted)} belongs here, in ${list(units)}.`,
    why: 'Twenty litres and twenty gallons are not the same batch: a unit is never guessed.',
    fix: 'Write the unit behind the number.',
    sources: ['tidemark-design'],
  }),
  'unit-unknown': row<{ unit: string; nearest?: string | undefined }>({
    severity: 'error',
    from: 'reading',
    title: 'No such unit',
    what: ({ unit, nearest }) => `\`${unit}\` is not a unit that Tidemark knows.${orNearest(nearest)}`,
    why: 'An amount in an unknown unit cannot be computed.',
    fix: 'Write one of the units of the format reference.',
    sources: ['nist-sp-811'],
  }),
  'unit-mismatch': row<{ unit: string; got: Dimension; wanted: readonly Dimension[] }>({
    severity: 'error',
    from: 'reading',
    title: 'The unit measures something else',
    what: ({ unit, got, wanted }) =>
      `\`${unit}\` is the unit of ${dimensions[got].title}; ${titled(wanted)} belongs here.`,
    why: 'A value of the wrong kind would be added to what it cannot be added to.',
    fix: 'Write a unit of the kind that the key takes.',
    sources: ['nist-sp-811'],
  }),
  'name-invalid': row<{ name: string; suggestion?: string | undefined }>({
    severity: 'error',
    from: 'reading',
    title: 'Not a name that others can refer to',
    what: ({ name, suggestion }) =>
      `${name === '' ? 'The name is missing' : `\`${name}\` is not a name`}: names are small letters, digits and hyphens, and begin with a letter.${
        suggestion === undefined ? '' : ` Write \`${suggestion}\`?`
      }`,
    why: 'Names are typed in other places and other files; one form keeps them findable.',
    fix: 'Spell the name with small letters, digits and hyphens.',
    sources: ['tidemark-design'],
  }),
  'name-unknown': row<{
    name: string;
    kind: string;
    nearest?: string | undefined;
    /** The sections in which it was looked up. */
    among: readonly SectionName[];
  }>({
    severity: 'error',
    from: 'check',
    title: 'Nothing has this name',
    what: ({ name, kind, nearest }) => `There is no ${kind} named \`${name}\`.${orNearest(nearest)}`,
    why: 'What depends on it stays unknown.',
    fix: 'Correct the name, add the entry, or borrow the file that has it by `use`.',
    sources: ['tidemark-design'],
  }),
  'name-unused': row<{ name: string; kind: string }>({
    severity: 'hint',
    from: 'check',
    title: 'Nothing uses this entry',
    what: ({ name, kind }) => `Nothing uses the ${kind} \`${name}\`.`,
    why: 'It may be a leftover, or the place that should use it names another.',
    fix: 'Use it, or take it out.',
    sources: ['tidemark-design'],
  }),
  'name-shadowed': row<{ name: string; kind: string; file: string; used: string }>({
    severity: 'information',
    from: 'check',
    title: 'A name that stands in two files',
    what: ({ name, kind, file, used }) => `\`${file}\` has a ${kind} \`${name}\` too; the one of ${used} is used.`,
    why: 'Two entries of one name are easily taken for each other.',
    fix: 'Give one of them another name, or take out the one that is not meant.',
    sources: ['tidemark-design'],
  }),
  'version-unsupported': row<{ version: string }>({
    severity: 'error',
    from: 'reading',
    title: 'A format version that this Tidemark does not read',
    what: ({ version }) => `The file says \`recipe: ${version}\`; this Tidemark reads version 1.`,
    why: 'A later version may mean other things by the same words.',
    fix: 'Write `recipe: 1`, or use a Tidemark that reads the version.',
    sources: ['tidemark-design'],
  }),
  cycle: row<{ chain: readonly string[] }>({
    severity: 'error',
    from: 'use',
    title: 'Files that use each other in a circle',
    what: ({ chain }) => `This file is used by what it uses: ${chain.join(' → ')}.`,
    why: 'What is borrowed must stand somewhere first.',
    fix: 'Move what both need to a third file, and let both use that.',
    sources: ['tidemark-design'],
  }),
  'file-missing': row<{ file: string; reason: 'absent' | 'unreadable' | 'outside' | 'not-relative' }>({
    severity: 'error',
    from: 'use',
    title: 'A used file cannot be read',
    what: ({ file, reason }) =>
      ({
        absent: `There is no file \`${file}\` beside this one.`,
        unreadable: `\`${file}\` is there but cannot be read.`,
        outside: `\`${file}\` lies outside the folder that is open; only files inside it are read.`,
        'not-relative': `\`${file}\` is not a relative path: write it from this file’s folder, as in \`./shelf.grow.yaml\`.`,
      })[reason],
    why: 'The names that this recipe borrows from it stay unknown.',
    fix: 'Correct the path, or bring the file into the folder.',
    sources: ['tidemark-design'],
  }),
  'not-computed': row<{ what: string; wants: readonly string[] }>({
    severity: 'information',
    from: 'check',
    title: 'Not computed, because something is missing',
    what: ({ what, wants }) => `Not computed: ${what}. What is missing is ${wants.join(', and ')}.`,
    why: 'An unknown amount is said to be unknown, never guessed.',
    fix: 'Write the missing value where you know it.',
    sources: ['tidemark-design'],
  }),
  'label-rate-exceeded': row<{ feed: string; rate: Quantity; label: Quantity; percent: number }>({
    severity: 'warning',
    from: 'check',
    title: 'More feed than the label says',
    what: ({ feed, rate, label, percent }, show) =>
      `${show.amount(rate)} of \`${feed}\` is ${percent} % of the label’s ${show.amount(label)}.`,
    why: 'The label is the maker’s limit for non-circulating use; too strong a solution burns roots and leaf edges.',
    fix: 'Feed at the label rate or below it; the label overrules the recipe.',
    sources: ['common-practice'],
  }),
  'dose-below-tool': row<{ feed: string; dose: Quantity; smallest: Quantity; tool: string }>({
    severity: 'warning',
    from: 'check',
    title: 'A dose too small to measure',
    what: ({ feed, dose, smallest, tool }, show) =>
      `${show.amount(dose)} of \`${feed}\` is less than your finest tool measures: ${show.amount(smallest)} with \`${tool}\`.`,
    why: 'A dose below the smallest mark is a guess; its error can be larger than the dose.',
    fix: 'Mix a larger batch, dilute the feed first, or list a finer tool.',
    sources: ['common-practice'],
  }),
  'dose-rounded': row<{ feed: string; exact: Quantity; measured: Quantity; percent: number }>({
    severity: 'information',
    from: 'check',
    title: 'Rounding to the tools changes this dose',
    what: ({ feed, exact, measured, percent }, show) =>
      `The tools measure ${show.amount(measured)} of \`${feed}\` in place of ${show.amount(exact)}, ${Math.abs(percent)} % ${
        percent > 0 ? 'more' : 'less'
      }.`,
    why: 'The elements and the pH follow what is poured, not what was planned.',
    fix: 'Choose a volume that gives a dose on the marks, or list a finer tool.',
    sources: ['common-practice'],
  }),
  'batch-too-small': row<{ batch: string; volume: Quantity; needed: Quantity; shortfall: Quantity }>({
    severity: 'error',
    from: 'check',
    title: 'The batch does not cover its fills',
    what: ({ batch, volume, needed, shortfall }, show) =>
      `\`${batch}\` makes ${show.amount(volume)}, and the fills it serves take ${show.amount(needed)}: ${show.amount(
        shortfall,
      )} short.`,
    why: 'The last container would start short, with its plug out of reach of the solution.',
    fix: 'Mix at least what the fills take, or write `volume: as needed`.',
    sources: ['tidemark-design'],
  }),
  'vessel-overfilled': row<{ tool: string; holds: Quantity; fills: Quantity }>({
    severity: 'warning',
    from: 'check',
    title: 'The mixing vessel is filled too full',
    what: ({ tool, holds, fills }, show) =>
      `\`${tool}\` holds ${show.amount(holds)}; filling it to ${show.amount(fills)} leaves no room to stir.`,
    why: 'A full vessel spills when stirred, and a spill is a lost dose and, with acid, a burn.',
    fix: 'Fill to 95 % or less, and mix in more loads.',
    sources: ['common-practice'],
    caution: 'Acids and bases burn: leave room to stir.',
  }),
  'container-overfilled': row<{ planting: string; level: Quantity; rim: Quantity }>({
    severity: 'error',
    from: 'check',
    title: 'Filled above the rim',
    what: ({ planting, level, rim }, show) =>
      `The fill of \`${planting}\` stands at ${show.amount(level)}; the container ends at ${show.amount(rim)}.`,
    why: 'It would run over before the level is reached.',
    fix: 'Fill to the net cup, or a few millimetres into it.',
    sources: ['tidemark-design'],
  }),
  'net-cup-drowned': row<{ planting: string; into: Quantity; depth: Quantity }>({
    severity: 'warning',
    from: 'check',
    title: 'The fill stands deep in the net cup',
    what: ({ planting, into, depth }, show) =>
      `The fill of \`${planting}\` reaches ${show.amount(into)} into a net cup ${show.amount(depth)} deep.`,
    why: 'A plug that stands in solution gets no air, and its stem rots. Published methods wet the lower 1.3 to 3 cm at most.',
    fix: 'Fill to the bottom of the net cup, or a few millimetres into it while no root hangs out.',
    sources: ['kratky-2010', 'kratky-2009'],
  }),
  'net-cup-dry': row<{ planting: string; below: Quantity }>({
    severity: 'warning',
    from: 'check',
    title: 'The fill does not reach the net cup',
    what: ({ planting, below }, show) =>
      `The fill of \`${planting}\` ends ${show.amount(below)} below the net cup, so the plug stays dry.`,
    why: 'Until roots hang out of the cup, only solution that touches it waters the plant.',
    fix: 'Fill to the bottom of the net cup, or a few millimetres into it.',
    sources: ['kratky-2010'],
  }),
  'net-cup-too-deep': row<{ container: string; depth: Quantity; height: Quantity }>({
    severity: 'error',
    from: 'check',
    title: 'The net cup reaches the floor of its container',
    what: ({ container, depth, height }, show) =>
      `The net cup of \`${container}\` is ${show.amount(depth)} deep, and the container is ${show.amount(height)} high inside.`,
    why: 'The cup would stand on the floor, with no solution below it, so no fill can be computed.',
    fix: 'Measure both again, the cup from the rim down, and correct the one that is wrong.',
    sources: ['tidemark-design'],
  }),
  'net-cup-too-wide': row<{ container: string; cups: number; top: Quantity }>({
    severity: 'error',
    from: 'check',
    title: 'The net cups do not fit into the container',
    what: ({ container, cups, top }, show) =>
      cups === 1
        ? `The net cup of \`${container}\` is ${show.amount(top)} wide at its top, and the container is narrower than the cup.`
        : `${cups} net cups, each ${show.amount(top)} wide at its top, do not fit into \`${container}\`.`,
    why: 'A cup that does not go in cannot hang from the rim, and it would displace more than is there.',
    fix: 'Correct the measures, or the number of plants.',
    sources: ['tidemark-design'],
  }),
  'container-impossible': row<{ container: string; reason: string }>({
    severity: 'error',
    from: 'check',
    title: 'No container has these measures',
    what: ({ container, reason }) => `\`${container}\` cannot be: ${reason}.`,
    why: 'No volume belongs to a shape that cannot be, so the fills of its plantings stay unknown.',
    fix: 'Measure the container again, inside and from the floor up.',
    sources: ['solid-geometry'],
  }),
  'light-gets-in': row<{ container: string }>({
    severity: 'information',
    from: 'check',
    title: 'Light reaches the solution',
    what: ({ container }) => `\`${container}\` lets light into the solution.`,
    why: 'Algae grow in lit solution; they take up feed and move the pH.',
    fix: 'Wrap the container, or use an opaque one and write `opaque: true`.',
    sources: ['common-practice'],
  }),
  'feed-wrong-stage': row<{ feed: string; stage: string; meant: readonly string[] }>({
    severity: 'warning',
    from: 'check',
    title: 'A feed given in a stage it is not for',
    what: ({ feed, stage, meant }) =>
      `\`${feed}\` is for ${quoted(meant)}, and this batch feeds the stage \`${stage}\`.`,
    why: 'Leafy growth and fruiting want different proportions; the wrong feed costs leaf or fruit.',
    fix: 'Give the stage a batch with its own feed, or name the stage under the feed’s `for`.',
    sources: ['common-practice'],
  }),
  'analysis-over-100': row<{ name: string; percent: number }>({
    severity: 'error',
    from: 'check',
    title: 'More than the whole',
    what: ({ name, percent }) => `The shares of \`${name}\` add up to ${percent} % of its mass.`,
    why: 'Nothing is made of more than 100 %: one of the numbers is wrong, and so is every amount that rests on it.',
    fix: 'Compare with the label, and mind the unit of each share.',
    sources: ['tidemark-design'],
  }),
  'nitrogen-mismatch': row<{ feed: string; total: number; forms: number }>({
    severity: 'warning',
    from: 'check',
    title: 'The nitrogen forms do not add up',
    what: ({ feed, total, forms }) =>
      `The forms of nitrogen of \`${feed}\` add up to ${forms} %, and its analysis says N ${total} %.`,
    why: 'Nitrate, ammonium and urea move the pH in different ways, so the split matters.',
    fix: 'Compare both lines with the label.',
    sources: ['aapfco-labels'],
  }),
  'feed-described-twice': row<{ feed: string }>({
    severity: 'warning',
    from: 'check',
    title: 'A feed with an analysis and a formula',
    what: ({ feed }) =>
      `\`${feed}\` has an analysis and a formula; an element that both state is taken from the analysis.`,
    why: 'The two describe one thing and seldom agree to the last digit, so the elements rest on a mixture of both.',
    fix: 'Keep the formula for a plain salt, the analysis for a labelled product, and take out the other.',
    sources: ['tidemark-design'],
  }),
  'formula-invalid': row<{ part: string; reason: string }>({
    severity: 'error',
    from: 'check',
    title: 'Not a chemical formula',
    what: ({ part, reason }) => `\`${part}\`: ${reason}.`,
    why: 'Which elements the salt brings is read from its formula; without it they stay unknown.',
    fix: 'Write the formula as it stands on the bag, as in `KNO3` or `CaSO4·2H2O`; capital and small letters count.',
    sources: ['ciaaw-2021'],
  }),
  'ion-twice': row<{ ion: string; other: string }>({
    severity: 'warning',
    from: 'check',
    title: 'An ion stated twice',
    what: ({ ion, other }) => `\`${ion}\` and \`${other}\` are the same ion; only \`${other}\` counts.`,
    why: 'A report states an ion as such or by its element. Counted twice it would double, and of two that differ one is wrong.',
    fix: 'Keep the one that the report gives.',
    sources: ['tidemark-design'],
  }),
  'tool-measures-nothing': row<{ tool: string }>({
    severity: 'warning',
    from: 'check',
    title: 'A tool without a scale',
    what: ({ tool }) => `\`${tool}\` has neither \`smallest\` nor \`steps\` nor \`holds\`, so it measures nothing.`,
    why: 'Doses are rounded to what the tools can measure; a tool that says nothing is passed over.',
    fix: 'Give the finest step of its scale as `smallest`, the sizes of a set as `steps`, or what a vessel `holds`.',
    sources: ['tidemark-design'],
  }),
  'not-a-vessel': row<{ tool: string }>({
    severity: 'warning',
    from: 'check',
    title: 'Mixed in something that holds nothing',
    what: ({ tool }) => `\`${tool}\` does not say what it \`holds\`, so the loads of the batch are not known.`,
    why: 'A batch larger than its vessel is mixed in loads, and each load gets its share of every dose.',
    fix: 'Give the brimful volume of the vessel as `holds`, or name another vessel.',
    sources: ['tidemark-design'],
  }),
  'adjuster-without-strength': row<{ adjuster: string }>({
    severity: 'warning',
    from: 'check',
    title: 'An adjuster of unknown strength',
    what: ({ adjuster }) =>
      `\`${adjuster}\` says neither its \`acid\` nor its \`base\` nor a known \`response\`, so no amount of it can be computed.`,
    why: 'How much moves the pH by how much follows from what is in the bottle, or from what it did before.',
    fix: 'Copy the acid or base and its percent by mass from the label or the safety data sheet.',
    sources: ['tidemark-design'],
    caution: 'Acids and bases burn: do not find out by pouring. Add little, stir, and measure after each step.',
  }),
  'acid-with-base': row<{ adjuster: string }>({
    severity: 'error',
    from: 'check',
    title: 'An acid and a base in one bottle',
    what: ({ adjuster }) => `\`${adjuster}\` is said to hold an acid and a base at once.`,
    why: 'In one bottle the two would spend each other, with heat, so nobody knows by how much it moves the pH.',
    fix: 'Keep the one that is in the bottle, and give the other an adjuster of its own.',
    sources: ['common-practice'],
    caution: 'Never pour an acid and a base together: the mixture can boil and spatter.',
  }),
  'aim-out-of-band': row<{ aim: number; target: string; low: number; high: number }>({
    severity: 'warning',
    from: 'check',
    title: 'An aim outside its band',
    what: ({ aim, target, low, high }) =>
      `The aim of pH ${aim} lies outside the band of \`${target}\`, ${low}..${high}.`,
    why: 'A batch that is adjusted to this aim is out of the band at once.',
    fix: 'Aim inside the band, or widen it.',
    sources: ['tidemark-design'],
  }),
  'stage-unfed': row<{ planting: string; stage: string }>({
    severity: 'warning',
    from: 'check',
    title: 'A planting that begins without a batch',
    what: ({ planting, stage }) => `\`${planting}\` begins with \`${stage}\`, which names no batch.`,
    why: 'What the containers are filled with is not known, so no batch is checked to be large enough for them.',
    fix: 'Name a batch under the stage. A later stage without one goes on with the solution before it.',
    sources: ['tidemark-design'],
  }),
  'stage-repeated': row<{ planting: string; stage: string }>({
    severity: 'warning',
    from: 'check',
    title: 'A stage that a planting goes through twice',
    what: ({ planting, stage }) => `\`${planting}\` goes through \`${stage}\` a second time here.`,
    why: 'Its days and its use count twice, which is seldom what was meant.',
    fix: 'Take one out, or give the second time a stage of its own.',
    sources: ['tidemark-design'],
  }),
  'dates-reversed': row<{ planting: string; sow: string; transplant: string }>({
    severity: 'warning',
    from: 'check',
    title: 'Transplanted before it was sown',
    what: ({ planting, sow, transplant }) =>
      `\`${planting}\` is transplanted on ${transplant} and sown on ${sow}, which is later.`,
    why: 'Every date of the planting is counted from these two.',
    fix: 'Correct the date that is wrong.',
    sources: ['tidemark-design'],
  }),
  'log-before-start': row<{ date: string; planting: string; start: string }>({
    severity: 'warning',
    from: 'check',
    title: 'Measured before the planting began',
    what: ({ date, planting, start }) =>
      `This was measured on ${date}, and \`${planting}\` is set over its solution on ${start}.`,
    why: 'Before that day there is no solution of this planting to measure, so the entry is about another, or a date is wrong.',
    fix: 'Correct the date, or name the batch that was measured.',
    sources: ['tidemark-design'],
  }),
  'reading-out-of-order': row<{ date: string; before: string }>({
    severity: 'warning',
    from: 'check',
    title: 'A log entry out of order',
    what: ({ date, before }) => `This entry of ${date} stands behind one of ${before}.`,
    why: 'The log is read from top to bottom; the last entry counts as the latest.',
    fix: 'Move the entry up, or correct its date.',
    sources: ['tidemark-design'],
  }),
  'acid-hazard': row<{
    adjuster: string;
    substance: string;
    share: Quantity;
    statements: readonly { readonly code: string; readonly says: string }[];
  }>({
    severity: 'information',
    from: 'check',
    title: 'An acid or base that can hurt',
    what: ({ adjuster, substance, share, statements }, show) =>
      `\`${adjuster}\` is ${show.amount(share)} ${substance}. ${statements
        .map(({ code, says }) => `${says.replace(/\.$/, '')} (${code}).`)
        .join(' ')}`,
    why: 'At this strength the European rules for labels (CLP) ask for these hazard statements on the bottle.',
    fix: 'Wear gloves and eye protection, pour it into water and never water into it, and follow the label and the safety data sheet.',
    sources: ['clp-annex-vi'],
    caution:
      'Gloves and eye protection. Acid or base into water, never the other way. Never mix with a chlorine product. Keep away from children and food.',
  }),
  'ph-out-of-band': row<{
    batch: string;
    pH: number;
    low: number;
    high: number;
    target: string;
    measured: boolean;
    /** The adjuster at hand that leads back, and a cautious first step of it, where one can be computed. */
    step?: { readonly adjuster: string; readonly amount: Quantity } | undefined;
  }>({
    severity: 'warning',
    from: 'check',
    title: 'The pH is outside the band',
    what: ({ batch, pH, low, high, target, measured, step }, show) =>
      `${
        measured
          ? `\`${batch}\` was measured at pH ${pH}`
          : `\`${batch}\` comes out near pH ${pH}, and nothing adjusts it`
      }; the band of \`${target}\` is ${low}..${high}.${
        step === undefined
          ? ''
          : ` A cautious first step is ${show.amount(step.amount)} of \`${step.adjuster}\`; stir, then measure again.`
      }`,
    why: 'Outside the band iron and phosphate or calcium and magnesium are taken up badly, however much is in the solution.',
    fix: 'Adjust in small steps, and write each step with its measured pH under `readings`.',
    sources: ['common-practice'],
    caution: 'Acids and bases burn: gloves and eye protection, acid into water, small additions.',
  }),
  'ec-out-of-band': row<{
    batch: string;
    EC: Quantity;
    low: Quantity;
    high: Quantity;
    target: string;
    measured: boolean;
    /** How to come back into the band: plain water to add, or how much more feed. */
    remedy?:
      | { readonly kind: 'water'; readonly add: Quantity }
      | { readonly kind: 'feed'; readonly percent: number }
      | undefined;
  }>({
    severity: 'warning',
    from: 'check',
    title: 'The EC is outside the band',
    what: ({ batch, EC, low, high, target, measured, remedy }, show) =>
      `\`${batch}\` ${measured ? 'was measured at' : 'comes out near'} ${show.amount(EC)}; the band of \`${target}\` is ${show.amount(
        low,
      )} to ${show.amount(high)}.${
        remedy === undefined
          ? ''
          : remedy.kind === 'water'
            ? ` About ${show.amount(remedy.add)} more water brings it to the upper end.`
            : ` About ${remedy.percent} % more feed brings it to the lower end.`
      }`,
    why: 'Too weak a solution starves the plant before the fill is used up; too strong a one burns roots and leaf edges.',
    fix: 'Change the dose or the volume; never feed above the label’s rate.',
    sources: ['common-practice'],
  }),
  'element-out-of-band': row<{
    batch: string;
    target: string;
    elements: readonly {
      readonly element: string;
      readonly amount: Quantity;
      readonly low: Quantity;
      readonly high: Quantity;
    }[];
  }>({
    severity: 'information',
    from: 'check',
    title: 'An element is outside its band',
    what: ({ batch, target, elements }, show) =>
      `In \`${batch}\`, ${elements
        .map(
          ({ element, amount, low, high }) =>
            `${element} is ${show.amount(amount)}, ${amount.value < low.value ? 'below' : 'above'} ${show.amount(
              low,
            )} to ${show.amount(high)}`,
        )
        .join('; ')} (\`${target}\`).`,
    why: 'EC tells how much is dissolved, not of what: a solution can be strong and still short of one element.',
    fix: 'Change the proportion of the feeds, or the band.',
    sources: ['tidemark-design'],
  }),
  precipitates: row<{ batch: string; minerals: readonly { readonly title: string; readonly index: number }[] }>({
    severity: 'warning',
    from: 'check',
    title: 'The solution can cloud',
    what: ({ batch, minerals }) =>
      `\`${batch}\` holds more than stays dissolved of ${minerals
        .map(({ title, index }) => `${title} (saturation index ${index})`)
        .join(' and ')}.`,
    why: 'What falls out as a white haze is calcium, phosphate or sulfate that the plant no longer gets, and it settles on roots.',
    fix: 'Lower the pH before the calcium goes in, add calcium last and stirred, or mix weaker.',
    sources: ['usgs-phreeqc-database', 'minteq-v4'],
  }),
  'keep-apart': row<{ first: string; second: string; makes: string }>({
    severity: 'hint',
    from: 'check',
    title: 'Concentrates that must not meet undiluted',
    what: ({ first, second, makes }) =>
      `\`${first}\` and \`${second}\` follow one another; poured together undiluted they make ${makes}.`,
    why: 'What falls out in the cup or the jug does not dissolve again in the batch.',
    fix: 'Stir the first into the whole volume, rinse the measure, and only then add the second.',
    sources: ['common-practice'],
  }),
  'ph-drifts': row<{ batch: string; now: number; inAir: number; low: number; high: number }>({
    severity: 'information',
    from: 'check',
    title: 'The adjusted pH does not hold',
    what: ({ batch, now, inAir, low, high }) =>
      `\`${batch}\` is adjusted to pH ${now}, and stands at about ${inAir} once its CO2 is in balance with air; the band is ${low}..${high}.`,
    why: 'Acid turns the alkalinity of tap water into CO2; as that leaves, within hours when stirred or days when still, pH climbs. Soft water that was lifted with a base takes up CO2, and its pH falls.',
    fix: 'Let the batch stand or aerate it, measure again, and adjust a second time.',
    sources: ['plummer-busenberg-1982'],
    caution: 'Acids and bases burn: do not overshoot on purpose to make up for the drift.',
  }),
  'adjuster-wrong-way': row<{
    adjuster: string;
    does: 'acid' | 'base';
    from: number;
    to: number;
    batch: string;
    measured: boolean;
  }>({
    severity: 'warning',
    from: 'check',
    title: 'This adjuster moves the pH the other way',
    what: ({ adjuster, does, from, to, batch, measured }) =>
      `\`${adjuster}\` ${does === 'acid' ? 'is an acid and lowers' : 'is a base and raises'} the pH; \`${batch}\` ${
        measured ? 'was measured at' : 'comes out near'
      } ${from} and is to reach ${to}.`,
    why: 'No amount of it leads there, so none is computed.',
    fix: 'Name an adjuster that moves the pH the right way, or take the adjustment out.',
    sources: ['tidemark-design'],
    caution: 'Acids and bases burn: never add one to undo too much of the other without measuring.',
  }),
  'water-unbalanced': row<{ water: string; gap: Quantity; percent: number; missing: 'cations' | 'anions' }>({
    severity: 'information',
    from: 'check',
    title: 'The ions of the water do not balance',
    what: ({ water, gap, percent, missing }, show) =>
      `The ions of \`${water}\` leave ${show.amount(gap)} of ${missing} open, ${percent} % of all charge.`,
    why: 'A real water holds as many positive as negative charges: an ion is not on the list, or one of the numbers is wrong.',
    fix: 'Compare with the report, above all units and alkalinity. The pH and alkalinity as stated are kept.',
    sources: ['standard-methods-1030'],
  }),
  'water-impossible': row<{ water: string; reason: string }>({
    severity: 'error',
    from: 'check',
    title: 'No water has this pH and alkalinity together',
    what: ({ water, reason }) => `\`${water}\` cannot be: ${reason}.`,
    why: 'Alkalinity, pH and dissolved CO2 follow from each other; where they contradict each other no dose of acid can be computed.',
    fix: 'Measure both again, and mind the unit of the alkalinity.',
    sources: ['standard-methods-2320'],
  }),
  'temperature-outside': row<{ temperature: Quantity; low: Quantity; high: Quantity }>({
    severity: 'warning',
    from: 'check',
    title: 'A temperature at which nothing is computed',
    what: ({ temperature, low, high }, show) =>
      `At ${show.amount(temperature)} no pH or EC is computed; constants are used from ${show.amount(low)} to ${show.amount(high)}.`,
    why: 'Colder, roots stand still; warmer, they die. The constants end there, and a number beyond them would only look right.',
    fix: 'Correct the temperature, and mind its unit.',
    sources: ['tidemark-design'],
  }),
  'nitrogen-unsplit': row<{ feed: string; share: Quantity }>({
    severity: 'hint',
    from: 'check',
    title: 'Nitrogen without its forms',
    what: ({ feed, share }, show) =>
      `${show.amount(share)} of \`${feed}\` is nitrogen of no stated form; it is counted as nitrate.`,
    why: 'Nitrate and ammonium are ions and conduct, urea is none; and plants raise the pH with nitrate and lower it with ammonium. So the predicted pH and EC are estimates.',
    fix: 'Copy the forms from the label to `nitrogen`.',
    sources: ['aapfco-labels'],
  }),
  'density-missing': row<{ adjuster: string; liquid: string }>({
    severity: 'warning',
    from: 'check',
    title: 'A liquid without its density',
    what: ({ adjuster, liquid }) =>
      `\`${adjuster}\` has no \`density\`, and ${liquid} is a liquid, so no amount of it is computed.`,
    why: 'Percent are by mass and a liquid is poured by volume; grams read as millilitres would be an overdose.',
    fix: 'Copy the density from the safety data sheet, as in `density: 1.06 kg/L`. A powder needs none.',
    sources: ['tidemark-design'],
    caution: 'Acids and bases burn: do not guess the strength of a bottle.',
  }),
  'air-roots-drowned': row<{ planting: string; added: Quantity; room: Quantity; gap: Quantity; written: boolean }>({
    severity: 'error',
    from: 'check',
    title: 'A top-up that drowns the air roots',
    what: ({ planting, added, room, gap, written }, show) =>
      room.value <= 0
        ? `${show.amount(added)} drowns the air roots of \`${planting}\`: its air gap of ${show.amount(gap)}${written ? '' : ', as young plants have,'} leaves no room.`
        : `${show.amount(added)} drowns the air roots of \`${planting}\`: its air gap of ${show.amount(gap)}${written ? '' : ', as young plants have,'} leaves room for ${show.amount(room)}.`,
    why: 'Roots that have grown in moist air take up oxygen there; under water they rot, and the plant wilts over a full container.',
    fix: 'Top up less, and more often. A container that has to be changed is filled to the same line.',
    sources: ['kratky-2011', 'ifas-without-soil'],
  }),
  'runs-dry': row<{
    planting: string;
    date: string;
    days: number;
    topUp: Quantity | undefined;
    before: string | undefined;
    more: number;
  }>({
    severity: 'warning',
    from: 'check',
    title: 'A container that stands too low before harvest',
    what: ({ planting, date, days, topUp, before, more }, show) => {
      const low = `\`${planting}\` stands too low on ${date}, ${days === 1 ? 'a day' : `${days} days`} before its last stage ends.`;
      if (topUp === undefined || before === undefined) return `${low} Its air gap leaves no room to top it up.`;
      return `${low} A top-up of ${show.amount(topUp)} on ${before} keeps it wet${more === 0 ? '' : `, and ${more} more after it`}.`;
    },
    why: 'Below about 1.3 cm roots lose the solution, and what is left of it is strong. The air gap says how much a top-up may be.',
    fix: 'Top up as planned and write it in the log, or take a larger container.',
    sources: ['kratky-2005', 'kratky-2010'],
  }),
  'fill-too-small-for-crop': row<{ planting: string; crop: string; given: Quantity; low: Quantity; high: Quantity }>({
    severity: 'warning',
    from: 'check',
    title: 'A container too small for its crop',
    what: ({ planting, crop, given, low, high }, show) =>
      `A container of \`${planting}\` gets ${show.amount(given)}, and its ${crop} drinks ${show.amount(low)} to ${show.amount(high)} until its harvest, by what is published.`,
    why: 'A crop that grows as it should empties such a container before its harvest, whatever use is written.',
    fix: 'Take a larger container or fewer plants, plan top-ups, or measure levels: they show the use.',
    sources: ['kratky-2010', 'kratky-2005-tomato', 'dwc-tomato-2021'],
  }),
  'use-empties-at-once': row<{ planting: string; stage: string; use: Quantity; fill: Quantity }>({
    severity: 'warning',
    from: 'check',
    title: 'A use rate that empties the container in a day',
    what: ({ planting, stage, use, fill }, show) =>
      `In \`${stage}\` the plants of one container of \`${planting}\` use ${show.amount(use)} a day, and one fill is ${show.amount(fill)}.`,
    why: 'Most often the unit is wrong: a plant drinks millilitres a day where litres are written.',
    fix: 'Correct the rate, which is that of one plant, or take a larger container.',
    sources: ['tidemark-design'],
  }),
  'level-above-rim': row<{ planting: string; level: Quantity; rim: Quantity }>({
    severity: 'error',
    from: 'check',
    title: 'A level above the rim',
    what: ({ planting, level, rim }, show) =>
      `${show.amount(level)} is above the rim of the container of \`${planting}\`, at ${show.amount(rim)}.`,
    why: 'A level counts from the floor of the container, inside. This one cannot be, so it is taken as brimful.',
    fix: 'Correct the level or its unit. What was measured from the rim down is subtracted from the height.',
    sources: ['tidemark-design'],
  }),
  'level-risen': row<{ planting: string; level: Quantity; before: Quantity }>({
    severity: 'warning',
    from: 'check',
    title: 'A level that rose by itself',
    what: ({ planting, level, before }, show) =>
      `\`${planting}\` stands at ${show.amount(level)}, and stood at ${show.amount(before)} before, with no top-up between.`,
    why: 'No plant gives water back. A top-up that is not written down, rain, or a slip would explain it; nothing is learned from it.',
    fix: 'Write the top-up down, or correct the level.',
    sources: ['tidemark-design'],
  }),
  'log-after-end': row<{ date: string; planting: string; stage: string; end: string }>({
    severity: 'information',
    from: 'check',
    title: 'Measured after the last stage',
    what: ({ date, planting, stage, end }) =>
      `This was measured on ${date}, and \`${planting}\` ends with \`${stage}\` on ${end}.`,
    why: 'The forecast ends with the last stage, so it does not use this entry.',
    fix: 'Let the last stage last longer, add a stage, or correct the date.',
    sources: ['tidemark-design'],
  }),
  'log-ph-out-of-band': row<{
    about: string;
    pH: number;
    low: number;
    high: number;
    where: 'the batch' | 'each container';
    step: { readonly adjuster: string; readonly amount: Quantity } | undefined;
  }>({
    severity: 'warning',
    from: 'check',
    title: 'The last logged pH is outside its band',
    what: ({ about, pH, low, high, where, step }, show) => {
      const said = `\`${about}\` was last measured at pH ${pH}, ${pH < low ? 'below' : 'above'} its band of ${low} to ${high}.`;
      if (step === undefined) return said;
      return `${said} Begin with ${show.amount(step.amount)} of \`${step.adjuster}\` in ${where}, stir, and measure again: an estimate.`;
    },
    why: 'Outside the band some nutrients are there and not taken up. In standing solution pH mostly drifts up as nitrate is used.',
    fix: 'Bring it back in small steps, each followed by a measurement, and write the new reading in the log.',
    sources: ['common-practice', 'usgs-phreeqc-database'],
    caution:
      'Acids and bases burn: wear gloves and eye protection, dilute the adjuster in water first (acid into water, never the other way), pour it away from the roots, and follow its label.',
  }),
  'log-ec-out-of-band': row<{
    about: string;
    EC: Quantity;
    low: Quantity;
    high: Quantity;
    step:
      | { readonly kind: 'pour'; readonly name: string; readonly volume: Quantity; readonly after: Quantity }
      | { readonly kind: 'change'; readonly batch: string }
      | undefined;
  }>({
    severity: 'warning',
    from: 'check',
    title: 'The last logged EC is outside its band',
    what: ({ about, EC, low, high, step }, show) => {
      const side = EC.value < low.value ? 'below' : 'above';
      const said = `\`${about}\` was last measured at ${show.amount(EC)}, ${side} its band of ${show.amount(low)} to ${show.amount(high)}.`;
      if (step === undefined) return said;
      return step.kind === 'pour'
        ? `${said} ${show.amount(step.volume)} of \`${step.name}\` in each container brings it to ${show.amount(step.after)}.`
        : `${said} No top-up that its air gap allows brings it back: change the solution for fresh \`${step.batch}\`.`;
    },
    why: 'A solution too strong keeps water from the roots and burns leaf tips; one too weak starves the plant slowly.',
    fix: 'Top up with water where it is too strong, with solution where it is too weak, never above the line that keeps the air gap.',
    sources: ['common-practice', 'langenfeld-2022'],
  }),
} as const satisfies Record<string, Row<never>>;

export type FindingCode = keyof typeof findings;

/** What a finding of one code says about its case. */
export type FindingParams<C extends FindingCode> = Parameters<(typeof findings)[C]['what']>[0];

/** A way to mend a finding, as data: a title for the menu and what to change. */
export interface Fix {
  readonly title: string;
  readonly edits: readonly Edit[];
  /** True where the fix cannot be wrong, so that it may be applied to the whole file at once. */
  readonly sure: boolean;
}

/** One finding of one code, at its place. */
export type FindingOf<C extends FindingCode> = {
  readonly code: C;
  readonly params: FindingParams<C>;
  readonly at: Place;
  /** Other places that have to do with it. */
  readonly related?: readonly { readonly at: Place; readonly says: string }[];
  readonly fixes?: readonly Fix[];
};

export type Finding = { [C in FindingCode]: FindingOf<C> }[FindingCode];

/** A row of the catalogue, with its parameters forgotten: for pages and lists. */
export function findingRow(code: FindingCode): Omit<Row<never>, 'what'> {
  return findings[code];
}

/** What is wrong, in words. */
export function sayWhat(finding: Finding, show: Show): string {
  const what = findings[finding.code].what as (params: FindingParams<FindingCode>, show: Show) => string;
  return what(finding.params, show);
}

export function isFindingCode(word: string): word is FindingCode {
  return Object.hasOwn(findings, word);
}

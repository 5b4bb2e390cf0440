// What a plain scalar means: the core schema of YAML 1.2 (YAML 1.2.2, section 10.3.2).

/** A number, a boolean or null where the text is written like one, else the text itself. */
export function coreValue(text: string): string | number | boolean | null {
  const word = text.length <= longestWord ? words.get(text) : undefined;
  if (word !== undefined) return word;
  if (!number.test(text)) return text;
  return text.startsWith('0o') ? Number.parseInt(text.slice(2), 8) : Number(text);
}

const spellings = (word: string) => [word, word.charAt(0).toUpperCase() + word.slice(1), word.toUpperCase()];
const infinite = ['.inf', '.Inf', '.INF'];

const words: ReadonlyMap<string, boolean | number | null> = new Map<string, boolean | number | null>([
  ...['~', ...spellings('null')].map(word => [word, null] as const),
  ...spellings('true').map(word => [word, true] as const),
  ...spellings('false').map(word => [word, false] as const),
  ...['.nan', '.NaN', '.NAN'].map(word => [word, Number.NaN] as const),
  ...infinite.flatMap(word => ['', '+'].map(sign => [sign + word, Number.POSITIVE_INFINITY] as const)),
  ...infinite.map(word => [`-${word}`, Number.NEGATIVE_INFINITY] as const),
]);

const longestWord = 5;

const number = /^(?:[-+]?(?:\.[0-9]+|[0-9]+(?:\.[0-9]*)?)(?:[eE][-+]?[0-9]+)?|0o[0-7]+|0x[0-9a-fA-F]+)$/;

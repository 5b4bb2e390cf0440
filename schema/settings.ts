// The editor settings: one row each with type, default, words and effect. It stands apart because the client, the server
// and the manifest (whose contributed settings are generated from it) must agree on them.

interface SettingRow {
  readonly default: boolean | string;
  /** The words that may stand here, each with its meaning; a setting without choices is true or false. */
  readonly choices?: Readonly<Record<string, string>>;
  /** What the setting does, as the settings page of the editor shows it (Markdown). */
  readonly words: string;
  /** What has to be asked for again when the setting changes. */
  readonly effect: 'hints' | 'lenses' | 'findings' | 'log';
}

/** Every setting, by its key without the leading `tidemark.`. */
export const settings = {
  'hints.doses': {
    default: true,
    words:
      'Show beside each dose how much it comes to for the whole batch. Hints as a whole are switched by `#editor.inlayHints.enabled#`.',
    effect: 'hints',
  },
  'hints.fills': {
    default: true,
    words: 'Show beside each planting how much one container takes, and how much a batch made “as needed” comes to.',
    effect: 'hints',
  },
  'hints.adjustments': {
    default: true,
    words: 'Show beside each pH adjustment the amount of acid or base that is expected to be needed.',
    effect: 'hints',
  },
  lenses: {
    default: true,
    words:
      'Offer above the batches to show a bench sheet, to record a reading, and to compare with the last commit. Code lenses as a whole are switched by `#editor.codeLens#`.',
    effect: 'lenses',
  },
  yamlIntegration: {
    default: 'auto',
    choices: {
      auto: 'Like “full”, or like “semanticOnly” while an extension that checks every YAML file is enabled.',
      full: 'Recipes whose language is YAML get everything, as recipes whose language is Grow Recipe always do.',
      semanticOnly:
        'Recipes whose language is YAML get what only Tidemark knows: computed hovers, hints and findings about the meaning. Syntax, misspelt keys and key completion are left to the YAML extension.',
    },
    words:
      'How much to do in recipes whose language was set to YAML by hand or by `#files.associations#`, so that nothing is said twice.',
    effect: 'findings',
  },
  'trace.server': {
    default: 'messages',
    choices: {
      messages: 'The name of each message.',
      verbose: 'Each message with its content.',
    },
    words: 'What the log tells of the messages between editor and language server while its log level is *Trace*.',
    effect: 'log',
  },
} as const satisfies Readonly<Record<string, SettingRow>>;

export type SettingKey = keyof typeof settings;

type ValueOf<Row extends SettingRow> = Row extends { readonly choices: infer Choices }
  ? keyof Choices
  : Row['default'] extends boolean
    ? boolean
    : string;

/** A value for every setting. */
export type Settings = { readonly [Key in SettingKey]: ValueOf<(typeof settings)[Key]> };

/** What a client may hand over when it starts the server. */
export interface InitialOptions {
  /** So that the first findings already obey the settings. */
  readonly settings?: unknown;
  /** The commands of ours that the client knows: only those are offered as lenses and after actions. */
  readonly commands?: readonly string[];
  /** The client lists the recipes of a folder when it is asked, as it knows what its user does not want to see. */
  readonly listsFiles?: boolean;
}

/**
 * Settings as an editor sends them (nested: `{ hints: { doses: false } }`) made complete. Whatever is missing or of the
 * wrong kind gets its default, since an editor may send anything.
 */
export function readSettings(sent: unknown): Settings {
  return {
    'hints.doses': flag(sent, 'hints.doses'),
    'hints.fills': flag(sent, 'hints.fills'),
    'hints.adjustments': flag(sent, 'hints.adjustments'),
    lenses: flag(sent, 'lenses'),
    yamlIntegration: choice(sent, 'yamlIntegration'),
    'trace.server': choice(sent, 'trace.server'),
  };
}

type FlagKey = { [Key in SettingKey]: Settings[Key] extends boolean ? Key : never }[SettingKey];
type ChoiceKey = Exclude<SettingKey, FlagKey>;

function flag(sent: unknown, key: FlagKey): boolean {
  const value = at(sent, key);
  return typeof value === 'boolean' ? value : settings[key].default;
}

function choice<Key extends ChoiceKey>(sent: unknown, key: Key): Settings[Key];
function choice(sent: unknown, key: ChoiceKey): string {
  const value = at(sent, key);
  return typeof value === 'string' && Object.hasOwn(settings[key].choices, value) ? value : settings[key].default;
}

function at(sent: unknown, key: SettingKey): unknown {
  let value = sent;
  for (const step of key.split('.')) {
    if (typeof value !== 'object' || value === null) return undefined;
    value = Object.getOwnPropertyDescriptor(value, step)?.value;
  }
  return value;
}

// What several commands have in common: the options of those that read a recipe, and how examples stand in a help.

import { type Command, InvalidArgumentError, Option } from 'commander';
import type { Severity } from '../../schema/findings.ts';

export type FailOn = Severity | 'never';

/** Of every command that reads a recipe and prints an answer. */
export interface Answering {
  readonly color: boolean;
  /** What standard input is called, where `-` is read. */
  readonly stdinFilename?: string;
}

/** Of those whose exit code tells what was found. */
export interface Common extends Answering {
  readonly failOn: FailOn;
}

const failOns: readonly FailOn[] = ['error', 'warning', 'information', 'hint', 'never'];

/** The options of every command whose exit code tells what was found; those that print in one format only name none. */
export function common(command: Command, formats: readonly string[]): Command {
  return answering(command, formats).addOption(
    new Option('--fail-on <severity>', 'the least severity that gives exit code 1').choices(failOns).default('error'),
  );
}

/** The options of every command that reads a recipe and prints an answer. */
export function answering(command: Command, formats: readonly string[]): Command {
  if (formats.length > 0) {
    command.addOption(new Option('--format <format>', 'how to print').choices(formats).default('text'));
  }
  return command
    .option('--stdin-filename <path>', 'what standard input is called; `use` is followed from there')
    .option('--no-color', 'print without colours');
}

export function examples(lines: readonly string[]): string {
  return `Examples:\n${lines.map(line => `  ${line}\n`).join('')}`;
}

/** A whole number, as an option takes it. */
export function readCount(written: string): number {
  if (!/^\d{1,9}$/u.test(written)) throw new InvalidArgumentError('A whole number is wanted.');
  return Number(written);
}
